// The state of the page with its history: the job, the stock, the reference set, the set that is being built, which of
// set and stock a plug is compared with, the letterhead, and other files that were opened.
import { begun, canRedo, canUndo, changedTo, paused, redone, undone } from './history.mjs';
import { freshJob, isFresh } from './job.mjs';
import { isTypedInto, isUsable, setFile } from './set.mjs';

const EMPTY = { job: freshJob(), stock: null, set: null, built: {}, compare: '', letterhead: null, others: {} };

class Store {
  #history = begun(EMPTY);
  #followers = [];
  /** Jobs and built sets that stand in a file, as they are. */
  #saved = new WeakSet([EMPTY.built]);

  /** Calls back after each change, with whether it is of one that is being typed, and the state before it. */
  follow(follower) {
    this.#followers.push(follower);
  }

  get now() {
    return this.#history.now;
  }

  get job() {
    return this.now.job;
  }

  get canUndo() {
    return canUndo(this.#history);
  }

  get canRedo() {
    return canRedo(this.#history);
  }

  /** The set that counts: one that was opened, or one that was built here. */
  get set() {
    const { set, built } = this.now;
    if (set || !isUsable(built)) {
      return set;
    }
    const file = setFile(built);
    return { name: 'set-built-here.json', text: JSON.stringify(file), title: file.set, isBuilt: true };
  }

  /** Notes that a job or a built set stands in a file now. */
  saved(thing) {
    this.#saved.add(thing);
  }

  /** Whether closing the page would lose what was typed. */
  get isUnsaved() {
    const { job, built } = this.now;
    return (!isFresh(job) && !this.#saved.has(job)) || (isTypedInto(built) && !this.#saved.has(built));
  }

  /** Takes the job in another form that says the same: no step of its own. */
  rewrite(job) {
    this.#to({ ...this.#history, now: { ...this.now, job } }, true);
  }

  /** Changes parts of the state; `typing` names the field that is typed into, if it is one. */
  change(next, typing = '') {
    this.#to(changedTo(this.#history, { ...this.now, ...next }, typing), typing !== '');
  }

  /** Ends what is typed in one go. */
  pause() {
    this.#history = paused(this.#history);
  }

  undo() {
    this.#to(undone(this.#history), false);
  }

  redo() {
    this.#to(redone(this.#history), false);
  }

  /** Begins with a state that was kept. */
  begin(state) {
    this.#to(begun({ ...EMPTY, ...state }), false);
  }

  #to(history, isTyping) {
    const before = this.now;
    this.#history = history;
    this.#followers.forEach((follower) => follower(isTyping, before));
  }
}

export const store = new Store();
