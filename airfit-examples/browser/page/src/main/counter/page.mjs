// Small things of the page that all its modules use.
import { el } from './elements.mjs';

export const $ = (id) => document.getElementById(id);

/** Says a line under the buttons at the top; it is read out. */
export function say(text) {
  $('notice').textContent = text;
}

/** Hands on the files that are chosen or dropped anywhere on the page. */
export function whenOpened(openFiles) {
  $('open').addEventListener('click', () => $('files').click());
  $('files').addEventListener('change', async ({ target }) => {
    await openFiles([...target.files]);
    target.value = '';
  });
  document.addEventListener('dragover', (e) => e.preventDefault());
  document.addEventListener('drop', async (e) => {
    e.preventDefault();
    await openFiles([...(e.dataTransfer?.files ?? [])]);
  });
}

export function many(count, what) {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** Saves a text as a file of the user's. */
export function download(name, text, type) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  el('a', { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}
