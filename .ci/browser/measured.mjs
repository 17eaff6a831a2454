#!/usr/bin/env node
// Prints how large the JavaScript is and how long it takes to answer, in Node and in Chromium, there also as on a slow
// telephone: node measured.mjs. Aims: 500 kB gzipped, the first answer after 0.7 s and after 3 s at 6 times slower, a
// later one after 100 ms at 6 times slower; on the counter page no key waits over 100 ms at 6 times slower. Nothing
// fails here: a busy machine is no fault.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { asked } from './asked.mjs';
import { browser } from './faults.mjs';

asked(import.meta.url, 0, 0);

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
for (const file of [
  module,
  join(target, 'airfit.html'),
  join(target, 'js/airfit-desk.mjs'),
  join(target, 'airfit-desk.html'),
]) {
  if (existsSync(file)) {
    const bytes = readFileSync(file);
    console.log(
      `${file.slice(target.length + 1).padEnd(16)} ${kilobytes(bytes.length).padStart(8)}, gzipped ${kilobytes(gzipSync(bytes, { level: 9 }).length)}`,
    );
  }
}
/** Many parts, as a catalogue that has each of those that are there many times. */
function large(catalogue, count) {
  const stock = JSON.parse(catalogue);
  const parts = Array.from({ length: count }, (_, i) => {
    const part = stock.parts[i % stock.parts.length];
    return { ...part, id: `${part.id}-${i}`, name: `${part.name}, shelf ${i}` };
  });
  return { ...stock, parts };
}

/**
 * How long a key waits on the counter page, 6 times slower: the longest task of the page's own thread while one types
 * into fields of all kinds [ms], of the processor's time, which a busy machine does not change, and by the clock.
 */
async function keysOfThePage() {
  const folder = mkdtempSync(join(tmpdir(), 'measured-'));
  const found = {};
  for (const [name, catalogue] of [
    ['the example', null],
    ['10,000 parts', large(given.catalogue, 10000)],
  ]) {
    const context = await chromium.newContext({ viewport: { width: 1280, height: 900 } });
    const tab = await context.newPage();
    await tab.goto(pathToFileURL(join(target, 'airfit.html')).href);
    await tab.click('#example');
    if (catalogue) {
      const path = join(folder, 'large.json');
      writeFileSync(path, JSON.stringify(catalogue));
      await tab.setInputFiles('#files', [path]);
    }
    const words = catalogue ? 'shelf' : 'Hose';
    await tab.waitForFunction(
      (word) => document.querySelector('#shown .parts')?.textContent.includes(word),
      words,
      { timeout: 120000 },
    );
    const session = await context.newCDPSession(tab);
    await session.send('Emulation.setCPUThrottlingRate', { rate: 6 });
    const tracer = await chromium.newBrowserCDPSession();
    const events = [];
    tracer.on('Tracing.dataCollected', ({ value }) => events.push(...value));
    await tracer.send('Tracing.start', {
      transferMode: 'ReportEvents',
      traceConfig: { includedCategories: ['toplevel', 'disabled-by-default-devtools.timeline'] },
    });
    for (const [field, text] of [
      ['#reading-tip-diameter', '11.93 mm'],
      ['#tool-name', 'Orbital sander'],
      ['#tool-air', '12.5 scfm'],
      ['#card-4-reach', '12 m'],
      ['#customer', 'Somebody'],
    ]) {
      await tab.locator(field).fill('');
      await tab.locator(field).pressSequentially(text, { delay: 150 });
      await tab.waitForTimeout(1500);
    }
    const ended = new Promise((resolve) => tracer.once('Tracing.tracingComplete', resolve));
    await tracer.send('Tracing.end');
    await ended;
    const isMain = new Set(
      events
        .filter((event) => event.name === 'thread_name' && event.args.name === 'CrRendererMain')
        .map(({ pid, tid }) => `${pid} ${tid}`),
    );
    const tasks = events.filter(
      (event) => event.ph === 'X' && /RunTask$/.test(event.name) && isMain.has(`${event.pid} ${event.tid}`),
    );
    const most = (field) => tasks.reduce((longest, task) => Math.max(longest, task[field] ?? 0), 0) / 1000;
    found[name] = [tasks.length, most('tdur'), most('dur')];
    await context.close();
  }
  rmSync(folder, { recursive: true });
  return found;
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
const keys = existsSync(join(target, 'airfit.html')) ? await keysOfThePage() : {};
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
for (const [name, [count, processor, clock]] of Object.entries(keys)) {
  console.log(
    `counter page, ${name}, 6 × slower: of ${count} tasks while typing the longest took ` +
      `${processor.toFixed(0)} ms of the processor, ${clock.toFixed(0)} ms by the clock`,
  );
}
