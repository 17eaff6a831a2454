#!/usr/bin/env node
// Compares what the JavaScript answers with what the JVM answered: node answers.mjs
// The JVM's answers are those that the tests of the modules of airfit-examples/browser left. In Node, and of a tenth of
// the calls in Chromium, every text must be the same, and every number within 1e-12, but for those that are listed with
// their cause.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { faultsOfEmbedding } from './embedding.mjs';
import { asked } from './asked.mjs';
import { browser } from './faults.mjs';

asked(import.meta.url, 0, 0);

const folder = join(dirname(fileURLToPath(import.meta.url)), '../../airfit-examples/browser');
const page = join(folder, 'page/target/js/airfit.mjs');
const desk = join(folder, 'page/target/js/airfit-desk.mjs');
const probe = join(folder, 'probe/target/js/probe.mjs');
const ofDesk = JSON.parse(readFileSync(join(folder, '../calls/target/desk-answers.json'), 'utf8')).answers.map(
  (answer, number) => ({ ...answer, number }),
);
/** These choose parts, which takes seconds: a build asks every tenth of them, and ALL=1 all. */
const DEAR = ['select', 'sheet'];
const answers = JSON.parse(readFileSync(join(folder, '../calls/target/answers.json'), 'utf8'))
  .answers.map((answer, number) => ({ ...answer, number }))
  .filter(({ call, number }) => process.env.ALL || !DEAR.includes(call) || number % 10 === 0);

/** Chromium has the same engine as Node, and takes every tenth of the calls; of the values both take all. */
const someOf = (calls) => calls.filter(({ number }) => number % 10 === 0);
const inChromium = someOf(answers);
const values = readFileSync(join(folder, 'probe/target/values.txt'), 'utf8');

/** So far may a number be from the JVM's, relative to the larger; the functions of analysis are the browser's own. */
const NEAR = 1e-12;

/**
 * Numbers that may be further apart, and how far. In run 1918 a pipe nearly chokes: the pressure behind it, 1.2 of 10.3
 * bar(a), moves 190 times as much as the flow does (measured), which either search finds to 1e-14 (RunPath). The same
 * holds of runs 2658 and 5542, with 166 and 197 times (measured), 1.9 of 13.4 and of 9.1 bar(a).
 * In line 39 of Altshul the flow chokes: the answer is the largest flow of the line, or 1e-12 less where rounding says
 * that it does not pass (RunPath), and the last digits of a logarithm decide which.
 */
const LISTED = {
  'run 1918': 2 * 190 * 1e-14,
  'run 2658': 2 * 166 * 1e-14,
  'run 5542': 2 * 197 * 1e-14,
  'line ReservoirModel[law=ALTSHUL] 39': 1.001e-12,
};

/**
 * Numbers of answers that may be further apart than that, and how far absolutely. How much doubt a reading takes away is
 * the difference of two doubts of about a bit each: where it is small, few of its digits are left.
 */
const ABSOLUTE = { bits: 1e-13 };

/** Runs in Node and in a page: the answers that differ, and how many texts and numbers they hold. */
async function differing(source, asked, near, absolute) {
  const airfit = await import(source);
  const found = [];
  const count = { texts: 0, numbers: 0 };
  let worst = 0;
  const tell = (where, mine, theirs) => {
    if (typeof mine !== 'string' || typeof theirs !== 'string') {
      found.push(`${where}: ${JSON.stringify(mine)} is ${JSON.stringify(theirs)} on the JVM`);
      return;
    }
    let at = 0;
    while (mine[at] === theirs[at]) at++;
    const around = (text) => JSON.stringify(text.slice(Math.max(0, at - 60), at + 60));
    found.push(`${where}: ${around(mine)} is ${around(theirs)} on the JVM`);
  };
  const compare = (where, mine, theirs) => {
    if (theirs && typeof theirs === 'object' && mine && typeof mine === 'object') {
      const names = new Set([...Object.keys(mine), ...Object.keys(theirs)]);
      names.forEach((name) => compare(`${where}.${name}`, mine[name], theirs[name]));
    } else if (typeof theirs === 'number' && typeof mine === 'number') {
      count.numbers++;
      if (mine === theirs) return;
      if (Math.abs(mine - theirs) <= (absolute[/\w+$/.exec(where)[0]] ?? 0)) return;
      const apart = Math.abs(mine - theirs) / Math.max(Math.abs(mine), Math.abs(theirs));
      worst = Math.max(worst, apart);
      if (!(apart <= near)) tell(where, mine, theirs);
    } else {
      count.texts++;
      if (mine !== theirs) tell(where, mine, theirs);
    }
  };
  const called = {
    sheet: ({ job, files, ...options }) => airfit.sheet(job, files, options),
    measuring: ({ size }) => airfit.measuring(size),
    jobFile: ({ job }) => ({ text: airfit.jobFile(job) }),
  };
  asked.forEach(({ call, asked: given, answer, refused, number }) => {
    let mine;
    try {
      mine = (called[call] ?? airfit[call])(given);
    } catch (error) {
      const { name, message, file, field, accepted } = error;
      mine = { refused: { name, message, file, field, accepted } };
    }
    compare(`${call} ${number}`, mine, refused ? { refused } : answer);
  });
  return { found, count, worst };
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

/** Runs a function with a module, in Node and in Chromium at once: each has a process of its own. */
async function both(run, module, forNode, forChromium, ...given) {
  const answered = tab.evaluate(
    ([body, code, rest]) => {
      const source = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
      return eval(`(${body})`)(source, ...rest);
    },
    [run.toString(), readFileSync(module, 'utf8'), [forChromium, ...given]],
  );
  await new Promise((sent) => setTimeout(sent, 1000)); // Node hears and says nothing while it computes
  const inNode = await run(pathToFileURL(module).href, forNode, ...given);
  return { Node: inNode, Chromium: await answered };
}

let wrong = 0;
function tell(where, found) {
  wrong += found.length;
  found.slice(0, 20).forEach((fault) => console.error(`${where}: ${fault}`));
}

const root = join(folder, '../..');
tell(
  'docs/embedding.md',
  await faultsOfEmbedding(
    join(root, 'docs/embedding.md'),
    join(folder, 'page/src/main/js/airfit.d.ts'),
    page,
    readFileSync(join(root, 'airfit-examples/sets/workshop.csv'), 'utf8'),
  ),
);
for (const file of [page, desk, probe]) {
  const code = readFileSync(file, 'utf8');
  tell(file, ['</script', '<!--', ']]>'].filter((sign) => code.toLowerCase().includes(sign)).map(
    (sign) => `holds ${sign}, which ends a script inside a page too soon`,
  ));
}
const ofCalls = await both(differing, page, answers, inChromium, NEAR, ABSOLUTE);
for (const [where, { found, count, worst }] of Object.entries(ofCalls)) {
  tell(where, found);
  const calls = where === 'Node' ? answers : inChromium;
  console.log(
    `${where}: ${calls.length} calls with ${count.texts} texts and ${count.numbers} numbers, ${found.length} differ;` +
      ` numbers within ${worst.toExponential(1)}`,
  );
}
for (const [where, { found, count, worst }] of Object.entries(
  await both(differing, desk, ofDesk, someOf(ofDesk), NEAR, ABSOLUTE),
)) {
  tell(where, found);
  const calls = where === 'Node' ? ofDesk : someOf(ofDesk);
  console.log(
    `${where}: ${calls.length} calls of the desk with ${count.texts} texts, ${found.length} differ;` +
      ` numbers within ${worst.toExponential(1)}`,
  );
}
const count = values.trimEnd().split('\n').length;
for (const [where, { found, worst }] of Object.entries(
  await both(valuesDiffering, probe, values, values, NEAR, LISTED),
)) {
  tell(where, found);
  console.log(
    `${where}: ${count} values, ${found.length} differ; numbers within ${worst.toExponential(1)}`,
  );
}
await chromium.close();
process.exit(wrong > 0 ? 1 : 0);
