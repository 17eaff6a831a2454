// Reads the documentation as people do, from files: node --test site.mjs, with the site's folder in SITE.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { browser } from './faults.mjs';

const SITE = resolve(process.env.SITE);

let chromium;
before(async () => {
  chromium = await browser();
});
after(() => chromium.close());

async function open(file, width, more = {}) {
  const context = await chromium.newContext({ viewport: { width, height: 900 }, ...more });
  const page = await context.newPage();
  const asked = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => asked.push(error.message));
  await page.goto(pathToFileURL(join(SITE, file)).href);
  return { page, asked, close: () => context.close() };
}

for (const width of [1280, 390]) {
  test(`a search at ${width} px leads to the place, by the keyboard alone`, async () => {
    const { page, asked, close } = await open('verification/flow-leaks.html', width);
    await page.focus('#search');
    await page.keyboard.type('check valve in a ring');
    await page.waitForSelector('.found li');
    assert.ok((await page.locator('.found').boundingBox()).width <= width);
    await page.keyboard.type(' zzyzx');
    await page.waitForFunction(() => document.querySelector('.found p').textContent === 'Nothing found.');
    await page.fill('#search', 'biggest restriction');
    await page.waitForFunction(() => document.querySelectorAll('.found li').length > 1);
    await page.keyboard.press('ArrowDown');
    assert.match(await page.evaluate(() => document.activeElement.textContent), /restriction/i);
    await page.keyboard.press('Enter');
    await page.waitForURL(/guide\.html#find-the-biggest-restriction$/);
    assert.ok(await page.evaluate(() => document.getElementById('find-the-biggest-restriction')));
    assert.deepEqual(asked.filter((url) => !url.startsWith('file:')), []);
    await close();
  });
}

test('Escape closes what was found and leaves the field', async () => {
  const { page, close } = await open('index.html', 1280);
  await page.fill('#search', 'hose');
  await page.waitForSelector('.found li');
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('.found').isVisible(), false);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'search');
  await close();
});

test('a program is copied whole', async () => {
  const { page, close } = await open('guide.html', 1280, { permissions: ['clipboard-read', 'clipboard-write'] });
  await page.locator('.code', { hasText: 'class Quantities' }).locator('.copy').click();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  assert.match(copied, /^import java\.util\.Optional;\n[\s\S]*public final class Quantities \{[\s\S]*\n\}\n$/);
  await close();
});

test('the list beside the text is open on a wide screen, folded on a telephone, and leads to its places', async () => {
  const wide = await open('theory.html', 1280);
  await wide.page.click('nav.beside a[href="#networks"]');
  assert.ok(await wide.page.evaluate(() => document.getElementById('networks').getBoundingClientRect().top < 400));
  await wide.close();
  const narrow = await open('theory.html', 390);
  assert.equal(await narrow.page.locator('nav.beside details').evaluate((one) => one.open), false);
  await narrow.close();
});

test('without script everything can be read', async () => {
  const { page, close } = await open('faq.html', 390, { javaScriptEnabled: false });
  assert.equal(await page.locator('h1').textContent(), 'Traps of the trade');
  assert.equal(await page.locator('#search').count(), 0);
  await close();
});
