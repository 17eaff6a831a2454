// A drawing of a plug that shows where the caliper goes. Its shape is nobody's: steps as all such plugs have them.
import { el, svg } from './elements.mjs';

/** Axis, and the steps from the tip face to the body. */
const Y = 168;
const TIP = 84;

/** Each size: its letter, how to take it, and where it lies. Across: x, half of it. Along: from, to, height. */
export const SIZES = [
  ['tip diameter', 'A', 'Outside jaws on the cylinder that goes in first; three readings around it, take the mean.',
    { x: 122, half: 38 }],
  ['collar diameter', 'B', 'Outside jaws on the thickest ring in front of the groove.', { x: 236, half: 58 }],
  ['tip length', 'C', 'From the tip face to the rear edge of the collar, where the groove begins. Step or depth rod.',
    { from: TIP, to: 262, y: 284, edge: 58 }],
  ['insertion length', 'D', 'From the tip face to the face that stops against the socket. Step or depth rod.',
    { from: TIP, to: 408, y: 316, edge: 84 }],
  ['groove width', 'E', 'Blade jaws between the two walls of the groove, at their top.',
    { from: 262, to: 312, y: 252, edge: 50, inside: true }],
  ['groove diameter', 'F', 'Blade jaws on the ground of the groove.', { x: 287, half: 34 }],
  ['tip to collar', 'G', 'From the tip face to where the cylinder ends and the collar begins.',
    { from: TIP, to: 190, y: 252, edge: 38 }],
  ['shoulder diameter', 'H', 'Outside jaws behind the groove.', { x: 360, half: 50 }],
  ['bore', 'I', 'The smallest hole right through: inside jaws, or the shank of a drill that just passes.',
    { x: TIP, half: 17, bore: true }],
];

const OUTLINE = [
  [TIP, 38], [190, 38], [206, 58], [262, 58], [262, 34], [312, 34], [312, 50], [408, 50], [408, 84], [476, 84],
];

/** The drawing. `chosen` is called with the name of a size that was tapped. */
export function measuringDrawing(chosen) {
  const top = OUTLINE.map(([x, r]) => `${x} ${Y - r}`).join(' L');
  const low = [...OUTLINE].reverse().map(([x, r]) => `${x} ${Y + r}`).join(' L');
  const caliper = svg('g', { class: 'caliper' });
  const marks = SIZES.map(([name, letter, , place]) => mark(name, letter, place, chosen));
  const picture = svg(
    'svg',
    { viewBox: '0 0 490 340', class: 'plug', role: 'img', 'aria-label': 'A plug from the side, its nine sizes by letters' },
    svg('path', { class: 'body', d: `M${top} L${low} Z` }),
    svg('path', { class: 'hidden', d: `M${TIP} ${Y - 17} H476 M${TIP} ${Y + 17} H476` }),
    svg('path', { class: 'edge', d: edges() }),
    svg('path', { class: 'axis', d: `M40 ${Y} H484` }),
    caliper,
    ...marks,
  );
  const how = el('p', { class: 'how', id: 'how' }, 'Tap a letter, or step into one of the fields below.');
  const figure = el('figure', { class: 'measuring' }, picture, el('figcaption', {}, how));
  return {
    figure,
    /** Shows where the caliper goes for a size. */
    show(name) {
      const size = SIZES.find((each) => each[0] === name);
      marks.forEach((each) => each.classList.toggle('on', each.dataset.size === name));
      caliper.replaceChildren(...(size ? jaws(size[3]) : []));
      how.textContent = size ? `${size[1]}, ${name}. ${size[2]}` : 'Tap a letter, or step into one of the fields below.';
    },
  };
}

function edges() {
  return [[190, 38], [206, 58], [262, 58], [312, 50], [408, 84]].map(([x, r]) => `M${x} ${Y - r} V${Y + r}`).join(' ');
}

function mark(name, letter, place, chosen) {
  const { line, at } = place.half === undefined ? along(place) : across(place);
  const group = svg('g', { class: 'size', 'data-size': name, onclick: () => chosen(name) },
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
    line: `${ends} M${from} ${y} H${to} M${from + 7} ${y - 4} L${from} ${y} L${from + 7} ${y + 4} `
      + `M${to - 7} ${y - 4} L${to} ${y} L${to - 7} ${y + 4}`,
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

/** Two jaws where they touch. */
function jaws(place) {
  const wedge = (x, y, dx, dy) =>
    svg('path', { class: 'jaw', d: dx === 0
      ? `M${x - 9} ${y} H${x + 9} L${x + 15} ${y + 46 * dy} H${x - 15} Z`
      : `M${x} ${y - 9} V${y + 9} L${x + 46 * dx} ${y + 15} V${y - 15} Z` });
  if (place.bore) {
    return [wedge(place.x + 26, Y - place.half, 0, 0.3), wedge(place.x + 26, Y + place.half, 0, -0.3)];
  }
  if (place.half !== undefined) {
    return [wedge(place.x, Y - place.half, 0, -1), wedge(place.x, Y + place.half, 0, 1)];
  }
  const y = Y - (place.inside ? 42 : place.edge - 9);
  return place.inside
    ? [wedge(place.from, y, 0.45, 0), wedge(place.to, y, -0.45, 0)]
    : [wedge(place.from, Y - 24, -1, 0), wedge(place.to, y, 1, 0)];
}
