// What is wrong with a page: on a screen, on a telephone, and on paper.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { blank, ends, fine, newLooks, oneSide, overflow, prepare, small, unlink, windowed } from './inside.mjs';

export const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Text of charts on a telephone is at least as large [CSS px]; half a pixel is the rounding of a layout. */
const LEAST_TEXT = 11;

/** Print is at least as large, indices too [pt]. */
const LEAST_PRINT = 7;

const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 390, height: 844 };

const PAPERS = { letter: [215.9, 279.4], a4: [210, 297] };

export function browser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--force-color-profile=srgb'],
  });
}

/** Rules of axe that judge colours, and take most of its time. */
export const COLOURS = ['color-contrast', 'link-in-text-block'];

/**
 * All faults of one page, each {page, where, element, fault}. Colours are judged once for each look of a text: what was
 * looked at on a page before is in `looks` and is not looked at again. Axe judges what pages of one kind share, and
 * takes most of the time: it may be left to some of them.
 */
export async function faults(browser, file, looks = new Set(), withAxe = true) {
  const found = [];
  const url = pathToFileURL(resolve(file)).href;
  const add = (where, list) => list.forEach((one) => found.push({ page: basename(file), where, ...one }));

  const screen = await open(browser, url, { viewport: WIDE }, add);
  add('1280 px', await screen.evaluate(overflow));
  add('1280 px', await screen.evaluate(blank));
  if (withAxe) {
    await throughAxe(screen, add, looks);
  }
  await paper(screen, add);
  await screen.context().close();

  const telephone = await open(
    browser,
    url,
    { viewport: NARROW, isMobile: true, hasTouch: true, deviceScaleFactor: 2 },
    add,
  );
  add('390 px', await telephone.evaluate(overflow));
  add('390 px', await telephone.evaluate(small, LEAST_TEXT));
  await telephone.evaluate(() =>
    document.querySelectorAll('details').forEach((one) => {
      one.open = true;
    }),
  );
  add('390 px, all unfolded', await telephone.evaluate(overflow));
  await telephone.context().close();
  return distinct(found);
}

async function throughAxe(screen, add, looks) {
  await screen.evaluate(AXE);
  add('1280 px', await axe(screen, { rules: off(COLOURS) }));
  add('1280 px', await colours(screen, 'light', looks));
  await screen.emulateMedia({ colorScheme: 'dark' });
  add('1280 px, dark', await colours(screen, 'dark', looks));
  await screen.emulateMedia({ colorScheme: 'light' });
  // here and not on the telephone, so that axe is read once for a page
  await screen.setViewportSize(NARROW);
  add('390 px', await axe(screen, { rules: off(COLOURS) }));
  await screen.setViewportSize(WIDE);
}

async function open(browser, url, options, add) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) {
      add('console', [{ element: message.location().url, fault: message.text() }]);
    }
  });
  page.on('request', (request) => {
    if (!/^(file|data|blob):/.test(request.url())) {
      add('network', [{ element: request.url(), fault: 'the page asks the network for something' }]);
    }
  });
  page.on('pageerror', (error) => add('script', [{ element: '', fault: error.message }]));
  await page.goto(url);
  return page;
}

export function off(rules) {
  return Object.fromEntries(rules.map((rule) => [rule, { enabled: false }]));
}

/** What axe finds wrong with colours in texts of a look that no page had before. */
async function colours(page, scheme, looks) {
  const known = [...looks].filter((look) => look.startsWith(scheme)).map((look) => look.slice(scheme.length));
  const found = await page.evaluate(newLooks, known);
  found.forEach((look) => looks.add(scheme + look));
  return found.length > 0 ? axe(page, { runOnly: { type: 'rule', values: COLOURS } }, '[data-new-look]') : [];
}

/** What axe finds in a page that has read it, or in some of its elements. */
async function axe(page, options, include = undefined) {
  // Drawings that are hidden from screen readers, such as the glyphs of formulas, have nothing to say.
  const run = ([options, include]) =>
    globalThis.axe.run(
      { exclude: [['svg[aria-hidden="true"]']], ...(include ? { include: [[include]] } : {}) },
      { resultTypes: ['violations'], ...options },
    );
  const { violations } = await page.evaluate(run, [options, include]);
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => ({ element: target.join(' '), fault: `${help} (axe: ${id})` })),
  );
}

/** Prints the page and looks where its parts came to lie. */
async function paper(page, add) {
  await page.emulateMedia({ media: 'print' });
  for (const unfolded of [false, true]) {
    if (unfolded && !(await page.evaluate(() => document.querySelector('details') !== null))) {
      return;
    }
    if (unfolded) {
      await page.evaluate(() =>
        document.querySelectorAll('details').forEach((one) => {
          one.open = true;
        }),
      );
    }
    const parts = await page.evaluate(prepare);
    const { papers, margins } = await page.evaluate(windowed);
    // who unfolds a page may print it on either paper; the shorter one breaks it more often
    for (const [name, [width, height]] of Object.entries(papers ?? (unfolded ? { letter: PAPERS.letter } : PAPERS))) {
      const where = `${name} paper${unfolded ? ', all unfolded' : ''}`;
      const inner = [width - margins.left - margins.right, height - margins.top - margins.bottom].map(
        (mm) => (mm * 96) / 25.4,
      );
      await page.setViewportSize({ width: Math.floor(inner[0]), height: Math.floor(inner[1]) });
      add(where, await page.evaluate(overflow));
      add(where, await page.evaluate(fine, LEAST_PRINT));
      add(where, await page.evaluate(ends, Math.ceil(inner[1])));
      await page.setViewportSize(WIDE);
      const ofOneSide = await page.evaluate(oneSide);
      const { sides, count } = await print(page, ofOneSide, papers ? { preferCSSPageSize: true } : { format: name });
      add(where, torn(parts, sides));
      if (ofOneSide && count > 1) {
        add(where, [{ element: 'table', fault: `a sheet to hand over takes ${count} sides, not one` }]);
      }
    }
    await page.evaluate(unlink);
  }
  await page.emulateMedia({ media: 'screen' });
}

/** On which side of paper each mark lies, and how many sides the page takes, where they are to be counted. */
async function print(page, counted, options) {
  const folder = mkdtempSync(join(tmpdir(), 'print-'));
  const read = (...words) => execFileSync('pdfinfo', words, { encoding: 'utf8', maxBuffer: 1 << 26 });
  try {
    const file = join(folder, 'page.pdf');
    await page.pdf({ path: file, printBackground: true, ...options });
    const marks = read('-dests', file).matchAll(/^\s*(\d+) \[[^\]]*\] "([^"]+)"$/gm);
    return {
      sides: new Map([...marks].map(([, side, name]) => [name, Number(side)])),
      count: counted ? Number(/^Pages:\s+(\d+)/m.exec(read(file))[1]) : 1,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function torn(parts, sides) {
  const found = [];
  for (const { kind, element, first, second } of parts) {
    const [above, below] = [sides.get(first), sides.get(second)];
    if (above === undefined || below === undefined) {
      found.push({ element, fault: `not found on the paper: ${above === undefined ? first : second}` });
    } else if (above !== below) {
      found.push({ element, fault: `${kind} (sides ${above} and ${below})` });
    }
  }
  return found;
}

function distinct(found) {
  const seen = new Set();
  return found.filter(({ page, where, element, fault }) => {
    const key = [page, where, element, fault.replace(/\(sides.*/, '')].join('\n');
    return !seen.has(key) && seen.add(key);
  });
}
