// The sheet on paper: what this page prints is the very page of the job-sheet program.
import { adopted } from './elements.mjs';

let style = null;

/** Lays a sheet out for the printer, in place of all that is on the screen. */
export function layOut(place, sheet) {
  style ??= new CSSStyleSheet({ media: 'print' });
  style.replaceSync(sheet.style);
  document.adoptedStyleSheets = [style];
  place.replaceChildren(...sheet.body.map(adopted));
}

/** Takes it away again. */
export function takeAway(place) {
  document.adoptedStyleSheets = [];
  place.replaceChildren();
}
