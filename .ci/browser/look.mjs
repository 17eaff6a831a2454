#!/usr/bin/env node
// Pictures of a page for a person's eye: node look.mjs PAGE.html OUT [WIDTH…|letter|a4]
// OUT is how the names of the pictures begin; DARK=1 in front takes the dark colours.
import { chromium } from 'playwright-core';
import { pathToFileURL } from 'node:url';
import { resolve } from 'node:path';
import { asked } from './asked.mjs';

const [file, out, ...forms] = asked(import.meta.url, 3, Infinity);
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
for (const form of forms) {
  const width = Number(form);
  const page = await browser.newPage({
    viewport: { width: width || 1280, height: 900 },
    colorScheme: process.env.DARK ? 'dark' : 'light',
    deviceScaleFactor: 1,
  });
  await page.goto(pathToFileURL(resolve(file)).href);
  if (width) {
    await page.screenshot({ path: `${out}-${form}.png`, fullPage: true });
  } else {
    await page.pdf({ path: `${out}-${form}.pdf`, format: form, preferCSSPageSize: false });
  }
}
await browser.close();
