// A drawing of a plug that shows where the caliper goes. Its shape is nobody's: steps as all such plugs have them.
import { el, svg } from './elements.mjs';

/** Axis, and the steps from the tip face to the body. */
const Y = 168;
const TIP = 84;

/** Each size: its letter, and where it lies. Across: x, half of it. Along: from, to, height, where the jaws touch. */
export const SIZES = [
  ['tip diameter', 'A', { x: 122, half: 38 }],
  ['collar diameter', 'B', { x: 236, half: 58 }],
  ['tip length', 'C', { from: TIP, to: 262, y: 284, edge: 58, touch: [-1, 1], foot: [12, 40] }],
  ['insertion length', 'D', { from: TIP, to: 408, y: 316, edge: 84, touch: [-1, -1], foot: [12, 56] }],
  ['groove width', 'E', { from: 262, to: 312, y: 252, edge: 50, touch: [1, -1], foot: [38, 38] }],
  ['groove diameter', 'F', { x: 287, half: 34 }],
  ['tip to collar', 'G', { from: TIP, to: 190, y: 252, edge: 38, touch: [-1, -1], foot: [12, 40] }],
  ['shoulder diameter', 'H', { x: 360, half: 50 }],
  ['bore', 'I', { x: TIP, half: 17, bore: true }],
];

const TAP = 'Tap a letter, or step into one of the fields below.';

const OUTLINE = [
  [TIP, 38],
  [190, 38],
  [206, 58],
  [262, 58],
  [262, 34],
  [312, 34],
  [312, 50],
  [408, 50],
  [408, 84],
  [476, 84],
];

/** The drawing. `chosen` is called with the name of a size that was tapped. */
export function measuringDrawing(chosen) {
  const top = OUTLINE.map(([x, r]) => `${x} ${Y - r}`).join(' L');
  const low = [...OUTLINE]
    .reverse()
    .map(([x, r]) => `${x} ${Y + r}`)
    .join(' L');
  const caliper = svg('g', { class: 'caliper' });
  const marks = SIZES.map(([name, letter, place]) => mark(name, letter, place, chosen));
  const picture = svg(
    'svg',
    {
      viewBox: '0 0 490 340',
      class: 'plug',
      role: 'img',
      'aria-label': 'A plug from the side, its nine sizes by letters',
    },
    svg('path', { class: 'body', d: `M${top} L${low} Z` }),
    svg('path', { class: 'hidden', d: `M${TIP} ${Y - 17} H476 M${TIP} ${Y + 17} H476` }),
    svg('path', { class: 'edge', d: edges() }),
    svg('path', { class: 'axis', d: `M40 ${Y} H484` }),
    caliper,
    ...marks,
  );
  const how = el('p', { class: 'how', id: 'how' }, TAP);
  let inWords = new Map();
  let shown = '';
  const figure = el('figure', { class: 'measuring' }, picture, el('figcaption', {}, how));
  return {
    figure,
    /** Shows where the caliper goes for a size. */
    show(name) {
      shown = name;
      const size = SIZES.find((each) => each[0] === name);
      marks.forEach((each) => each.classList.toggle('on', each.dataset.size === name));
      caliper.replaceChildren(...(size ? jaws(size[2]) : []));
      const said = inWords.get(name);
      how.textContent = size ? `${size[1]}, ${name}${said ? `: ${said.definition}. ${capital(said.how)}.` : '.'}` : TAP;
    },
    /** Takes the library's words for the sizes, [{size, definition, how}]. */
    words(sizes) {
      inWords = new Map(sizes.map((each) => [each.size, each]));
      this.show(shown);
    },
  };
}

function capital(sentence) {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

function edges() {
  return [
    [190, 38],
    [206, 58],
    [262, 58],
    [312, 50],
    [408, 84],
  ]
    .map(([x, r]) => `M${x} ${Y - r} V${Y + r}`)
    .join(' ');
}

function mark(name, letter, place, chosen) {
  const { line, at } = place.half === undefined ? along(place) : across(place);
  const group = svg(
    'g',
    { class: 'size', 'data-size': name, onclick: () => chosen(name) },
    svg('path', { d: line }),
    svg('rect', { x: at[0] - 26, y: at[1] - 24, width: 52, height: 48, class: 'touch' }),
    svg('circle', { cx: at[0], cy: at[1], r: 16 }),
    svg('text', { x: at[0], y: at[1] + 7, 'text-anchor': 'middle' }, letter),
  );
  return group;
}

/** A length: an arrow below the plug, with thin lines down from its ends. */
function along({ from, to, y, edge }) {
  const ends = [from, to].map((x) => `M${x} ${Y + (x === TIP ? 38 : edge) + 4} V${y + 6}`).join(' ');
  return {
    line:
      `${ends} M${from} ${y} H${to} M${from + 7} ${y - 4} L${from} ${y} L${from + 7} ${y + 4} ` +
      `M${to - 7} ${y - 4} L${to} ${y} L${to - 7} ${y + 4}`,
    at: [to - from > 60 ? (from + to) / 2 : to + 24, y],
  };
}

/** A diameter: an upright across the plug that ends in its letter above; the bore's letter stands in front. */
function across({ x, half, bore }) {
  if (bore) {
    return {
      line: `M${x - 22} ${Y - half} V${Y + half} M${x - 30} ${Y - half} H${x - 2} M${x - 30} ${Y + half} H${x - 2}`,
      at: [x - 50, Y],
    };
  }
  return { line: `M${x} 46 V${Y + half} M${x - 6} ${Y - half} H${x + 6} M${x - 6} ${Y + half} H${x + 6}`, at: [x, 28] };
}

/** Two jaws where they touch: on a diameter from above and below, on a length side by side under their beam. */
function jaws(place) {
  if (place.bore) {
    return [wedge(place.x + 26, Y - place.half, 0.3), wedge(place.x + 26, Y + place.half, -0.3)];
  }
  if (place.half !== undefined) {
    return [wedge(place.x, Y - place.half, -1), wedge(place.x, Y + place.half, 1)];
  }
  const { from, to, touch, foot } = place;
  const one = touch[0] < 0 ? from - BLADE : from;
  const other = touch[1] < 0 ? to - BLADE : to;
  const left = Math.min(one, other) - 8;
  return [
    svg('path', { class: 'jaw', d: `M${left} ${BEAM} H${Math.max(one, other) + BLADE + 8} v12 H${left} Z` }),
    blade(one, foot[0]),
    blade(other, foot[1]),
  ];
}

const BLADE = 11;
const BEAM = 62;

/** A jaw on a surface; it widens upward if negative. */
function wedge(x, y, up) {
  return svg('path', { class: 'jaw', d: `M${x - 9} ${y} H${x + 9} L${x + 15} ${y + 46 * up} H${x - 15} Z` });
}

/** A blade from the beam down to so far above the axis. */
function blade(x, foot) {
  return svg('path', { class: 'jaw', d: `M${x} ${BEAM + 12} H${x + BLADE} V${Y - foot} H${x} Z` });
}
