#!/usr/bin/env node
// Compares what the JavaScript answers with what the JVM answered: node answers.mjs
// The JVM's answers are those that the tests of the modules of airfit-examples/browser left. In Node and in Chromium
// every text must be the same, and every number within 1e-12, but for those that are listed with their cause.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { browser } from './faults.mjs';

const folder = join(dirname(fileURLToPath(import.meta.url)), '../../airfit-examples/browser');
const page = join(folder, 'page/target/js/airfit.mjs');
const probe = join(folder, 'probe/target/js/probe.mjs');
const { sheets } = JSON.parse(readFileSync(join(folder, 'page/target/answers.json'), 'utf8'));
const values = readFileSync(join(folder, 'probe/target/values.txt'), 'utf8');

/** So far may a number be from the JVM's, relative to the larger; the functions of analysis are the browser's own. */
const NEAR = 1e-12;

/**
 * Numbers that may be further apart, and how far. In run 1918 a pipe nearly chokes: the pressure behind it, 1.2 of 10.3
 * bar(a), moves 190 times as much as the flow does (measured), which either search finds to 1e-14 (RunPath).
 */
const LISTED = { 'run 1918': 2 * 190 * 1e-14 };

/** Runs in Node and in a page: the texts that differ, and the first place where they do. */
async function differing(source, asked) {
  const airfit = await import(source);
  const found = [];
  for (const { name, files, answer } of asked) {
    let mine = {};
    try {
      mine = airfit.sheet(name, files);
    } catch (error) {
      found.push(`${name}: ${error.name}: ${error.message}`);
      continue;
    }
    for (const part of Object.keys(answer)) {
      const theirs = answer[part];
      if (mine[part] !== theirs) {
        let at = 0;
        while (mine[part]?.[at] === theirs[at]) at++;
        const around = (text) => JSON.stringify(text?.slice(Math.max(0, at - 40), at + 40));
        found.push(`${name}, ${part}: ${around(mine[part])} is ${around(theirs)} on the JVM`);
      }
    }
  }
  return found;
}

/** Runs in Node and in a page: how many values there are, and which differ. */
async function valuesDiffering(source, theirs, near, listed) {
  const { values } = await import(source);
  const mine = values().split('\n');
  const wanted = theirs.split('\n');
  const found = mine.length === wanted.length ? [] : [`${mine.length} values for ${wanted.length}`];
  let worst = 0;
  wanted.forEach((line, i) => {
    if (line === mine[i]) return;
    const [one, other] = [mine[i], line].map((value) => /^(.*) #(.*)$/.exec(value ?? ''));
    if (one && other && one[1] === other[1]) {
      const [x, y] = [Number(one[2]), Number(other[2])];
      const apart = Math.abs(x - y) / Math.max(Math.abs(x), Math.abs(y));
      worst = Math.max(worst, apart);
      if (apart <= (listed[one[1]] ?? near)) return;
    }
    found.push(`${mine[i]?.slice(0, 300)} for ${line.slice(0, 300)}`);
  });
  return { found, worst };
}

const chromium = await browser();
const tab = await chromium.newPage();
await tab.setContent('<!doctype html><title>answers</title>');

/** Runs a function with a module, in Node and in Chromium. */
async function both(run, module, ...given) {
  const inNode = await run(pathToFileURL(module).href, ...given);
  const inChromium = await tab.evaluate(
    ([body, code, rest]) => {
      const source = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
      return eval(`(${body})`)(source, ...rest);
    },
    [run.toString(), readFileSync(module, 'utf8'), given],
  );
  return { Node: inNode, Chromium: inChromium };
}

let wrong = 0;
function tell(where, found) {
  wrong += found.length;
  found.slice(0, 20).forEach((fault) => console.error(`${where}: ${fault}`));
}

const texts = sheets.reduce((sum, sheet) => sum + Object.keys(sheet.answer).length, 0);
for (const [where, found] of Object.entries(await both(differing, page, sheets))) {
  tell(where, found);
  console.log(`${where}: ${texts} texts of ${sheets.length} jobs, ${found.length} differ`);
}
const count = values.trimEnd().split('\n').length;
for (const [where, { found, worst }] of Object.entries(
  await both(valuesDiffering, probe, values, NEAR, LISTED),
)) {
  tell(where, found);
  console.log(
    `${where}: ${count} values, ${found.length} differ; numbers within ${worst.toExponential(1)}`,
  );
}
await chromium.close();
process.exit(wrong > 0 ? 1 : 0);
