// The line from the supply to the tool as a row of cards. What a card does not show stays in it untouched.

/** The kinds of a line with the fields that a card shows. A splitter with lines of its own is kept and named. */
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

/** How a kind is called on its card; a kind that is not known by its own word. */
export function called(kind) {
  return KINDS.find((each) => each.kind === kind)?.name ?? String(kind);
}

/** The fields that a card of this item shows. */
export function fieldsOf(item) {
  return KINDS.find((each) => each.kind === item.kind)?.fields ?? [];
}

/** What the item tells beside that, by name: it counts, and is kept. */
export function keptOf(item) {
  const shown = new Set(['kind', 'name', ...fieldsOf(item)]);
  return Object.keys(item).filter((name) => !name.startsWith('//') && (!shown.has(name) || !isTyped(item[name])));
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
  if (to < 0 || to >= line.length) {
    return line;
  }
  const rest = line.filter((_, i) => i !== from);
  return [...rest.slice(0, to), line[from], ...rest.slice(to)];
}

export function removed(line, place) {
  return line.filter((_, i) => i !== place);
}

/** Where a new card of a kind belongs: pipe ends at the outlet, all else goes on behind what is there. */
export function placeFor(line, kind) {
  const outlet = line.findIndex((item) => item.kind === 'outlet');
  if (kind === 'pipe') {
    return outlet < 0 ? line.length - 1 : outlet - 1;
  }
  if (
    ['regulator', 'filter', 'filter regulator', 'filter regulator lubricator', 'lubricator'].includes(kind) &&
    outlet >= 0
  ) {
    const first = line.findIndex(
      (item, i) => i > outlet && !['filter', 'regulator', 'filter regulator'].includes(item.kind),
    );
    return (first < 0 ? line.length : first) - 1;
  }
  const last = line[line.length - 1];
  return last?.kind === 'splitter' && last.lines ? line.length - 2 : line.length - 1;
}
