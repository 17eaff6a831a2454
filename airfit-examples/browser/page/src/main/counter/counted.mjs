// What a plug is compared with now: the shop's own set as the library read it, and the profiles of the stock.
import { compared } from './compared.mjs';
import { otherSet, setInWords, withJudged } from './judged.mjs';
import { store } from './store.mjs';

let read = { text: '', profiles: null, sockets: 0, refused: null };

/** Whether the library has read the own set that is there now, or there is none. */
export function isRead(set) {
  return !set || read.text === set.text;
}

/** Takes what the library said of a set. A set in JSON keeps its own profiles, with the readings in them. */
export function tookSet(set, { answer, refused }) {
  if (!answer) {
    read = { text: set.text, profiles: null, sockets: 0, refused };
    return;
  }
  const isTable = !/^\ufeff?\s*\{/.test(set.text);
  const { profiles } = JSON.parse(isTable ? answer.json : set.text.replace(/^\ufeff/, ''));
  read = { text: set.text, profiles, sockets: answer.sockets.length, refused: null };
}

/** What counts: {set, stock, how, …} as `compared` tells it, with what the library refused of the own set. */
export function counted() {
  const own = store.set;
  const isNew = !isRead(own);
  const stock = store.now.stock?.content ?? null;
  const set = own && !isNew && read.profiles ? { ...own, profiles: read.profiles, sockets: read.sockets } : own;
  const refused = isNew || !own ? null : read.refused;
  if (refused && store.now.compare === 'stock' && Array.isArray(stock?.profiles)) {
    // What is put aside need not be right.
    return { ...compared(stock, null, ''), own: null, refused: null };
  }
  return { ...compared(stock, set, store.now.compare), own: set, refused };
}

/** The set that counts, as a job file names it; empty where none of the shop's own does. */
function countedInWords() {
  const { own, how } = counted();
  return own && how !== 'stock' ? setInWords(own, how === 'both') : '';
}

/** A job as it is saved: it names the set that it was judged with. */
export function judgedNow(job) {
  const stock = store.now.stock?.content;
  const isByStock = (Array.isArray(stock?.profiles) && stock.profiles.length > 0) || stock?.profileSet !== undefined;
  return withJudged(job, countedInWords(), isByStock);
}

/** A warning where a job that was opened was judged with another set than counts now; empty where it was not. */
export function otherSetNow() {
  return otherSet(store.job, countedInWords());
}
