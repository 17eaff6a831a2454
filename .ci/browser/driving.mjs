// Drives a page as people do; for counter.mjs, desk.mjs, lessons.mjs and service.mjs.
import assert from 'node:assert/strict';
import { AXE, COLOURS, off } from './faults.mjs';

/** Ends what hangs, also on a machine that does much else: a check of a price list takes ten seconds alone. */
export const WAIT = { timeout: 180_000 };

/**
 * A page in a window of its own. What it says to the console, and what it asks of a network, is a fault; but of the
 * server that it came from, where it did, and what that answers.
 */
export async function openedIn(chromium, address, options = {}) {
  const context = await chromium.newContext({
    viewport: { width: 1280, height: 900 },
    acceptDownloads: true,
    ...options,
  });
  const window = await context.newPage();
  const faults = [];
  const own = address.startsWith('file:') ? 'file:' : new URL(address).origin;
  window.on(
    'console',
    (message) =>
      ['error', 'warning'].includes(message.type()) &&
      !(own !== 'file:' && message.location().url.startsWith(own) && /^Failed to load resource/.test(message.text())) &&
      faults.push(message.text()),
  );
  window.on('pageerror', (error) => faults.push(error.message));
  window.on(
    'request',
    (request) =>
      /^(blob|data):/.test(request.url()) ||
      request.url().startsWith(own) ||
      faults.push(`asked for ${request.url()}`),
  );
  await window.goto(address);
  return { window, faults };
}

/** The same page, which when it is closed must have had no fault. */
export async function openedSound(chromium, address, options = {}) {
  const { window, faults } = await openedIn(chromium, address, options);
  return {
    window,
    close: async () => {
      await window.context().close();
      assert.deepEqual(faults, []);
    },
  };
}

/**
 * What axe finds wrong with a page as it stands. Colours take most of its time and do not go by the width: on a
 * telephone all else is judged, in the dark the colours alone, and nothing where both are so.
 */
export async function wrongForAxe(window, { isMobile = false, colorScheme = 'light' } = {}) {
  const isDark = colorScheme === 'dark';
  if (isMobile && isDark) {
    return [];
  }
  const judged = isDark
    ? { runOnly: { type: 'rule', values: COLOURS } }
    : { rules: isMobile ? off(COLOURS) : {} };
  await window.evaluate(AXE);
  const { violations } = await window.evaluate(
    (options) => globalThis.axe.run(document, { resultTypes: ['violations'], ...options }),
    judged,
  );
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
}

export async function type(window, fields) {
  for (const [label, text] of Object.entries(fields)) {
    await window.getByLabel(label, { exact: true }).fill(text);
  }
}

/** Waits until an element says so. */
export async function untilTold(window, selector, words) {
  await window.waitForFunction(
    ([where, source]) => new RegExp(source).test(document.querySelector(where)?.textContent ?? ''),
    [selector, words.source],
    WAIT,
  );
}
