// The counter page: what is told at the left, what follows from it at the right.
import { at, withAt } from './paths.mjs';
import { begun, changedTo, paused, canUndo, canRedo, undone, redone } from './history.mjs';
import { added, moved, removed, placeFor, called } from './line.mjs';
import { freshJob, isFresh, jobFile, fileName, filesFor, hasPlug, hasSet, hasThread, isOtherMedium, lacking, placed } from './job.mjs';
import { WrongFile, requireSmall, recognised } from './bounds.mjs';
import { setFile, isUsable, DIMENSIONS } from './set.mjs';
import { FileStock } from './stock.mjs';
import { Reckoner } from './reckoner.mjs';
import { el } from './elements.mjs';
import { valueOf, showValues, showWrong, fieldAt } from './fields.mjs';
import { showCards, kindOptions } from './cards.mjs';
import { measuringDrawing, SIZES } from './measuring.mjs';
import { trueSize } from './truesize.mjs';
import { showBuilder } from './builder.mjs';
import { takenApart } from './pages.mjs';
import { layReady, takeAway } from './paper.mjs';
import { refusal, plugPart, setPart, threadPart, wantedPart, faultPart, sheetParts } from './answers.mjs';
import { keptState, keepState, clearState } from './keep.mjs';
import { plugAsked, plugAnswered, threadAsked, threadAnswered } from './questions.mjs';

const $ = (id) => document.getElementById(id);
const form = $('told');
const PAUSE_MS = 180;
const ENDS = ['1/4', '3/8', '1/2', '3/4'].flatMap((size) => [`${size} NPT female`, `${size} NPT male`])
  .concat(['1/4', '3/8', '1/2'].flatMap((size) => [`G ${size} female`, `G ${size} male`, `R ${size} male`]));
const WALLS = ['steel pipe', 'steel pipe, old', 'galvanized pipe', 'drawn copper or brass', 'drawn aluminium',
  'smooth plastic', 'stainless steel', 'smooth rubber hose', 'rubber hose'];

const reckoner = new Reckoner($('library').textContent);
let history = begun({ job: freshJob(), stock: null, set: null, built: {}, others: {} });
let answer = { sheet: null, files: null };
let wrong = [];

// ---- the state, and what shows it

function change(next, typing = '') {
  history = changedTo(history, { ...history.now, ...next }, typing);
  follow(typing !== '');
}

/** Shows the state. While one types in a field only what depends on it is drawn. */
function follow(isTyping) {
  const { job } = history.now;
  if (!isTyping) {
    showAll();
  }
  $('undo').disabled = !canUndo(history);
  $('redo').disabled = !canRedo(history);
  if ($('keep').checked) {
    keepState(history.now);
  }
  document.title = job.job ? `${job.job} – airfit` : 'airfit: the counter page';
  soon();
}

function showAll() {
  const { job, stock, set, built } = history.now;
  const open = new Set([...document.querySelectorAll('.more[open]')].map((each) => each.dataset.more));
  showCards($('cards'), job, act);
  document.querySelectorAll('.more').forEach((each) => { each.open = open.has(each.dataset.more); });
  showBuilder($('builder'), built, buildSet, saveSet);
  showValues(form, job);
  showKept(job);
  showSet(stock, set, built);
  showStock(stock);
}

const SHOWN = new Set(['airfitJob', 'job', 'customer', 'number', 'date', 'catalogue', 'units', 'atHand', 'supply', 'line',
  'tool', 'conditions', 'rankedBy']);

function showKept(job) {
  const kept = Object.keys(job).filter((name) => !SHOWN.has(name) && !name.startsWith('//'));
  $('kept').textContent = kept.length > 0 ? `The file tells also: ${kept.join(', ')}. That counts, and is kept.` : '';
}

function showSet(stock, set, built) {
  const inStock = Array.isArray(stock?.content.profiles) ? stock.content.profiles.length : 0;
  $('set-state').textContent = set
    ? `${set.title}, from ${set.name}.`
    : isUsable(built)
      ? `${setFile(built).set}, built here: ${many(setFile(built).profiles.length, 'profile')}.`
      : inStock > 0
        ? `The ${many(inStock, 'profile')} of the stock "${stock.content.catalogue ?? stock.name}".`
        : 'None yet. Without one no real plug can be named: airfit has no table of plug sizes, because none could be verified.';
  $('set-away').hidden = !set;
}

function showStock(stock) {
  const parts = Array.isArray(stock?.content.parts) ? stock.content.parts : [];
  $('stock-state').textContent = stock
    ? `${stock.content.catalogue ?? stock.name}: ${many(parts.length, 'part')}, from ${stock.name}.`
    : 'None yet. Parts are chosen from a catalogue file of the shop.';
  $('stock-away').hidden = !stock;
  options('parts', parts.filter(({ kind }) => !/socket|plug|adapter/.test(kind)));
  options('sockets', parts.filter(({ kind }) => kind === 'socket'));
  options('plugs', parts.filter(({ kind }) => kind === 'plug'));
  options('profiles', Array.isArray(stock?.content.profiles) ? stock.content.profiles : []);
}

/** A list to choose from; a thousand are enough to see that one must type. */
function options(list, things) {
  $(list).replaceChildren(...things.slice(0, 1000).map(({ id, name }) => el('option', { value: String(id) }, String(name ?? id))));
}

function many(count, what) {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

// ---- what is told

form.addEventListener('input', ({ target }) => {
  const path = target.dataset?.field;
  if (path) {
    const isText = target.localName === 'input' && target.type !== 'checkbox';
    const job = withAt(history.now.job, path, valueOf(target));
    history = changedTo(history, { ...history.now, job }, isText ? path : '');
    follow(true);
    if (path.startsWith('tool.name')) {
      $('cards').lastElementChild.textContent = target.value.trim() || 'Tool';
    }
  }
});
form.addEventListener('focusout', () => { history = paused(history); });
form.addEventListener('submit', (e) => e.preventDefault());

function act(action, place) {
  const line = history.now.job.line ?? [];
  const next = action === 'remove' ? removed(line, place) : moved(line, place, action === 'before' ? -1 : 1);
  if (next === line) {
    return;
  }
  change({ job: withAt(history.now.job, 'line', next) });
  const to = action === 'remove' ? Math.min(place, next.length - 1) : place + (action === 'before' ? -1 : 1);
  const card = $('cards').querySelector(`[data-place="${to}"]`);
  (card?.querySelector(`[data-act="${action}"]:not(:disabled)`) ?? card?.querySelector('[data-act]:not(:disabled)') ?? $('kind')).focus();
  say(action === 'remove'
    ? `${called(line[place].kind)} removed. ${many(next.length, 'card')} left.`
    : `${called(line[place].kind)} stands ${to + 1} of ${next.length} now.`);
}

$('kind').append(...kindOptions());
$('kind').value = 'hose';
$('add').addEventListener('click', () => {
  const line = history.now.job.line ?? [];
  const kind = $('kind').value;
  const behind = placeFor(line, kind);
  change({ job: withAt(history.now.job, 'line', added(line, kind, behind)) });
  $('cards').querySelector(`[data-place="${behind + 1}"] input`)?.focus();
});

const measuring = measuringDrawing((size) => goTo(`atHand.readings.${size}`));
$('measuring').append(measuring.figure);
for (const [size, letter, how] of SIZES) {
  const id = `reading-${letter}`;
  $('readings').append(el('p', { class: 'field' },
    el('label', { for: id }, el('span', { class: 'letter', 'aria-hidden': 'true' }, letter), ` ${size}`),
    el('input', { id, 'data-field': `atHand.readings.${size}`, title: how, onfocus: () => measuring.show(size) })));
}
const screen = trueSize($('scale'), () => {});

// ---- files

$('open').addEventListener('click', () => $('files').click());
$('stock-open').addEventListener('click', () => $('files').click());
$('set-open').addEventListener('click', () => $('files').click());
$('files').addEventListener('change', async ({ target }) => {
  await openFiles([...target.files]);
  target.value = '';
});
document.addEventListener('dragover', (e) => e.preventDefault());
document.addEventListener('drop', async (e) => {
  e.preventDefault();
  await openFiles([...(e.dataTransfer?.files ?? [])]);
});

async function openFiles(files) {
  const told = [];
  let next = {};
  for (const file of files) {
    try {
      requireSmall(file.name, file.size);
      const text = await file.text();
      next = { ...next, ...taken(file.name, text, { ...history.now, ...next }) };
      told.push(`${file.name} is open.`);
    } catch (e) {
      told.push(e instanceof WrongFile ? e.message : `${file.name}: cannot be read`);
    }
  }
  if (Object.keys(next).length > 0) {
    change(next);
  }
  say(told.join(' '));
}

/** What a file changes. */
function taken(name, text, state) {
  const { kind, content } = recognised(name, text);
  if (kind === 'job') {
    if (content.airfitJob !== 2) {
      throw new WrongFile(name, 'is a job of another form; "airfitJob": 2 is read');
    }
    return { job: content };
  }
  if (kind === 'stock') {
    return { stock: { name, content } };
  }
  if (kind === 'set') {
    return { set: { name, text, title: content?.set ? String(content.set) : 'A reference set' } };
  }
  return { others: { ...state.others, [name]: text } };
}

function download(name, text, type) {
  const url = URL.createObjectURL(new Blob([text], { type }));
  el('a', { href: url, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}

$('save').addEventListener('click', () => {
  const { job, stock } = history.now;
  download(fileName(job), jobFile(job, stock?.name ?? 'catalogue.json'), 'application/json');
  say(`Saved as ${fileName(job)}.`);
});
$('example').addEventListener('click', () => {
  change({ ...exampleJob(), ...exampleStock(), set: null });
  say('An invented job at an invented boatyard. Change anything, or press Undo to have your own back.');
});
$('stock-example').addEventListener('click', () => change(exampleStock()));
$('set-example').addEventListener('click', () => {
  const { content } = exampleStock().stock;
  const text = JSON.stringify({ set: 'An invented set', profiles: content.profiles });
  change({ set: { name: 'invented-set.json', text, title: 'An invented set, of no real plug' } });
});
$('stock-away').addEventListener('click', () => change({ stock: null }));
$('set-away').addEventListener('click', () => change({ set: null }));
$('fresh').addEventListener('click', () => {
  change({ job: freshJob() });
  say('A new job. Undo brings the other one back; stock and set stay.');
});

function exampleJob() {
  return { job: JSON.parse($('example-job').textContent) };
}

function exampleStock() {
  return { stock: { name: 'catalogue.json', content: JSON.parse($('example-stock').textContent) } };
}

function buildSet(update, typing) {
  const next = { built: update(history.now.built) };
  change(next, typing);
  if (typing) {
    showSet(history.now.stock, history.now.set, history.now.built);
  }
}

function saveSet() {
  const file = setFile(history.now.built);
  download('reference-set.json', `${JSON.stringify(file, null, 2)}\n`, 'application/json');
}

// ---- undo, keys, keeping

$('undo').addEventListener('click', () => { history = undone(history); follow(false); });
$('redo').addEventListener('click', () => { history = redone(history); follow(false); });
document.addEventListener('keydown', (e) => {
  if (!(e.ctrlKey || e.metaKey) || e.altKey) {
    return;
  }
  const key = e.key.toLowerCase();
  const redo = key === 'y' || (key === 'z' && e.shiftKey);
  if (redo || key === 'z') {
    e.preventDefault();
    history = redo ? redone(history) : undone(history);
    follow(false);
  }
});

$('keep').addEventListener('change', ({ target }) => {
  if (!target.checked) {
    clearState();
  } else if (!keepState(history.now)) {
    target.checked = false;
    say('This browser does not allow it, or the job is too large.');
  }
  $('clear').hidden = !target.checked;
});
$('clear').addEventListener('click', () => {
  clearState();
  $('keep').checked = false;
  $('clear').hidden = true;
  say('Cleared: nothing is kept in this browser.');
});

// ---- what follows

let pause = 0;
function soon() {
  clearTimeout(pause);
  pause = setTimeout(ask, PAUSE_MS);
}

/** The set that counts: one that was opened, or one that was built here. */
function setNow({ set, built }) {
  return set ?? (isUsable(built) ? { name: 'set-built-here.json', text: JSON.stringify(setFile(built)) } : null);
}

async function ask() {
  const state = history.now;
  const { job } = state;
  const set = setNow(state);
  const stock = state.stock ? await new FileStock(state.stock.name, state.stock.content).file() : null;
  const files = filesFor(job, stock, set, state.others);
  const isKnown = hasSet(stock, set);
  const wanted = lacking(job);
  const calls = [];
  const readers = [];
  const put = (call, reader) => { calls.push(call); readers.push(reader); };
  const told = { wrong: [], faults: [], plug: null, thread: null, sheet: null };
  const refused = ({ message }) => {
    const { field, words } = placed(message);
    (field ? told.wrong : told.faults).push(field ? { field, words } : words);
  };
  if (!isOtherMedium(job)) {
    if (isKnown && (hasPlug(job) || reckoner.calls?.includes('identify'))) {
      plugAsked(reckoner.calls, job, files).forEach((call) => put(call, (got) => { told.plug = plugAnswered(got); }));
    }
    if (hasThread(job)) {
      threadAsked(reckoner.calls, job, files).forEach((call) => put(call, (got) => { told.thread = threadAnswered(got); }));
    }
  }
  const whole = isOtherMedium(job) || (wanted.length === 0 && stock !== null && isKnown);
  if (whole) {
    put({ call: 'sheet', args: ['job.json', files] }, (got) => { told.sheet = got; });
  }
  document.body.classList.toggle('working', calls.length > 0);
  let got;
  try {
    got = calls.length > 0 ? await reckoner.ask(calls) : { answers: [], ms: 0 };
  } catch (e) {
    say(`The library did not answer: ${e.message}`);
    return;
  }
  if (!got) {
    return;
  }
  document.body.classList.remove('working');
  got.answers.forEach((each, i) => (each.refused ? refused(each.refused) : readers[i](each.answer)));
  document.documentElement.dataset.ms = Math.round(got.ms);
  if (!stock) {
    wanted.push({ field: 'stock', what: 'a stock to choose from' });
  }
  if (!isKnown) {
    wanted.push({ field: 'set', what: 'a reference set' });
  }
  show(told, wanted, isKnown, files);
}

function show(told, wanted, isKnown, files) {
  const { job } = history.now;
  wrong = told.wrong;
  const placedAt = showWrong(form, wrong);
  const faults = [...told.faults, ...wrong.filter((_, i) => !placedAt[i]).map(({ field, words }) => `${field}: ${words}`)];
  const sheet = told.sheet ? takenApart(told.sheet) : null;
  const nodes = sheet?.refused
    ? [refusal(sheet.refused.map((line) => line.textContent))]
    : [
        faultPart(faults),
        setPart(isKnown, hasPlug(job)),
        plugPart(told.plug, { takeNext: (size) => goTo(`atHand.readings.${size}`) }),
        threadPart(told.thread),
        ...(sheet ? sheetParts(sheet) : []),
        sheet || isFresh(job) ? null : wantedPart(wanted, { goTo }),
      ];
  const shown = nodes.filter(Boolean);
  if (shown.length === 0) {
    shown.push(el('p', { class: 'empty' }, 'Nothing yet. Begin anywhere at the left, or try the example.'));
  }
  $('shown').replaceChildren(...shown);
  screen.outline(told.plug?.outline ?? null, told.plug?.outlineWords ?? '');
  const summary = summed(told, sheet, wanted, faults);
  if ($('said').textContent !== summary) {
    $('said').textContent = summary;
    $('jump').textContent = summary || 'What follows from it';
  }
  answer = { sheet, files, pages: told.sheet };
  if (sheet) {
    layReady($('paper'), sheet);
  } else {
    takeAway($('paper'));
  }
  for (const id of ['print', 'sheet-save']) {
    $(id).disabled = !sheet;
  }
  $('reasons-save').disabled = !sheet || Boolean(sheet.refused);
}

/** All of it in a line or two, for those who listen. */
function summed(told, sheet, wanted, faults) {
  if (sheet?.refused) {
    return 'Refused.';
  }
  const parts = [];
  if (wrong.length + faults.length > 0) {
    parts.push(`${many(wrong.length + faults.length, 'entry').replace('entrys', 'entries')} cannot be used so.`);
  }
  if (told.plug?.short) {
    parts.push(told.plug.short);
  }
  if (sheet) {
    const rows = sheet.parts ? sheet.parts.querySelectorAll('tbody tr').length : 0;
    const price = sheet.parts?.querySelector('tfoot td:last-child')?.textContent.trim();
    parts.push(rows > 0 ? `${many(rows, 'part')}${price ? `, ${price} together` : ''}.` : 'No parts recommended.');
    const open = sheet.open ? sheet.open.querySelectorAll('li').length : 0;
    if (open > 0) {
      parts.push(`${many(open, 'question')} open.`);
    }
  }
  return parts.join(' ');
}

function goTo(path) {
  const ways = { stock: () => $('stock-open'), set: () => $('set-open'), line: () => $('kind') };
  const target = ways[path]?.() ?? fieldAt(form, path);
  if (target) {
    target.closest('details')?.setAttribute('open', '');
    target.focus();
    target.scrollIntoView({ block: 'center' });
    const size = /^atHand\.readings\.(.*)$/.exec(path)?.[1];
    if (DIMENSIONS.includes(size)) {
      measuring.show(size);
      measuring.figure.scrollIntoView({ block: 'nearest' });
    }
  }
}

$('print').addEventListener('click', () => window.print());
window.addEventListener('beforeprint', () => { document.title = answer.sheet ? `Job sheet: ${answer.sheet.title}` : document.title; });
window.addEventListener('afterprint', () => follow(true));
$('sheet-save').addEventListener('click', () => download(fileName(history.now.job, '.html'), answer.pages.page, 'text/html'));
$('reasons-save').addEventListener('click', () =>
  download(fileName(history.now.job, '-reasons.html'), answer.pages.reasons, 'text/html'));
$('jump').addEventListener('click', (e) => {
  e.preventDefault();
  $('h-answers').focus();
  $('answers').scrollIntoView();
});

function say(text) {
  $('notice').textContent = text;
}

$('ends').append(...ENDS.map((end) => el('option', { value: end })));
$('walls').append(...WALLS.map((wall) => el('option', { value: wall })));
const kept = keptState();
if (kept?.job) {
  history = begun({ stock: null, set: null, built: {}, others: {}, ...kept });
  $('keep').checked = true;
  $('clear').hidden = false;
}
follow(false);
