#!/usr/bin/env node
// Compares what the JavaScript answers with what the JVM answered: node answers.mjs
// The JVM's answers are those that the tests of the page module left; both in Node and in Chromium every text must be
// the same.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { browser } from './faults.mjs';

const target = join(
  dirname(fileURLToPath(import.meta.url)),
  '../../airfit-examples/browser/page/target',
);
const module = join(target, 'js/airfit.mjs');
const { sheets } = JSON.parse(readFileSync(join(target, 'answers.json'), 'utf8'));

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

const chromium = await browser();
const page = await chromium.newPage();
await page.setContent('<!doctype html><title>answers</title>');
const inChromium = await page.evaluate(
  ([body, code, asked]) => {
    const source = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
    return eval(`(${body})`)(source, asked);
  },
  [differing.toString(), readFileSync(module, 'utf8'), sheets],
);
await chromium.close();
const inNode = await differing(pathToFileURL(module).href, sheets);
const found = [
  ...inNode.map((fault) => `Node: ${fault}`),
  ...inChromium.map((fault) => `Chromium: ${fault}`),
];
found.forEach((fault) => console.error(fault));
const texts = sheets.reduce((sum, sheet) => sum + Object.keys(sheet.answer).length, 0);
console.log(`${texts} texts of ${sheets.length} jobs in Node and in Chromium: ${found.length} differ`);
process.exit(found.length > 0 ? 1 : 0);
