// The counter page: what is told at the left, what follows from it at the right.
import { $, many, say } from './page.mjs';
import { soon } from './asking.mjs';
import { showBuilder } from './builder.mjs';
import { kindOptions, kindsOfTool, showCards, toolFields } from './cards.mjs';
import { el } from './elements.mjs';
import { showValues, valueOf } from './fields.mjs';
import { clearState, keepState, keptState } from './keep.mjs';
import {
  added,
  branched,
  called,
  gathered,
  isSpread,
  moved,
  placeFor,
  removed,
  slugOf,
  spread,
  unbranched,
} from './line.mjs';
import { askService, saveSet } from './opening.mjs';
import { at, withAt } from './paths.mjs';
import { titled } from './printing.mjs';
import { showKept, showLetterhead, showSet, showStock } from './sections.mjs';
import { SERVICE } from './service.mjs';
import { store } from './store.mjs';

const ENDS = ['1/4', '3/8', '1/2', '3/4']
  .flatMap((size) => [`${size} NPT female`, `${size} NPT male`])
  .concat(['1/4', '3/8', '1/2'].flatMap((size) => [`G ${size} female`, `G ${size} male`, `R ${size} male`]));
const WALLS = [
  'steel pipe',
  'steel pipe, old',
  'galvanized pipe',
  'drawn copper or brass',
  'drawn aluminium',
  'smooth plastic',
  'stainless steel',
  'smooth rubber hose',
  'rubber hose',
];

// ---- what is told is shown

store.follow((isTyping, before) => {
  if (!isTyping) {
    keepingFocus(before?.job ?? {}, showAll);
  }
  $('undo').disabled = !store.canUndo;
  $('redo').disabled = !store.canRedo;
  if ($('keep').checked && !keepState(store.now)) {
    clearState();
    $('keep').checked = false;
    $('clear').hidden = true;
    say('This browser keeps no more: the job is too large. Save it as a file.');
  }
  titled();
  soon();
});

/** Draws anew; who was in a card or the builder is in the same field after it, also where its card stands elsewhere. */
function keepingFocus(before, draw) {
  const focused = document.activeElement;
  const { place: slug, run } = focused?.closest('.card')?.dataset ?? {};
  draw();
  if (focused?.hidden) {
    // What puts a thing away is gone with it.
    focused.parentElement.firstElementChild.focus();
  }
  if (document.activeElement !== document.body || !focused) {
    return;
  }
  if (slug === undefined) {
    (focused.id ? $(focused.id) : null)?.focus();
    return;
  }
  const place = Number(slug.split('-').pop());
  const line = at(store.job, `${run}line`) ?? [];
  const now = line.indexOf(at(before, `${run}line.${place}`));
  const to = slugOf(`${run}line.${Math.min(now < 0 ? place : now, line.length - 1)}`);
  const card = $('cards').querySelector(`[data-place="${to}"]`);
  const { act } = focused.dataset;
  const same = act
    ? card?.querySelector(`[data-act="${act}"]:not(:disabled)`)
    : focused.id
      ? $(focused.id.replace(/^card-[\d-]+(?=-)/, `card-${to}`))
      : card?.querySelector('summary');
  (same ?? card?.querySelector('[data-act]:not(:disabled)') ?? $('kind')).focus();
}

function showAll() {
  const { job, stock, set, built, letterhead } = store.now;
  const open = new Set([...document.querySelectorAll('.more[open]')].map((each) => each.dataset.more));
  showCards($('cards'), job, act);
  document.querySelectorAll('.more').forEach((each) => {
    each.open = open.has(each.dataset.more);
  });
  showBuilder($('builder'), built, buildSet, saveSet);
  showValues(document, job);
  showKept(job);
  showSet(stock, set, built);
  showStock(stock);
  showLetterhead(letterhead);
}

// ---- what is told

document.addEventListener('input', ({ target }) => {
  const path = target.dataset?.field;
  if (path) {
    const isText = target.localName === 'input' && target.type !== 'checkbox';
    const job = withAt(store.job, path, valueOf(target));
    store.change({ job }, isText ? path : `choice of ${path}`);
    if (!isText) {
      store.pause();
    }
    if (path.endsWith('tool.name')) {
      (target.closest('.cards') ?? $('cards')).lastElementChild.textContent = target.value.trim() || 'Tool';
    }
  }
});
document.addEventListener('focusout', () => store.pause());
$('told').addEventListener('submit', (e) => e.preventDefault());

function act(action, path, place, more) {
  const run = path ? at(store.job, path.slice(0, -1)) : store.job;
  const line = run.line ?? [];
  const put = (next) => store.change({ job: path ? withAt(store.job, path.slice(0, -1), next) : next });
  if (action === 'spread') {
    put(spread(run, place));
    say('Two lines stand behind the splitter now, each with a tool of its own.');
    $('cards').querySelector(`[data-field="${path}line.${place}.lines.1.tool.name"]`)?.focus();
  } else if (action === 'branch') {
    put(branched(run, place));
    const last = line[place].lines.length;
    say(`${many(last + 1, 'line')} stand behind the splitter now.`);
    $('cards').querySelector(`[data-field="${path}line.${place}.lines.${last}.tool.name"]`)?.focus();
  } else if (action === 'unbranch') {
    put(unbranched(run, place, more));
    say(`The line is removed. ${many(line[place].lines.length - 1, 'line')} left behind the splitter.`);
  } else if (action === 'add') {
    add(path, more);
  } else if (action === 'remove' && isSpread(line[place])) {
    put(gathered(run, place));
    say('The splitter is removed. What stands here now was its first line.');
  } else {
    const next = action === 'remove' ? removed(line, place) : moved(line, place, action === 'before' ? -1 : 1);
    if (next === line) {
      return;
    }
    const to = action === 'remove' ? Math.min(place, next.length - 1) : place + (action === 'before' ? -1 : 1);
    put({ ...run, line: next });
    say(
      action === 'remove'
        ? `${called(line[place].kind)} removed. ${many(next.length, 'card')} left.`
        : `${called(line[place].kind)} stands ${to + 1} of ${next.length} now.`,
    );
  }
}

/** Puts a card where such a part stands, and leads to it. */
function add(path, kind) {
  const line = at(store.job, `${path}line`) ?? [];
  const behind = placeFor(line, kind);
  store.change({ job: withAt(store.job, `${path}line`, added(line, kind, behind)) });
  say(`${called(kind)} stands ${behind + 2} of ${line.length + 1} now.`);
  $('cards')
    .querySelector(`[data-place="${slugOf(`${path}line.${behind + 1}`)}"] input`)
    ?.focus();
}

$('tool').append(...toolFields('tool.', 'tool'));
$('tool-kinds').append(...kindsOfTool('tool.'));
$('kind').append(...kindOptions());
$('kind').value = 'hose';
$('add').addEventListener('click', () => add('', $('kind').value));

function buildSet(update, typing) {
  store.change({ built: update(store.now.built) }, typing);
  if (typing) {
    showSet(store.now.stock, store.now.set, store.now.built);
  }
}

// ---- undo, keys, keeping

$('undo').addEventListener('click', undo);
$('redo').addEventListener('click', redo);
$('choices').addEventListener('change', ({ target }) => store.change({ compare: target.value }));
// What is typed is the user's work: it goes only if they say so, unless it is kept in the browser or stands in a file.
window.addEventListener('beforeunload', (e) => {
  if (!$('keep').checked && store.isUnsaved) {
    e.preventDefault();
  }
});

/** A line that told of what is undone now is no longer true. */
function undo() {
  if (store.canUndo) {
    say('Undone.');
    store.undo();
  }
}

function redo() {
  if (store.canRedo) {
    say('Done again.');
    store.redo();
  }
}

document.addEventListener('keydown', (e) => {
  if (!(e.ctrlKey || e.metaKey) || e.altKey) {
    return;
  }
  const key = e.key.toLowerCase();
  if (key === 'p' && !$('print').disabled) {
    // Waits until the sheet is made, which the browser's own printing does not.
    e.preventDefault();
    $('print').click();
    return;
  }
  const isRedo = key === 'y' || (key === 'z' && e.shiftKey);
  if (isRedo || key === 'z') {
    e.preventDefault();
    if (isRedo) {
      redo();
    } else {
      undo();
    }
  }
});

$('keep').addEventListener('change', ({ target }) => {
  if (!target.checked) {
    clearState();
  } else if (!keepState(store.now)) {
    target.checked = false;
    say('This browser does not allow it, or the job is too large.');
  }
  $('clear').hidden = !target.checked;
});
$('clear').addEventListener('click', () => {
  clearState();
  $('keep').checked = false;
  $('keep').focus();
  $('clear').hidden = true;
  say('Cleared: nothing is kept in this browser.');
});

$('true-size').addEventListener('toggle', soon);
$('jump').addEventListener('click', (e) => {
  e.preventDefault();
  $('h-answers').focus();
  $('answers').scrollIntoView();
});

$('ends').append(...ENDS.map((end) => el('option', { value: end })));
$('walls').append(...WALLS.map((wall) => el('option', { value: wall })));
const kept = keptState();
$('keep').checked = Boolean(kept?.job);
$('clear').hidden = !kept?.job;
store.begin(kept?.job ? kept : {});
if (SERVICE && !kept?.stock) {
  askService();
}
