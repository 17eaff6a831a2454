// Opens the pages in Firefox, from file, and uses them as people do: node --test firefox.mjs
// Wants airfit-examples/browser/page/target/airfit.html, notebooks/pages with the script, and the jar of the sheets.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';

const root = join(dirname(fileURLToPath(import.meta.url)), '../../..');
const work = mkdtempSync(join(tmpdir(), 'firefox-'));
/** Pictures to look at, where a folder is told. */
const LOOK = process.env.LOOK;
const WAIT = { timeout: 60000 };
let firefox;

before(async () => {
  firefox = await puppeteer.launch({
    browser: 'firefox',
    executablePath: process.env.FIREFOX,
    headless: true,
    timeout: 120000,
    protocolTimeout: 120000,
  });
});
after(async () => {
  await firefox?.close();
  rmSync(work, { recursive: true });
});

/** Opens a page, gives it to a test; what it says to the console, and what it asks of a network, is a fault. */
async function at(file, look) {
  assert.ok(existsSync(file), `${file} is missing`);
  const page = await firefox.newPage();
  await page.setViewport({ width: 1280, height: 900 });
  const faults = [];
  page.on('console', (message) => ['error', 'warn'].includes(message.type()) && faults.push(message.text()));
  page.on('pageerror', (error) => faults.push(error.message));
  page.on(
    'request',
    (request) => /^(file|blob|data):/.test(request.url()) || faults.push(`asked for ${request.url()}`),
  );
  await page.goto(pathToFileURL(file).href);
  await look(page);
  if (LOOK) {
    await page.screenshot({ path: join(LOOK, `${file.split('/').pop()}.png`), fullPage: true });
  }
  await page.close();
  assert.deepEqual(faults, []);
}

/** Fills a field as typing does. */
function fill(page, selector, text) {
  return page.$eval(
    selector,
    (field, value) => {
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
      field.dispatchEvent(new Event('change', { bubbles: true }));
    },
    text,
  );
}

/** How many sides a page has on paper. */
async function sides(page) {
  const path = join(work, 'paper.pdf');
  await page.pdf({ path, format: 'A4' });
  const told = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
  return Number(/Pages:\s+(\d+)/.exec(told)[1]);
}

const COUNTER = join(root, 'airfit-examples/browser/page/target/airfit.html');

test('the counter page answers its example in a worker, saves it, and prints one side', () =>
  at(COUNTER, async (page) => {
    await page.click('#example');
    await page.waitForSelector('#shown .parts', WAIT);
    assert.match(await page.$eval('#shown .parts', (parts) => parts.textContent), /Hose/);
    assert.equal((await page.$$('#shown .chart svg')).length, 1);
    await page.waitForFunction(() => document.body.classList.contains('ready'), WAIT);
    assert.equal(await sides(page), 1);
  }));

test('the counter page opens a job and its catalogue from files', () =>
  at(COUNTER, async (page) => {
    const jobs = join(root, 'airfit-examples/jobs/boatyard');
    const chosen = await page.$('#files');
    await chosen.uploadFile(join(jobs, 'weak-sander.json'), join(jobs, 'catalogue.json'));
    await page.waitForSelector('#shown .parts', WAIT);
    assert.ok((await page.$$('#cards > li')).length > 1);
  }));

test('lesson 1 follows a reading and says the unit that it was taken in', () =>
  at(join(root, 'notebooks/pages/01-identify-a-plug.html'), async (page) => {
    const form = 'form[data-figure="1-tip"]:has(> .title)';
    await page.waitForSelector(form, WAIT);
    await fill(page, `${form} input[type="text"]`, '9.20');
    await page.waitForFunction(
      () => /Skua/.test(document.querySelector('[data-copy="cell-09-0"] tbody tr')?.textContent ?? ''),
      WAIT,
    );
    assert.equal(await page.$eval(`${form} .taken`, (line) => line.textContent), 'taken as 9.20 mm');
  }));

test('lesson 4 follows a slider: its number moves, and its working is drawn anew', () =>
  at(join(root, 'notebooks/pages/04-pressure-loss-by-hand.html'), async (page) => {
    const form = 'form[data-figure="4-pipe"]:has(> .title)';
    await page.waitForSelector(form, WAIT);
    const loss = () =>
      page.$eval('[data-copy="cell-06-0"]', (copy) => Number(/pressure loss\s*([\d.]+)/.exec(copy.textContent)[1]));
    await fill(page, `${form} input[type="range"]`, '20');
    await page.waitForSelector('.live-copy', WAIT);
    const less = await loss();
    await fill(page, `${form} input[type="range"]`, '80');
    await page.waitForFunction(
      (before) =>
        Number(/pressure loss\s*([\d.]+)/.exec(document.querySelector('[data-copy="cell-06-0"]').textContent)[1]) >
        before,
      WAIT,
      less,
    );
    assert.ok((await page.$$('[data-copy="cell-08-0"] math')).length > 8);
  }));

test('an exercise of lesson 4 is checked, with a hint', () =>
  at(join(root, 'notebooks/pages/04-pressure-loss-by-hand-exercises.html'), async (page) => {
    const form = 'form[aria-label="answer 4b"]';
    await page.waitForSelector(form, WAIT);
    const says = async (answer, words) => {
      await fill(page, `${form} input`, answer);
      await page.click(`${form} button`);
      await page.waitForFunction(
        (selector, reply) => document.querySelector(selector).textContent.includes(reply),
        WAIT,
        `${form} .reply`,
        words,
      );
    };
    await says('1', 'Not yet. Hint: ');
    await says('5.51 psi', 'Right (within 0.05 psi'); // 1.8 psi × (70/40)²
  }));

test('a job sheet opens and goes on one side', async () => {
  const sheet = join(work, 'sheet.html');
  try {
    execFileSync('java', [
      ...['-jar', join(root, 'airfit-examples/jobsheet/target/airfit-jobsheet.jar')],
      ...[join(root, 'airfit-examples/jobs/boatyard/weak-sander.json'), sheet],
    ]);
  } catch {
    // A job that cannot be met is a sheet too.
  }
  assert.ok(statSync(sheet).size > 1000);
  await at(sheet, async (page) => {
    assert.match(await page.$eval('body', (body) => body.textContent), /Recommended parts/);
    assert.ok(readFileSync(sheet, 'utf8').includes('@page'));
    assert.ok((await sides(page)) <= 2);
  });
});
