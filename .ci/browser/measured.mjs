#!/usr/bin/env node
// Prints how large the JavaScript is and how long it takes to answer, in Node and in Chromium, there also as on a slow
// telephone: node measured.mjs. Aims: 500 kB gzipped, the first answer after 0.7 s and after 3 s at 6 times slower, a
// later one after 100 ms at 6 times slower. Nothing fails here: a busy machine is no fault.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { browser } from './faults.mjs';

const examples = join(dirname(fileURLToPath(import.meta.url)), '../../airfit-examples');
const target = join(examples, 'browser/page/target');
const module = join(target, 'js/airfit.mjs');
const text = (file) => readFileSync(join(examples, file), 'utf8');
const given = {
  set: text('sets/workshop.csv'),
  job: JSON.parse(text('jobs/boatyard/weak-sander.json')),
  catalogue: text('jobs/boatyard/catalogue.json'),
};

/** Runs in Node and in a page: how long loading, the first answer of each call and a later one take [ms]. */
async function times(source, { set, job, catalogue }) {
  const clock = () => performance.now();
  const begin = clock();
  const airfit = await import(source);
  const load = clock() - begin;
  const hose = { name: 'hose', bore: '3/8 in', length: '50 ft', wall: 'rubber hose' };
  const calls = {
    identify: (i) =>
      airfit.identify({ set, readings: { 'tip diameter': `11.9${i % 10} mm`, 'groove width': '5.19 mm' } }),
    willItGo: () => airfit.willItGo({ one: '1/4 NPT male', other: 'G 1/4 female' }),
    run: (i) => airfit.run({ supply: '90 psig', elements: [hose], flow: `${20 + (i % 10)} scfm`, needed: '80 psig' }),
    select: (i) =>
      airfit.select({ job: { ...job, number: `${i}` }, files: { 'catalogue.json': catalogue }, most: 3 }),
    'sheet, page only': () =>
      airfit.sheet('job.json', { 'job.json': JSON.stringify(job), 'catalogue.json': catalogue }, { only: ['page'] }),
  };
  const rows = { 'load the module': [load, NaN] };
  for (const [name, call] of Object.entries(calls)) {
    const start = clock();
    call(0);
    const first = clock() - start;
    const later = [];
    for (let i = 1; i <= 7; i++) {
      const from = clock();
      call(i);
      later.push(clock() - from);
    }
    rows[name] = [first, later.sort((a, b) => a - b)[3]];
  }
  return rows;
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;
for (const file of [module, join(target, 'airfit.html')]) {
  if (existsSync(file)) {
    const bytes = readFileSync(file);
    console.log(
      `${file.slice(target.length + 1).padEnd(16)} ${kilobytes(bytes.length).padStart(8)}, gzipped ${kilobytes(gzipSync(bytes, { level: 9 }).length)}`,
    );
  }
}
const columns = { Node: await times(pathToFileURL(module).href, given) };
const chromium = await browser();
for (const slower of [1, 6]) {
  const tab = await chromium.newPage();
  await tab.setContent('<!doctype html><title>measured</title>');
  const session = await tab.context().newCDPSession(tab);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slower });
  columns[slower === 1 ? 'Chromium' : `Chromium, ${slower} × slower`] = await tab.evaluate(
    ([body, code, rest]) => {
      const source = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
      return eval(`(${body})`)(source, rest);
    },
    [times.toString(), readFileSync(module, 'utf8'), given],
  );
  await tab.close();
}
await chromium.close();
const wide = 26;
console.log(`\n${''.padEnd(18)}${Object.keys(columns).map((name) => name.padStart(wide)).join('')}`);
console.log(`${'[ms]'.padEnd(18)}${Object.keys(columns).map(() => 'first, then'.padStart(wide)).join('')}`);
for (const row of Object.keys(columns.Node)) {
  const cells = Object.values(columns).map((times) => {
    const [first, later] = times[row];
    return (first.toFixed(0) + (Number.isNaN(later) ? '' : `, ${later.toFixed(0)}`)).padStart(wide);
  });
  console.log(`${row.padEnd(18)}${cells.join('')}`);
}
