// The counter page: what is told at the left, what follows from it at the right.
import { at, withAt } from './paths.mjs';
import { begun, changedTo, paused, canUndo, canRedo, undone, redone } from './history.mjs';
import { added, moved, removed, placeFor, called } from './line.mjs';
import { freshJob, isFresh, jobFile, fileName, filesFor, hasPlug, hasSet, hasThread, handAsked, isOtherMedium, lacking, placed } from './job.mjs';
import { WrongFile, requireSmall, recognised } from './bounds.mjs';
import { setFile, isUsable, DIMENSIONS } from './set.mjs';
import { FileStock } from './stock.mjs';
import { Reckoner } from './reckoner.mjs';
import { el, adopted } from './elements.mjs';
import { valueOf, showValues, showWrong, fieldAt } from './fields.mjs';
import { showCards, kindOptions } from './cards.mjs';
import { measuringDrawing, SIZES } from './measuring.mjs';
import { trueSize } from './truesize.mjs';
import { showBuilder } from './builder.mjs';
import { takenApart, drawn } from './pages.mjs';
import { layOut, takeAway } from './paper.mjs';
import { likeliest, refusal, plugPart, setPart, threadPart, wantedPart, faultPart, selectedParts, cautionsPart } from './answers.mjs';
import { keptState, keepState, clearState } from './keep.mjs';

const $ = (id) => document.getElementById(id);
const form = document.querySelector('main');
const PAUSE_MS = 180;
const ENDS = ['1/4', '3/8', '1/2', '3/4'].flatMap((size) => [`${size} NPT female`, `${size} NPT male`])
  .concat(['1/4', '3/8', '1/2'].flatMap((size) => [`G ${size} female`, `G ${size} male`, `R ${size} male`]));
const WALLS = ['steel pipe', 'steel pipe, old', 'galvanized pipe', 'drawn copper or brass', 'drawn aluminium',
  'smooth plastic', 'stainless steel', 'smooth rubber hose', 'rubber hose'];

const library = $('library').textContent;
const reckoner = new Reckoner(library);
let history = begun({ job: freshJob(), stock: null, set: null, built: {}, others: {} });
let answer = null;
/** The stock that the library has read, and what is wrong with it. */
let checked = { stock: null, wrong: '' };
/** Whether the library told its words for the sizes of a plug. */
let isTold = false;

// ---- the state, and what shows it

function change(next, typing = '') {
  history = changedTo(history, { ...history.now, ...next }, typing);
  follow(typing !== '');
}

/** Shows the state. While one types in a field only what depends on it is drawn. */
function follow(isTyping) {
  if (!isTyping) {
    showAll();
  }
  $('undo').disabled = !canUndo(history);
  $('redo').disabled = !canRedo(history);
  if ($('keep').checked) {
    keepState(history.now);
  }
  titled();
  soon();
}

function titled() {
  const { job } = history.now.job;
  document.title = job ? `${job} – airfit` : 'airfit: the counter page';
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

const IN_WORDS = { now: 'what is connected now', year: 'the figures of a year', extras: 'extras', receiver: 'a receiver', rules: 'rules' };

function showKept(job) {
  const kept = Object.keys(job).filter((name) => !SHOWN.has(name) && !name.startsWith('//'));
  $('kept').textContent = kept.length > 0
    ? `The file tells also: ${kept.map((name) => IN_WORDS[name] ?? name).join(', ')}. That counts, and is kept.`
    : '';
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

let shownStock;

function showStock(stock) {
  if (stock === shownStock) {
    return;
  }
  shownStock = stock;
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
$('told').addEventListener('submit', (e) => e.preventDefault());

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
for (const [size, letter] of SIZES) {
  const id = `reading-${letter}`;
  $('readings').append(el('p', { class: 'field' },
    el('label', { for: id }, el('span', { class: 'letter', 'aria-hidden': 'true' }, letter), ` ${size}`),
    el('input', { id, 'data-field': `atHand.readings.${size}`, 'data-type': 'repeats',
      onfocus: () => measuring.show(size) })));
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
$('set-example').addEventListener('click', () =>
  change({ set: { name: 'workshop.csv', text: $('example-set').textContent.trim(), title: 'An invented set, of no real plug' } }));
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
/** Whether something was told that is not answered yet. */
let isDue = false;

function soon() {
  isDue = true;
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
  const isOther = isOtherMedium(job);
  const hand = isOther ? null : handAsked(job, stock, set, state.others);
  const whole = isOther || (wanted.length === 0 && stock !== null && isKnown);
  const calls = [
    !isTold && { call: 'choices', args: [], take: (got) => { isTold = true; measuring.words(got.sizes); } },
    stock && isKnown && !isOther && stock !== checked.stock && {
      call: 'stock', args: [{ catalogue: 'stock.json', files }], take: () => { checked = { stock, wrong: '' }; },
      refuse: (words) => { checked = { stock, wrong: words }; },
    },
    hand && { call: 'identify', args: [hand], take: (got) => { told.plug = got; }, inside: 'atHand.' },
    whole && { call: 'select', args: [{ job: 'job.json', files, most: 1 }], take: (got) => { told.selected = got; }, inside: '' },
  ].filter(Boolean);
  const told = { wrong: [], faults: [], plug: null, selected: null };
  document.body.classList.toggle('working', calls.length > 0);
  let got;
  try {
    got = calls.length > 0 ? await reckoner.ask(calls.map(({ call, args }) => ({ call, args }))) : { answers: [], ms: 0 };
  } catch (e) {
    say(`The library did not answer: ${e.message}`);
    isDue = false;
    return;
  }
  if (!got || state !== history.now) {
    return;
  }
  document.body.classList.remove('working');
  document.documentElement.dataset.ms = Math.round(got.ms);
  got.answers.forEach((each, i) => {
    if (each.refused) {
      const { field, words } = placed(each.refused, calls[i].inside);
      calls[i].refuse?.(words);
      (field ? told.wrong : told.faults).push(field ? { field, words } : words);
    } else {
      calls[i].take(each.answer);
    }
  });
  if (stock && checked.stock === stock && checked.wrong) {
    told.faults.push(checked.wrong);
  }
  $('stock-state').classList.toggle('warn', stock !== null && checked.stock === stock && checked.wrong !== '');
  if (!stock) {
    wanted.push({ field: 'stock', what: 'a stock to choose from' });
  }
  if (!isKnown) {
    wanted.push({ field: 'set', what: 'a reference set' });
  }
  show(told, wanted, isKnown);
  prepare(told, files, hand);
  isDue = false;
}

function show(told, wanted, isKnown) {
  const { job } = history.now;
  const wrong = told.wrong.filter(({ field }, i) => told.wrong.findIndex((other) => other.field === field) === i);
  const placedAt = showWrong(form, wrong);
  const faults = [...new Set([...told.faults, ...wrong.filter((_, i) => !placedAt[i]).map(({ field, words }) => `${field}: ${words}`)])];
  const { selected, plug } = told;
  const go = { goTo, takeNext: (size) => goTo(`atHand.readings.${size}`) };
  const open = new Set([...$('shown').querySelectorAll('details[open]')].map((each) => each.dataset.fold));
  const nodes = selected?.kind === 'refused'
    ? [refusal(selected.headline)]
    : [
        faultPart(faults),
        setPart(isKnown, hasPlug(job)),
        plug && (hasPlug(job) || isFresh(job)) && plugPart(plug, hasPlug(job), selected !== null, go),
        threadPart(plug?.thread),
        ...(selected ? selectedParts(selected) : []),
        !selected && plug && hasPlug(job) ? cautionsPart(plug.cautions) : null,
        selected || isFresh(job) || wrong.length + faults.length > 0 ? null : wantedPart(wanted, go),
      ].flat();
  const shown = nodes.filter(Boolean);
  if (shown.length === 0) {
    shown.push(el('p', { class: 'empty' }, wrong.length > 0
      ? 'See what is said beside the field at the left.'
      : 'Nothing yet. Begin anywhere at the left, or try the example.'));
  }
  replaceBy($('shown'), shown);
  $('shown').querySelectorAll('details').forEach((each) => { each.open = open.has(each.dataset.fold); });
  const summary = summed(told, wrong.length + faults.length);
  if ($('said').textContent !== summary) {
    $('said').textContent = summary;
    $('jump').textContent = summary || 'What follows from it';
  }
}

/** Puts elements in a place; those that stand there already stay, with what was unfolded or scrolled in them. */
function replaceBy(place, elements) {
  const wanted = new Set(elements);
  [...place.children].filter((each) => !wanted.has(each)).forEach((each) => each.remove());
  elements.forEach((each, i) => {
    if (place.children[i] !== each) {
      place.insertBefore(each, place.children[i] ?? null);
    }
  });
}

// ---- the sheet on paper, and the outline: a second worker makes them while nothing is typed

const IDLE_MS = 500;
let printer = null;
let idle = 0;

function prepare({ selected, plug }, files, hand) {
  clearTimeout(idle);
  answer = null;
  document.body.classList.remove('ready');
  for (const id of ['print', 'sheet-save', 'reasons-save']) {
    $(id).disabled = !selected;
  }
  const first = plug?.candidates?.[0]?.profile;
  if (selected || first) {
    const calls = [
      selected && { call: 'sheet', args: ['job.json', files] },
      first && $('true-size').open && { call: 'outline', args: [{ set: hand.set, profile: first }] },
    ].filter(Boolean);
    answer = { calls, name: plug?.candidates?.[0]?.name, got: null };
    idle = setTimeout(() => made(), IDLE_MS);
  } else {
    screen.outline(null, '');
  }
}

/** The sheet, made now if it was not yet; null where there is none. */
async function made() {
  clearTimeout(idle);
  const mine = answer;
  if (!mine || mine.calls.length === 0) {
    return null;
  }
  printer ??= new Reckoner(library);
  mine.got ??= printer.ask(mine.calls);
  const got = await mine.got;
  if (!got || mine !== answer) {
    return null;
  }
  let sheet = null;
  got.answers.forEach(({ answer: said }, i) => {
    if (said && mine.calls[i].call === 'sheet') {
      sheet = said;
      mine.sheet = said;
      document.body.classList.add('ready');
    } else if (mine.calls[i].call === 'outline') {
      const drawing = said?.picture ? drawn(said.picture.svg) : null;
      screen.outline(drawing && adopted(drawing), drawing ? `${mine.name}, as large as it is. Lay the plug on it.` : '');
    }
  });
  return sheet;
}

/** The sheet of all that was told, once it is answered. */
async function settled() {
  for (;;) {
    while (isDue) {
      await new Promise((resolve) => setTimeout(resolve, 40));
    }
    const mine = answer;
    const sheet = await made();
    if (sheet || (mine === answer && !isDue)) {
      return sheet;
    }
  }
}

/** All of it in a line or two, for those who listen, and for the foot of a telephone. */
function summed({ selected, plug }, wrong) {
  if (selected?.kind === 'refused') {
    return 'Refused.';
  }
  const said = [];
  if (wrong > 0) {
    said.push(wrong === 1 ? 'One entry cannot be used.' : `${wrong} entries cannot be used.`);
  }
  const first = plug ? likeliest(plug.chances)[0] : undefined;
  if (first && hasPlug(history.now.job)) {
    said.push(`${first.what} ${first.chance}.`);
  }
  if (selected) {
    const best = selected.kind === 'fits' ? selected.proposals[0] : null;
    said.push(best ? `${many(best.parts.length, 'part')} recommended.` : selected.kind === 'nothingFits' ? 'Nothing in stock fits.' : 'No parts chosen yet.');
    if (selected.questions.length > 0) {
      said.push(`${many(selected.questions.length, 'question')} open.`);
    }
  }
  return said.join(' ');
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

$('print').addEventListener('click', async () => {
  if (await settled()) {
    window.print();
  }
});
// Laid out only then: it is the printer's, and a key need not wait for it.
window.addEventListener('beforeprint', () => {
  if (answer?.sheet) {
    const sheet = takenApart(answer.sheet.page);
    document.title = sheet.title;
    layOut($('paper'), sheet);
  }
});
window.addEventListener('afterprint', () => {
  takeAway($('paper'));
  titled();
});
$('sheet-save').addEventListener('click', async () => saved(await settled(), 'page', '.html'));
$('reasons-save').addEventListener('click', async () => saved(await settled(), 'reasons', '-reasons.html'));
$('true-size').addEventListener('toggle', soon);

function saved(sheet, what, end) {
  if (sheet) {
    download(fileName(history.now.job, end), sheet[what], 'text/html');
  }
}

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
