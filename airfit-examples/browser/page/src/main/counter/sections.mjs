// What stands in the sections at the left.
import { $, many } from './page.mjs';
import { el } from './elements.mjs';
import { CHOICES, comparedInWords } from './compared.mjs';
import { runs } from './line.mjs';
import { SERVICE } from './service.mjs';
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
  'receiver',
  'year',
]);

const IN_WORDS = {
  now: 'what is connected now',
  extras: 'extras',
  rules: 'rules',
};

if (SERVICE) {
  $('stock-open').textContent = 'Ask the service again';
}

/** Names what the file tells and no field shows, and unfolds what it tells and most jobs do not. */
export function showKept(job) {
  for (const name of ['receiver', 'year']) {
    $(name).open ||= job[name] !== undefined;
  }
  const isSeveral = runs(job).length > 1 && job.tool === undefined;
  $('tool').hidden = isSeveral;
  $('tool-kinds').hidden = isSeveral;
  $('tools').hidden = !isSeveral;
  const kept = Object.keys(job).filter((name) => !SHOWN.has(name) && !name.startsWith('//'));
  $('kept').textContent =
    kept.length > 0
      ? `The file tells also: ${kept.map((name) => IN_WORDS[name] ?? name).join(', ')}. `
        + 'That counts and is kept; it cannot be changed here.'
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

for (const [how, words] of Object.entries(CHOICES)) {
  $('choices').append(
    el(
      'p',
      { class: 'tick' },
      el('label', {}, el('input', { type: 'radio', name: 'compare', value: how, 'data-compare': true }), ` ${words}`),
    ),
  );
}

/** Says with what a plug is compared, where set and stock both have profiles, and whether a job knew another set. */
export function showCompared({ own, stock, how, ...comparing }, other) {
  $('choices').hidden = !how;
  for (const choice of $('choices').querySelectorAll('input')) {
    choice.checked = choice.value === how;
  }
  $('compared').textContent = comparedInWords({ how, ...comparing });
  $('compared').hidden = !how;
  $('other-set').textContent = other;
  $('other-set').hidden = !other;
  const ofStock = Array.isArray(stock?.profiles) ? stock.profiles : [];
  options('profiles', [...(own?.profiles ?? []), ...ofStock]);
}

let shownStock;
let shownComplaint = '';

/** Says what stock is there, or why none is, and lists what can be chosen by its id. */
export function showStock(stock, complaint = '') {
  if (stock === shownStock && complaint === shownComplaint) {
    return;
  }
  shownStock = stock;
  shownComplaint = complaint;
  const parts = Array.isArray(stock?.content.parts) ? stock.content.parts : [];
  $('stock-state').textContent = stock
    ? `${complaint ? `${complaint}. Still here: ` : ''}${stock.content.catalogue ?? stock.name}: ` +
      `${many(parts.length, 'part')}, from ${stock.name}.`
    : complaint
      ? `${complaint}.`
      : `None yet. Parts are chosen from a catalogue ${SERVICE ? 'that the service has' : 'file of the shop'}.`;
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
}

/** A list to choose from; a thousand are enough to see that one must type. */
function options(list, things) {
  if (things.length === 0 && $(list).childElementCount === 0) {
    return;
  }
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
