// The sheet on the screen: the very page that is printed, in a place of its own, so that neither style touches the other.
import { adopted, el } from './elements.mjs';
import { takenApart } from './pages.mjs';

/** A page's style speaks of its root and its body; here both are elements of the place. */
function styleHere(style) {
  return style
    .replace(/@page[^{]*\{[^}]*(?:\{[^}]*\}[^}]*)*\}/g, '')
    .replaceAll(':root', ':host')
    .replace(/\bbody \{/g, '.sheet {')
    .replace(/\bmain(?=[ ,{])/g, '.main')
    .replaceAll('(max-width: 700px)', '(max-width: 1099px)');
}

/** There is one main part of a page, and the sheet is in it. */
function asDivision(element) {
  if (element.localName !== 'main') {
    return element;
  }
  return el('div', { class: 'main' }, ...element.childNodes);
}

/** Shows a page in a place. */
export function showSheet(place, page) {
  const { style, body } = takenApart(page);
  const root = place.shadowRoot ?? place.attachShadow({ mode: 'open' });
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(styleHere(style));
  root.adoptedStyleSheets = [sheet];
  root.replaceChildren(el('div', { class: 'sheet' }, ...body.map((each) => asDivision(adopted(each)))));
}
