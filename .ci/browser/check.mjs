#!/usr/bin/env node
// Looks for faults in pages: node check.mjs PAGE.html|FOLDER…
// Axe judges all pages that are named, and of a folder every third, with ALL=1 every one.
// Names page and element of each fault; exits with 1 if there is one.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { asked, refused } from './asked.mjs';
import { browser, faults } from './faults.mjs';

/** So many faults of one page and one way of looking at it are told; the rest is often of the same cause. */
const MOST = 12;

const words = asked(import.meta.url, 1, Infinity);
const missing = words.find((path) => !existsSync(path));
if (missing) {
  refused(import.meta.url, `there is no page or folder ${missing}`);
}
const files = words.flatMap((path) =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .filter((name) => name.endsWith('.html'))
        .sort()
        .map((name, number) => ({ file: join(path, name), withAxe: Boolean(process.env.ALL) || number % 3 === 0 }))
    : [{ file: path, withAxe: true }],
);
if (files.length === 0) {
  console.error('no page to look at');
  process.exit(1);
}
const started = Date.now();
const chromium = await browser();
const waiting = [...files];
const found = [];
const looks = new Set();
await Promise.all(
  [0, 1].map(async () => {
    for (let page = waiting.shift(); page; page = waiting.shift()) {
      found.push(...(await faults(chromium, page.file, looks, page.withAxe)));
    }
  }),
);
await chromium.close();
const told = new Map();
for (const { page, where, element, fault } of found.sort((a, b) => a.page.localeCompare(b.page))) {
  const before = told.get(page + where) ?? 0;
  told.set(page + where, before + 1);
  if (before < MOST) {
    console.error(`${page}, ${where}: ${element}: ${fault}`);
  } else if (before === MOST) {
    console.error(`${page}, ${where}: and more`);
  }
}
const seconds = Math.round((Date.now() - started) / 1000);
console.log(
  `${files.length} pages looked at in a browser in ${seconds} s: ${found.length} faults`,
);
process.exit(found.length > 0 ? 1 : 0);
