// The script of the pages: the modules of live/ as one classic script, because a page opened from a file may load no
// module. What the library computes comes from airfit-lessons.js beside it.
import { readFileSync } from 'node:fs';

const MODULES = ['text', 'outputs', 'mathml', 'lines', 'follow', 'check', 'begin'];

/** The text of live.js. */
export function script() {
  const bodies = MODULES.map((name) =>
    readFileSync(new URL(`live/${name}.mjs`, import.meta.url), 'utf8')
      .replace(/^import [^;]*;\n/gm, '')
      .replace(/^export /gm, '')
      .trim(),
  );
  return `'use strict';\n(() => {\n${bodies.join('\n\n')}\n})();\n`;
}
