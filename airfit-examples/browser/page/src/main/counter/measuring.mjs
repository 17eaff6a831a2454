// The library's drawing of a plug that shows where the caliper goes.
import { adopted, el } from './elements.mjs';
import { drawn } from './pages.mjs';
import { SIZES } from './sizes.mjs';

const TAP = 'Tap a size, or step into one of the fields below.';

/** What the library is asked for it: all sizes, then each. */
export const DRAWINGS = [undefined, ...SIZES].map((size) => ({ call: 'measuring', args: size ? [size] : [] }));

/** The drawing; it comes with `tell`. `chosen` is called with the name of a size that was tapped. */
export function measuringDrawing(chosen) {
  const place = el('div', {
    class: 'plug',
    onclick: ({ target }) => {
      const size = target.closest('.size')?.dataset.size;
      if (size) {
        chosen(size);
      }
    },
  });
  const how = el('p', { class: 'how', id: 'how' }, TAP);
  const figure = el('figure', { class: 'measuring' }, place, el('figcaption', {}, how));
  const told = new Map();
  let shown;
  /** Shows where the caliper goes for a size. */
  function show(name) {
    shown = SIZES.includes(name) ? name : undefined;
    const { svg, size } = told.get(shown) ?? {};
    if (svg) {
      place.replaceChildren(pictureOf(svg));
    }
    how.textContent = size ? `${capital(size.size)}: ${size.definition}. ${capital(size.how)}.` : TAP;
  }
  return {
    figure,
    show,
    /** Takes what the library answered to DRAWINGS. */
    tell(answers) {
      answers.forEach((answer, i) => told.set(i === 0 ? undefined : SIZES[i - 1], answer));
      show(shown);
    },
  };
}

/** For those who listen it is one picture with its label: the fields below are there for the keys. */
function pictureOf(svg) {
  const bare = drawn(svg);
  bare.setAttribute('role', 'img');
  const drawing = adopted(bare);
  for (const size of drawing.querySelectorAll('.size')) {
    for (const name of ['role', 'tabindex', 'aria-pressed', 'aria-label']) {
      size.removeAttribute(name);
    }
  }
  return drawing;
}

function capital(sentence) {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
