// Drives the desk page as people do: node --test desk.mjs
// Wants airfit-examples/browser/page/target/airfit-desk.html ("mvn package").
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { openedSound, type, untilTold, WAIT, wrongForAxe } from './driving.mjs';
import { browser } from './faults.mjs';
import { overflow } from './inside.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const examples = join(root, 'airfit-examples');
const file = join(examples, 'browser/page/target/airfit-desk.html');
const page = pathToFileURL(file).href;
const work = mkdtempSync(join(tmpdir(), 'desk-'));
/** Pictures to look at, where a folder is told. */
const LOOK = process.env.LOOK;
let chromium;

/** The answers of the JVM, which the tests of the calls left. */
const ANSWERS = JSON.parse(readFileSync(join(examples, 'calls/target/desk-answers.json'), 'utf8')).answers;

/** What is in the list of examples, the example's own file, and the words that its sheet must have. */
const TRIED = {
  day: [/^The pressure over the day$/m, 'smithy.json'],
  diagnosis: [/^Before anyone/m, 'slow-grinder.json'],
  water: [/^How far this can be trusted$/m, 'print-works.json'],
  leaks: [/^How it was reckoned$/m, 'leaks.csv'],
  inventory: [/^How far this can be trusted$/m, 'inventory.json'],
  priceList: [/^How far this can be trusted$/m, 'check.json'],
  cards: [/^Given, rounded$/m, 'weak-sander.json'],
};

before(async () => {
  chromium = await browser();
});
after(async () => {
  await chromium?.close();
  rmSync(work, { recursive: true });
});

const opened = (options) => openedSound(chromium, page, options);

async function answered(window) {
  await window.waitForFunction(() => !document.body.classList.contains('working'), null, WAIT);
}

async function tried(window, kind) {
  await window.selectOption('#invented', kind);
  await answered(window);
  await window.waitForFunction(() => document.body.classList.contains('ready'), null, WAIT);
}

/** The words of the sheet on the screen, a line for each block. */
function sheetWords(window) {
  return window.evaluate(() => {
    const sheet = document.querySelector('#sheet').shadowRoot.querySelector('.sheet');
    return [...sheet.querySelectorAll('h1,h2,h3,p,dt,dd,li,th,td,figcaption')].map((each) => each.textContent).join('\n');
  });
}

function written(name, content) {
  const path = join(work, name);
  writeFileSync(path, content);
  return path;
}

async function look(window, name) {
  if (LOOK) {
    await window.screenshot({ path: join(LOOK, `desk ${name}.png`), fullPage: true });
  }
}

async function axe(window, options, state) {
  assert.deepEqual(await wrongForAxe(window, options), [], state);
  assert.deepEqual(
    (await window.evaluate(overflow)).filter(({ element }) => !/^(input|textarea)/.test(element)),
    [],
    state,
  );
}

test('the file holds to its size', () => {
  const zipped = gzipSync(readFileSync(file)).length;
  console.log(`${(zipped / 1000).toFixed(0)} kB gzipped`);
  assert.ok(zipped <= 640_000, `${zipped} bytes gzipped`);
});

test('each kind of file shows its sheet, whole, with its limits and its cautions', async () => {
  const { window, close } = await opened();
  assert.deepEqual(
    await window.$$eval('#invented option', (all) => all.map(({ value }) => value).filter(Boolean)),
    Object.keys(TRIED),
  );
  for (const [kind, [wanted, name]] of Object.entries(TRIED)) {
    const began = Date.now();
    await tried(window, kind);
    console.log(`${kind}: ${Date.now() - began} ms`);
    const words = await sheetWords(window);
    assert.match(words, wanted, kind);
    // What the JVM answered to the same file stands there, word for word.
    const { answer } = ANSWERS.find(({ call, asked }) => call === kind && asked.file === name);
    assert.equal(await window.textContent('#said'), answer.headline, kind);
    for (const text of [...answer.limits, ...answer.cautions.map((each) => each.text)]) {
      assert.ok(words.toLowerCase().includes(text.toLowerCase()), `${kind}: ${text}`);
    }
    // Nothing of the page is lost on the way to the screen.
    const [kept, all] = await window.evaluate((html) => {
      const count = (node) => node.querySelectorAll('*').length;
      const parsed = new DOMParser().parseFromString(html.replace(/<style>[\s\S]*?<\/style>/g, ''), 'text/html');
      return [count(document.querySelector('#sheet').shadowRoot.querySelector('.sheet')), count(parsed.body)];
    }, answer.page);
    assert.equal(kept, all, kind);
    await look(window, kind);
  }
  await close();
});

test('a file that names another waits for it, and is answered when it comes', async () => {
  const { window, close } = await opened();
  const shops = join(examples, 'shops/canal-row');
  await window.setInputFiles('#files', [join(shops, 'check.json')]);
  await untilTold(window, '#file-wrong', /price-list\.json: is not here yet; open that file too/);
  assert.equal(await window.locator('#take').isVisible(), false);
  await window.setInputFiles('#files', [join(shops, 'price-list.json'), join(shops, 'profiles.csv')]);
  await window.waitForFunction(() => document.body.classList.contains('ready'), null, WAIT);
  assert.equal(await window.textContent('#file-wrong'), '');
  assert.equal(await window.locator('#opened li').count(), 3);
  await window.getByRole('button', { name: 'Put it away: check.json' }).click();
  assert.equal(await window.locator('#opened li').count(), 2);
  assert.equal(await window.locator('#take').isVisible(), false);
  await close();
});

test('what cannot be used is told in one line, and no sheet stands beside it', async () => {
  const { window, close } = await opened();
  await tried(window, 'water');
  for (const [name, text, wanted] of [
    ['w.json', '{"airfitWater": 1, "title": "x"}', /^w\.json: customer: is missing/],
    ['w.json', '{"airfitWater": 1, "title": "x", }', /^w\.json: line 1, column .*is not JSON/],
    ['l.csv', 'record,tag\nleak,1\n', /^l\.csv: row 2: stands before the plant/],
  ]) {
    await window.setInputFiles('#files', [written(name, text)]);
    await untilTold(window, '#file-wrong', wanted);
    assert.equal(await window.locator('#take').isVisible(), false, name);
  }
  await close();
});

test('a file that others name is no file to answer', async () => {
  const { window, close } = await opened();
  await window.setInputFiles('#files', [written('x.json', '{"parts": []}')]);
  await untilTold(window, '#file-wrong', /^x\.json: is no file that is answered here by itself/);
  assert.equal(await window.locator('#opened li').count(), 1);
  await close();
});

test('oxygen is refused, in a file and before all else of it', async () => {
  const { window, close } = await opened();
  await window.locator('summary', { hasText: 'Paste its text' }).click();
  await window.fill('#pasted', '{"airfitDay": 1, "medium": "oxygen", "title": 7}');
  await window.getByRole('button', { name: 'Answer it', exact: true }).first().click();
  await untilTold(window, '#said', /compressed air for tools only, not on oxygen/);
  assert.match(await sheetWords(window), /Not for oxygen/i);
  await window.fill('#pasted', 'hello');
  await window.getByRole('button', { name: 'Answer it', exact: true }).last().click();
  await untilTold(window, '#file-wrong', /is no file that is answered here/);
  await close();
});

test('a form tells its fault beside the field, and its answer by Enter', async () => {
  const { window, close } = await opened();
  await type(window, {
    'Air taken in': '80 °F',
    'Its relative humidity': '75 %',
    'Pressure of the line': '100 psig',
    'Free air': '500 cfm',
    'Cooled to': '100 °F',
    'In a time of': '8 h',
  });
  await window.press('#c-time', 'Enter');
  await window.waitForSelector('#c-air[aria-invalid="true"]', WAIT);
  assert.equal(await window.evaluate(() => document.activeElement.id), 'c-air');
  assert.match(await window.textContent('#condensate .wrong'), /cfm/);
  await window.fill('#c-air', '500 scfm');
  await window.press('#c-air', 'Enter');
  await untilTold(window, '#said', /^Water that falls out: Up to 24\.9\d* gal in 8 h where the air is cooled to 100 °F/);
  assert.equal(await window.locator('[aria-invalid]').count(), 0);
  assert.match(await sheetWords(window), /How far this can be trusted/);
  await look(window, 'condensate');
  await window.locator('#leak [data-try]').click();
  await untilTold(window, '#said', /^It loses: .* L\/s ANR \(hole\)/);
  assert.match(await sheetWords(window), /paid back in/);
  await look(window, 'leak');
  await close();
});

test('what is printed and what is saved is the sheet of the program', async () => {
  const { window, close } = await opened();
  await tried(window, 'leaks');
  const path = join(work, 'sheet.pdf');
  await window.pdf({ path, format: 'A4', printBackground: false });
  const paper = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
  assert.match(paper, /Leaks: /);
  assert.match(paper, /How it was reckoned/);
  assert.doesNotMatch(paper, /Find the cost/);
  const [download] = await Promise.all([window.waitForEvent('download'), window.click('#sheet-save')]);
  assert.equal(download.suggestedFilename(), 'leaks.html');
  const { answer } = ANSWERS.find(({ call, asked }) => call === 'leaks' && asked.file === 'leaks.csv');
  assert.equal(readFileSync(await download.path(), 'utf8'), answer.page);
  await close();
});

const SIZES = {
  'on a desk': { viewport: { width: 1280, height: 900 } },
  'on a telephone': { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true },
};
for (const [where, size] of Object.entries(SIZES)) {
  for (const colorScheme of ['light', 'dark']) {
    test(`nothing sticks out and axe finds nothing ${where}, ${colorScheme}`, async () => {
      const options = { ...size, colorScheme };
      const { window, close } = await opened(options);
      await axe(window, options, 'empty');
      await look(window, `empty ${where} ${colorScheme}`);
      await window.evaluate(() => document.querySelectorAll('details').forEach((each) => (each.open = true)));
      // The check of a price list has no other parts than the inventory, and draws jobs for many seconds.
      for (const kind of Object.keys(TRIED).filter((each) => each !== 'priceList')) {
        await tried(window, kind);
        await axe(window, options, kind);
        // What is too wide scrolls in its own place.
        assert.deepEqual(
          await window.evaluate(() => {
            const sheet = document.querySelector('#sheet');
            const inside = sheet.shadowRoot.querySelector('.sheet');
            return inside.scrollWidth > sheet.clientWidth + 1 ? [inside.scrollWidth, sheet.clientWidth] : [];
          }),
          [],
          kind,
        );
        await look(window, `${kind} ${where} ${colorScheme}`);
      }
      await window.locator('#condensate button[type=submit]').click();
      await window.waitForSelector('#condensate [aria-invalid]', WAIT);
      await axe(window, options, 'a fault');
      await close();
    });
  }
}
