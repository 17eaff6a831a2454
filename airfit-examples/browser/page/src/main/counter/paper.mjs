// The sheet on paper: what this page prints is the very page of the job-sheet program.
import { adopted } from './elements.mjs';

let style = null;

/** Lays the sheet ready for the printer, in place of all that is on the screen. */
export function layReady(place, sheet) {
  style ??= new CSSStyleSheet({ media: 'print' });
  style.replaceSync(sheet.style);
  document.adoptedStyleSheets = [style];
  place.replaceChildren(...sheet.body.map(adopted));
  document.body.classList.add('ready');
}

/** Takes it away again. */
export function takeAway(place) {
  document.adoptedStyleSheets = [];
  place.replaceChildren();
  document.body.classList.remove('ready');
}
