// What can be undone and done again.

const MOST = 200;

/** A history that begins with a state. What is typed into one field in one go is one step. */
export function begun(state) {
  return { past: [], now: state, future: [], typing: '' };
}

/** The history after a change; `typing` names the field that is being typed into, if it is one. */
export function changedTo(history, state, typing = '') {
  if (state === history.now) {
    return history;
  }
  const joins = typing !== '' && typing === history.typing && history.past.length > 0;
  const past = joins ? history.past : [...history.past, history.now].slice(-MOST);
  return { past, now: state, future: [], typing };
}

/** What is typed next begins a step of its own. */
export function paused(history) {
  return { ...history, typing: '' };
}

export function canUndo(history) {
  return history.past.length > 0;
}

export function canRedo(history) {
  return history.future.length > 0;
}

export function undone(history) {
  if (!canUndo(history)) {
    return history;
  }
  const now = history.past[history.past.length - 1];
  return { past: history.past.slice(0, -1), now, future: [history.now, ...history.future], typing: '' };
}

export function redone(history) {
  if (!canRedo(history)) {
    return history;
  }
  const [now, ...future] = history.future;
  return { past: [...history.past, history.now], now, future, typing: '' };
}
