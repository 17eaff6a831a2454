// The screen's true size: a card or a rule is held to it, then outlines are as large as the plug.
import { el } from './elements.mjs';
import { THINGS, UNMEASURED, scaleOf } from './scale.mjs';

/** Draws the measuring of the screen. */
export function trueSize(place) {
  let thing = 'card';
  let scale = UNMEASURED;
  const shape = el('div', { class: 'thing' });
  const said = el('p', { class: 'soft' });
  const slider = el('input', {
    type: 'range',
    id: 'stretch',
    min: 2,
    max: 14,
    step: 0.01,
    value: UNMEASURED,
    oninput: () => set(Number(slider.value)),
  });
  const choice = Object.entries(THINGS).map(([id, { name }]) =>
    el(
      'label',
      {},
      el('input', {
        type: 'radio',
        name: 'thing',
        value: id,
        checked: id === thing,
        onchange: () => {
          thing = id;
          draw();
        },
      }),
      ` ${name}`,
    ),
  );
  const step = (sign, by, words) =>
    el('button', { type: 'button', class: 'sign', 'aria-label': words, onclick: () => set(scale + by) }, sign);
  place.append(
    el(
      'p',
      {},
      'Hold a bank card to the frame, or a steel rule to its edge, and stretch it until it matches. The outline ' +
        'of the most likely profile is then as large as the plug.',
    ),
    el('p', { class: 'row' }, ...choice),
    el(
      'p',
      { class: 'row' },
      el('label', { for: 'stretch' }, 'Stretch'),
      step('−', -0.01, 'A little smaller'),
      slider,
      step('+', 0.01, 'A little larger'),
    ),
    shape,
    said,
    el('div', { id: 'outline', class: 'outline', tabindex: '0', role: 'group', 'aria-label': 'Outline to true size' }),
  );
  function set(px) {
    scale = scaleOf(px, 1);
    slider.value = scale;
    draw();
  }
  function draw() {
    const { long, short, name } = THINGS[thing];
    const room = place.clientWidth || 400;
    const upright = short > 0 && long * scale > room;
    shape.replaceChildren(
      short > 0
        ? card(upright ? short : long, upright ? long : short)
        : rule(Math.min(long, 10 * Math.floor(room / scale / 10))),
    );
    const px = scale.toFixed(2);
    said.textContent = `One millimetre is ${px} px here: the ${name} matches when its edges meet the frame.`;
    slider.setAttribute('aria-valuetext', `${px} px to the millimetre`);
  }
  function card(wide, high) {
    return el('div', { class: 'card-shape' }, sized(wide, high));
  }
  function sized(wide, high) {
    const box = el('div', { class: 'box' });
    box.style.width = `${wide * scale}px`;
    box.style.height = `${high * scale}px`;
    box.textContent = `${wide} mm × ${high} mm`;
    return box;
  }
  function rule(mm) {
    const box = el('div', { class: 'rule' });
    box.style.width = `${mm * scale}px`;
    box.style.backgroundSize = `${10 * scale}px 100%, ${scale}px 50%`;
    box.textContent = `${mm} mm`;
    return box;
  }
  place.closest('details')?.addEventListener('toggle', draw);
  draw();
  return {
    set,
    scale: () => scale,
    /** Draws an outline whose own units are millimetres. */
    outline(drawing, words) {
      const where = place.querySelector('#outline');
      if (!drawing) {
        where.replaceChildren(
          el('p', { class: 'soft' }, 'No outline yet: it comes with the first readings and a set.'),
        );
        return;
      }
      const [, , wide, high] = (drawing.getAttribute('viewBox') ?? '0 0 1 1').split(' ').map(Number);
      drawing.setAttribute('width', wide * scale);
      drawing.setAttribute('height', high * scale);
      where.replaceChildren(el('p', { class: 'soft' }, words), drawing);
    },
  };
}
