// Begins when the page is there and the library was loaded; without it the page stays as it is.
import { exercises } from './check.mjs';
import { follow } from './follow.mjs';

/* global figures, answer, check */
if (typeof figures === 'function' && typeof answer === 'function' && typeof check === 'function') {
  const library = { figures, answer, check };
  follow(Number(document.querySelector('main').dataset.lesson), library);
  exercises(library);
}
