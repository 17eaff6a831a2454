// What stands in the sections at the left.
import { $, many } from './page.mjs';
import { el } from './elements.mjs';
import { isUsable, setFile } from './set.mjs';

const SHOWN = new Set([
  'airfitJob',
  'job',
  'customer',
  'number',
  'date',
  'catalogue',
  'units',
  'atHand',
  'supply',
  'line',
  'tool',
  'conditions',
  'rankedBy',
]);

const IN_WORDS = {
  now: 'what is connected now',
  year: 'the figures of a year',
  extras: 'extras',
  receiver: 'a receiver',
  rules: 'rules',
};

/** Names what the file tells and no field shows. */
export function showKept(job) {
  const kept = Object.keys(job).filter((name) => !SHOWN.has(name) && !name.startsWith('//'));
  $('kept').textContent =
    kept.length > 0
      ? `The file tells also: ${kept.map((name) => IN_WORDS[name] ?? name).join(', ')}. That counts, and is kept.`
      : '';
}

/** Says which set counts. */
export function showSet(stock, set, built) {
  const own = built.name?.trim() ? `${built.name.trim()}, built` : 'Built';
  const inStock = Array.isArray(stock?.content.profiles) ? stock.content.profiles.length : 0;
  $('set-state').textContent = set
    ? `${set.title}, from ${set.name}.`
    : isUsable(built)
      ? `${own} here: ${many(setFile(built).profiles.length, 'profile')}.`
      : inStock > 0
        ? `The ${many(inStock, 'profile')} of the stock "${stock.content.catalogue ?? stock.name}".`
        : 'None yet. Without one no real plug can be named: airfit has no table of plug sizes, because none could be ' +
          'verified.';
  $('set-away').hidden = !set;
}

let shownStock;

/** Says what stock is there, and lists what can be chosen by its id. */
export function showStock(stock) {
  if (stock === shownStock) {
    return;
  }
  shownStock = stock;
  const parts = Array.isArray(stock?.content.parts) ? stock.content.parts : [];
  $('stock-state').textContent = stock
    ? `${stock.content.catalogue ?? stock.name}: ${many(parts.length, 'part')}, from ${stock.name}.`
    : 'None yet. Parts are chosen from a catalogue file of the shop.';
  $('stock-away').hidden = !stock;
  options(
    'parts',
    parts.filter(({ kind }) => !/socket|plug|adapter/.test(kind)),
  );
  options(
    'sockets',
    parts.filter(({ kind }) => kind === 'socket'),
  );
  options(
    'plugs',
    parts.filter(({ kind }) => kind === 'plug'),
  );
  options('profiles', Array.isArray(stock?.content.profiles) ? stock.content.profiles : []);
}

/** A list to choose from; a thousand are enough to see that one must type. */
function options(list, things) {
  $(list).replaceChildren(
    ...things.slice(0, 1000).map(({ id, name }) => el('option', { value: String(id) }, String(name ?? id))),
  );
}

/** Says whose head stands on the sheet. */
export function showLetterhead(letterhead) {
  $('letterhead-state').textContent = letterhead
    ? `The head of ${letterhead.title}, from ${letterhead.name}.`
    : 'Without the head of a shop; a letterhead file has one.';
  $('letterhead-away').hidden = !letterhead;
}
