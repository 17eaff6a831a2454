// Keeps the state in this browser, only if that is wanted.

const NAME = 'airfit-counter';

/** What was kept; null if nothing was, or it cannot be read. */
export function keptState() {
  try {
    return JSON.parse(localStorage.getItem(NAME));
  } catch {
    return null;
  }
}

/** Keeps a state; false if the browser does not allow it, or it is too large. */
export function keepState(state) {
  try {
    localStorage.setItem(NAME, JSON.stringify(state));
    return true;
  } catch {
    return false;
  }
}

export function clearState() {
  try {
    localStorage.removeItem(NAME);
  } catch {
    // Nothing could be kept then either.
  }
}
