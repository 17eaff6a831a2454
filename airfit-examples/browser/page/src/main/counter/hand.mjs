// The plug in the hand: the drawing with the caliper, the fields of its sizes, and the screen's true size.
import { $ } from './page.mjs';
import { el } from './elements.mjs';
import { fieldAt } from './fields.mjs';
import { measuringDrawing } from './measuring.mjs';
import { SIZES } from './sizes.mjs';
import { trueSize } from './truesize.mjs';

export const measuring = measuringDrawing((size) => goTo(`atHand.readings.${size}`));
export const screen = trueSize($('scale'));

$('measuring').append(measuring.figure);
for (const size of SIZES) {
  const id = `reading-${size.replace(/ /g, '-')}`;
  $('readings').append(
    el(
      'p',
      { class: 'field' },
      el('label', { for: id }, size.charAt(0).toUpperCase() + size.slice(1)),
      el('input', {
        id,
        'data-field': `atHand.readings.${size}`,
        'data-type': 'repeats',
        onfocus: () => measuring.show(size),
      }),
    ),
  );
}

/** Leads to the field of a path, and shows where the caliper goes if it is a size of the plug. */
export function goTo(path) {
  const ways = { stock: () => $('stock-open'), set: () => $('set-open'), line: () => $('kind') };
  const target = ways[path]?.() ?? fieldAt(document, path);
  if (target) {
    target.closest('details')?.setAttribute('open', '');
    target.focus();
    target.scrollIntoView({ block: 'center' });
    const size = /^atHand\.readings\.(.*)$/.exec(path)?.[1];
    if (SIZES.includes(size)) {
      measuring.show(size);
      measuring.figure.scrollIntoView({ block: 'nearest' });
    }
  }
}
