#!/usr/bin/env node
// Writes the site: node make.mjs ROOT FOLDER
//   ROOT    the folder of the project
//   FOLDER  the folder that the pages are written to
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { asked } from '../../.ci/browser/asked.mjs';
import { site } from './site.mjs';

const [root, to] = asked(import.meta.url, 2, 2);
const began = Date.now();
let made;
try {
  made = site(root);
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
rmSync(to, { recursive: true, force: true });
const put = (path, write) => {
  const file = join(to, path);
  mkdirSync(dirname(file), { recursive: true });
  write(file);
};
for (const [path, html] of made.pages) {
  put(path, (file) => writeFileSync(file, html));
}
for (const [path, from] of made.files) {
  put(path, (file) => (from.text === undefined ? cpSync(from, file) : writeFileSync(file, from.text)));
}
const seconds = ((Date.now() - began) / 1000).toFixed(1);
console.log(`${made.pages.size} pages in ${seconds} s, every link leads somewhere: ${to}`);
