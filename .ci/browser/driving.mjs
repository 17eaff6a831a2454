// Drives a page as people do; for counter.mjs, desk.mjs and service.mjs.
import assert from 'node:assert/strict';

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
