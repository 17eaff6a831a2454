// Asks the library what follows from the state, a moment after the last key.
import { $, say } from './page.mjs';
import { measuring } from './hand.mjs';
import { filesFor, filesToCheck, handAsked, hasSet, isBegun, isOtherMedium, lacking, placed } from './job.mjs';
import { exampleSet } from './opening.mjs';
import { at } from './paths.mjs';
import { prepare, withdraw } from './printing.mjs';
import { Reckoner } from './reckoner.mjs';
import { show } from './showing.mjs';
import { FileStock } from './stock.mjs';
import { store } from './store.mjs';

const PAUSE_MS = 180;
const reckoner = new Reckoner($('library').textContent);
/** The stock that the library has read, and what is wrong with it. */
let checked = { stock: null, wrong: '' };
/** Whether the library told its words for the sizes of a plug. */
let isTold = false;
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
  const { job } = state;
  const stock = state.stock ? await new FileStock(state.stock.name, state.stock.content).file() : null;
  const isKnown = hasSet(stock, store.set);
  const wanted = lacking(job);
  const files = filesFor(job, stock, store.set, state.others);
  const hand = isOtherMedium(job) ? null : handAsked(job, stock, store.set, state.others, exampleSet());
  const told = { wrong: [], faults: [], plug: null, selected: null };
  const calls = callsOf({ job, stock, isKnown, wanted, files, hand }, told);
  let got = { answers: [], ms: 0 };
  try {
    if (calls.length > 0) {
      got = await reckoner.ask(calls.map(({ call, args }) => ({ call, args })));
    }
  } catch (e) {
    say(`The library did not answer: ${e.message}`);
    document.body.classList.remove('working');
    isDue = false;
    return;
  }
  if (!got || state !== store.now) {
    return;
  }
  document.body.classList.remove('working');
  document.documentElement.dataset.ms = Math.round(got.ms);
  got.answers.forEach((each, i) => take(each, calls[i], told));
  const isWrong = stock !== null && checked.stock === stock && checked.wrong !== '';
  if (isWrong) {
    told.faults.push(checked.wrong);
  }
  $('stock-state').classList.toggle('warn', isWrong);
  if (!stock) {
    wanted.push({ field: 'stock', what: 'a stock to choose from' });
  }
  if (!isKnown) {
    wanted.push({ field: 'set', what: 'a reference set' });
  }
  show(told, wanted, isKnown, job);
  prepare(told, files, hand, () => isDue);
  isDue = false;
}

/** What to ask, each with what to do with its answer. */
function callsOf({ job, stock, isKnown, wanted, files, hand }, told) {
  const isOther = isOtherMedium(job);
  const isWhole = isOther || (wanted.length === 0 && stock !== null && isKnown);
  const words = {
    call: 'choices',
    args: [],
    take: (got) => {
      isTold = true;
      measuring.words(got.sizes);
    },
  };
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
      { job: 'job.json', files: filesToCheck(job, store.set ?? { name: 'set.csv', text: exampleSet() }), most: 1 },
    ],
    take: () => {},
    // Parts and profiles are known only with the shop's own files.
    isTold: (field) => at(job, field) !== undefined && !/\.(part|socket|plug|profile|sameAs)\b/.test(field),
  };
  return [
    !isTold && words,
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
