// Asks the library what follows from the state, a moment after the last key.
import { $, say } from './page.mjs';
import { measuring } from './hand.mjs';
import { counted, isRead, otherSetNow, tookSet } from './counted.mjs';
import { exampleSet } from './examples.mjs';
import { filesFor, filesToCheck, handAsked, hasSet, isBegun, isOtherMedium, lacking, placed } from './job.mjs';
import { DRAWINGS } from './measuring.mjs';
import { at } from './paths.mjs';
import { prepare, withdraw } from './printing.mjs';
import { Reckoner } from './reckoner.mjs';
import { showCompared } from './sections.mjs';
import { builtField } from './set.mjs';
import { show } from './showing.mjs';
import { store } from './store.mjs';

const PAUSE_MS = 180;
const reckoner = new Reckoner($('library').textContent);
/** The stock that the library has read, and what is wrong with it. */
let checked = { stock: null, wrong: '' };
/** Whether the library drew the plug with its sizes. */
let isTold = false;
const sketches = [];
let pause = 0;
/** Whether something was told that is not answered yet. */
let isDue = false;

/** Asks soon. */
export function soon() {
  isDue = true;
  document.body.classList.add('working');
  withdraw();
  clearTimeout(pause);
  pause = setTimeout(ask, PAUSE_MS);
}

async function ask() {
  const state = store.now;
  try {
    const own = store.set;
    const isNew = !isRead(own);
    const got = isNew && (await reckoner.ask([{ call: 'referenceSet', args: [{ set: own.text, name: own.name }] }]));
    if (state !== store.now || (isNew && !got)) {
      return;
    }
    if (isNew) {
      tookSet(own, got.answers[0]);
    }
    await askAll(state);
  } catch (e) {
    say(`The library did not answer: ${e.message}`);
    document.body.classList.remove('working');
    isDue = false;
  }
}

async function askAll(state) {
  const { job } = state;
  const { set, stock, own, refused, ...comparing } = counted();
  const isKnown = !refused && hasSet(stock, set);
  const wanted = lacking(job);
  const files = filesFor(job, stock, set, state.others);
  const hand = isOtherMedium(job) ? null : handAsked(job, stock, isKnown ? set : null, state.others, exampleSet());
  const told = { wrong: [], faults: [], plug: null, selected: null };
  const calls = callsOf({ job, stock, set, isKnown, wanted, files, hand }, told);
  const got =
    calls.length > 0 ? await reckoner.ask(calls.map(({ call, args }) => ({ call, args }))) : { answers: [], ms: 0 };
  if (!got || state !== store.now) {
    return;
  }
  document.body.classList.remove('working');
  document.documentElement.dataset.ms = Math.round(got.ms);
  got.answers.forEach((each, i) => take(each, calls[i], told));
  if (refused) {
    told[own.isBuilt ? 'wrong' : 'faults'].push(refusedSet(own, refused, state.built));
  }
  const isWrong = stock !== null && checked.stock === stock && checked.wrong !== '';
  if (isWrong) {
    told.faults.push(checked.wrong);
  }
  $('stock-state').classList.toggle('warn', isWrong);
  if (!stock) {
    wanted.push({ field: 'stock', what: 'a stock to choose from' });
  }
  if (!isKnown && !refused) {
    wanted.push({ field: 'set', what: 'a reference set' });
  }
  const other = otherSetNow();
  showCompared({ own, stock: state.stock?.content, ...comparing }, other);
  show(told, wanted, isKnown, job, other);
  prepare(told, files, hand, () => isDue);
  isDue = false;
}

/** A refusal of the own set: of one that is built here beside its field, of a file in a line. */
function refusedSet(own, { message, field = '' }, built) {
  if (!own.isBuilt) {
    return message;
  }
  const { words } = placed({ name: 'WrongFile', message: message.replace(`${own.name}: `, 'job.json: '), field });
  return { field: builtField(field, built), words };
}

/** What to ask, each with what to do with its answer. */
function callsOf({ job, stock, set, isKnown, wanted, files, hand }, told) {
  const isOther = isOtherMedium(job);
  const isWhole = isOther || (wanted.length === 0 && stock !== null && isKnown);
  const drawings = DRAWINGS.map((drawing, i) => ({
    ...drawing,
    take: (got) => {
      sketches[i] = got;
      if (i === DRAWINGS.length - 1) {
        isTold = true;
        measuring.tell(sketches);
      }
    },
  }));
  const read = {
    call: 'stock',
    args: [{ catalogue: 'stock.json', files }],
    take: () => {
      checked = { stock, wrong: '' };
    },
    refuse: (wrong) => {
      checked = { stock, wrong };
    },
  };
  const plug = {
    call: 'identify',
    args: [hand],
    inside: 'atHand.',
    take: (got) => {
      // The set that was asked with only for want of another names no plug.
      told.plug = isKnown ? got : got.thread ? { thread: got.thread, candidates: [], chances: [] } : null;
    },
  };
  const parts = {
    call: 'select',
    args: [{ job: 'job.json', files, most: 1 }],
    take: (got) => {
      told.selected = got;
    },
  };
  const entries = {
    call: 'select',
    args: [
      {
        job: 'job.json',
        files: filesToCheck(job, (isKnown && set) || { name: 'set.csv', text: exampleSet() }),
        most: 1,
      },
    ],
    take: () => {},
    // Parts and profiles are known only with the shop's own files.
    isTold: (field) => at(job, field) !== undefined && !/\.(part|socket|plug|profile|sameAs)\b/.test(field),
  };
  return [
    ...(isTold ? [] : drawings),
    // A whole job reads the stock itself.
    stock && isKnown && !isWhole && stock !== checked.stock && read,
    hand && plug,
    isWhole ? parts : isBegun(job) && entries,
  ].filter(Boolean);
}

/** Takes an answer to where it belongs: a refusal to the field that it is about, if there is one. */
function take({ answer, refused }, call, told) {
  if (!refused) {
    call.take(answer);
    return;
  }
  const { field, words } = placed(refused, call.inside);
  call.refuse?.(words);
  if (call.isTold && !call.isTold(field)) {
    return;
  }
  if (field) {
    told.wrong.push({ field, words });
  } else {
    told.faults.push(words);
  }
}
