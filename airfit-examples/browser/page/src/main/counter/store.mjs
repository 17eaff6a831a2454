// The state of the page with its history: the job, the stock, the reference set, the set that is being built, the
// letterhead, and other files that were opened.
import { begun, canRedo, canUndo, changedTo, paused, redone, undone } from './history.mjs';
import { freshJob } from './job.mjs';
import { isUsable, setFile } from './set.mjs';

const EMPTY = { job: freshJob(), stock: null, set: null, built: {}, letterhead: null, others: {} };

class Store {
  #history = begun(EMPTY);
  #followers = [];

  /** Calls back after each change, with whether it is of one that is being typed. */
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
    return set ?? (isUsable(built) ? { name: 'set-built-here.json', text: JSON.stringify(setFile(built)) } : null);
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
    this.#history = history;
    this.#followers.forEach((follower) => follower(isTyping));
  }
}

export const store = new Store();
