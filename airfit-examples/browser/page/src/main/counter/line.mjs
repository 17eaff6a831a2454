// The line from the supply to the tool as a row of cards. What a card does not show stays in it untouched.
import { isObject } from './paths.mjs';

/** The kinds of a line with the fields that a card shows. */
export const KINDS = [
  { kind: 'outlet', name: 'Outlet', fields: ['end'] },
  { kind: 'coupling', name: 'Coupling', fields: ['profile', 'socket', 'plug'] },
  { kind: 'hose', name: 'Hose', fields: ['reach', 'bore', 'part'] },
  { kind: 'whip hose', name: 'Whip hose', fields: ['reach', 'bore', 'part'] },
  { kind: 'pipe', name: 'Pipe', fields: ['size', 'length', 'wall', 'fittings', 'bore', 'roughness'] },
  { kind: 'regulator', name: 'Regulator', fields: ['set', 'part'] },
  { kind: 'filter regulator', name: 'Filter regulator', fields: ['set', 'part'] },
  { kind: 'filter regulator lubricator', name: 'Filter, regulator and lubricator', fields: ['set', 'part'] },
  { kind: 'filter', name: 'Filter', fields: ['part'] },
  { kind: 'lubricator', name: 'Lubricator', fields: ['part'] },
  { kind: 'reel', name: 'Reel', fields: ['part'] },
  { kind: 'swivel', name: 'Swivel', fields: ['part'] },
  { kind: 'shut off valve', name: 'Shut-off valve', fields: ['part'] },
  { kind: 'non return valve', name: 'Non-return valve', fields: ['part'] },
  { kind: 'hose fuse', name: 'Hose fuse', fields: ['part'] },
  { kind: 'splitter', name: 'Splitter', fields: ['othersTake', 'part'] },
];

/** What most jobs have: an outlet, and a hose between two couplings. */
export const USUAL = [{ kind: 'outlet' }, { kind: 'coupling' }, { kind: 'hose' }, { kind: 'coupling' }];

/** Whether this is a splitter that tells the lines behind it, each with the tool at its end. Nothing stands behind it. */
export function isSpread(item) {
  return Array.isArray(item?.lines);
}

/** A short name of an item, from the path of it or of what it holds: "4" of "line.4.reach", "4-0-2" of a branch. */
export function slugOf(path) {
  return (/^line\.\d+(?:\.lines\.\d+\.line\.\d+)*/.exec(path)?.[0].match(/\d+/g) ?? []).join('-');
}

/** How a kind is called on its card; a kind that is not known by its own word. */
export function called(kind) {
  return KINDS.find((each) => each.kind === kind)?.name ?? String(kind);
}

/** The fields that a card of this item shows. What others take is told by their lines, where these are. */
export function fieldsOf(item) {
  const fields = KINDS.find((each) => each.kind === item.kind)?.fields ?? [];
  return isSpread(item) ? fields.filter((field) => field !== 'othersTake') : fields;
}

/** What the item tells beside that, by name: it counts, and is kept. */
export function keptOf(item) {
  const shown = new Set(['kind', 'name', ...fieldsOf(item)]);
  return Object.keys(item).filter(
    (name) =>
      !name.startsWith('//') &&
      !(name === 'lines' && isSpread(item) && item.lines.every(isRun)) &&
      (!shown.has(name) || !isTyped(item[name])),
  );
}

/** Whether a value can stand in a field of a card: a text, or a number. */
export function isTyped(value) {
  return value === undefined || typeof value === 'string' || typeof value === 'number';
}

/** The line with a new card behind a place; before all at -1. */
export function added(line, kind, behind) {
  return [...line.slice(0, behind + 1), { kind }, ...line.slice(behind + 1)];
}

/** The line with a card moved by so many places, towards the tool if positive; as it was where it cannot go further. */
export function moved(line, from, by) {
  const to = from + by;
  if (to < 0 || to >= line.length || isSpread(line[from]) || isSpread(line[to])) {
    return line;
  }
  const rest = line.filter((_, i) => i !== from);
  return [...rest.slice(0, to), line[from], ...rest.slice(to)];
}

export function removed(line, place) {
  return line.filter((_, i) => i !== place);
}

const PREPARED_FIRST = ['filter', 'regulator', 'filter regulator'];
const PREPARED = [...PREPARED_FIRST, 'filter regulator lubricator', 'lubricator'];

/** Where a new card of a kind belongs: pipe ends at the outlet, all else goes on behind what is there. */
export function placeFor(line, kind) {
  const outlet = line.findIndex((item) => item.kind === 'outlet');
  if (kind === 'pipe') {
    return outlet < 0 ? line.length - 1 : outlet - 1;
  }
  if (outlet >= 0 && (PREPARED.includes(kind) || kind === 'splitter')) {
    const first = line.findIndex(
      (item, i) => i > outlet && !(kind === 'splitter' ? PREPARED : PREPARED_FIRST).includes(item.kind),
    );
    return (first < 0 ? line.length : first) - 1;
  }
  const last = line[line.length - 1];
  return isSpread(last) ? line.length - 2 : line.length - 1;
}

/** What stands behind a splitter until something else is told. */
const USUAL_BEHIND = USUAL.slice(1);

function isRun(run) {
  return isObject(run) && Array.isArray(run.line);
}

/**
 * What leads to a tool, {line, tool}, with lines of its own behind the splitter at a place: what stood behind it, with
 * the tool, is the first of them.
 */
export function spread({ tool, line, ...rest }, place) {
  const { othersTake: _, ...splitter } = line[place];
  const behind = line.slice(place + 1);
  const first = { ...(tool === undefined ? {} : { tool }), line: behind.length > 0 ? behind : USUAL_BEHIND };
  return { ...rest, line: [...line.slice(0, place), { ...splitter, lines: [first, { line: USUAL_BEHIND }] }] };
}

/** The same with one tool again: the first line goes on where the splitter stood. */
export function gathered({ line, ...rest }, place) {
  const { tool, line: behind = [] } = line[place].lines[0] ?? {};
  return { ...rest, line: [...line.slice(0, place), ...behind], ...(tool === undefined ? {} : { tool }) };
}

/** With one more line behind the splitter. */
export function branched(run, place) {
  return withLines(run, place, (lines) => [...lines, { line: USUAL_BEHIND }]);
}

/** Without one of the lines behind the splitter; without the splitter, where it is the only one. */
export function unbranched(run, place, which) {
  return run.line[place].lines.length > 1
    ? withLines(run, place, (lines) => lines.filter((_, i) => i !== which))
    : gathered(run, place);
}

function withLines(run, place, change) {
  return { ...run, line: run.line.map((item, i) => (i === place ? { ...item, lines: change(item.lines) } : item)) };
}

/** All that leads to a tool, in order: {run, path, called}; the job itself where its line is not spread. */
export function runs(run, path = '', called = '') {
  const line = Array.isArray(run.line) ? run.line : [];
  const own = { run, path, called };
  const last = line.findIndex(isSpread);
  return last < 0
    ? [own]
    : [
        own,
        ...line[last].lines
          .filter(isRun)
          .flatMap((each, i) => runs(each, `${path}line.${last}.lines.${i}.`, called ? `${called}.${i + 1}` : `${i + 1}`)),
      ];
}
