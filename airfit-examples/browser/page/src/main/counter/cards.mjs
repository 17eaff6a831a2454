// The run as a row of cards.
import { el } from './elements.mjs';
import { at } from './paths.mjs';
import { KINDS, called, fieldsOf, isSpread, isTyped, keptOf, moved, slugOf } from './line.mjs';

/** What stands on a card: label, example, list to choose from. */
const FIELDS = {
  end: ['Thread', 'such as 1/2 NPT female', 'ends'],
  reach: ['How far it must reach', 'such as 25 ft; or: longest'],
  bore: ['Bore', 'any; or such as 3/8 in'],
  part: ['The part, if it is there', 'chosen from the stock', 'parts'],
  profile: ['Profile', 'any that goes', 'profiles'],
  socket: ['The socket, if it is there', 'chosen from the stock', 'sockets'],
  plug: ['The plug, if it is there', 'chosen from the stock', 'plugs'],
  set: ['Set to', 'such as 90 psig'],
  size: ['Size', 'such as 1/2 in sch 40'],
  length: ['Length', 'such as 30 ft'],
  wall: ['Wall', 'such as steel pipe, old', 'walls'],
  roughness: ['Roughness, if known', 'such as 0.045 mm'],
  fittings: ['Fittings', 'such as 4 elbows, 1 tee'],
  othersTake: ['Air that others take there', 'such as 10 to 20 scfm'],
};

/** Fields that need no second look stand open; the others behind "more". */
const OPEN = { pipe: 4, coupling: 1 };
const OPEN_ELSE = 2;

/** Fields of a tool: of the job's one, and of each at the end of a line of its own. */
const TOOL = [
  ['name', 'What it is', 'such as: angle grinder'],
  ['inlet', 'Thread at the tool', 'such as 1/4 NPT female', 'ends'],
  ['air', 'Air it takes', 'such as 22 scfm'],
  ['pressure', 'Pressure it needs', 'such as 90 psig'],
  ['marking', 'Or both, as printed on it', 'such as 6.3 bar 400 l/min'],
  ['notAbove', 'Highest its maker allows', 'such as 110 psig'],
];

/** What else can be said of such a tool. */
const KIND_OF_TOOL = [
  ['hammers', 'The tool hammers'],
  ['whipHose', 'It has a whip hose of its own'],
  ['feedsFasteners', 'It feeds nails or staples by itself'],
  ['paints', 'It sprays paint'],
  ['blasts', 'It drives abrasive'],
  ['cleans', 'It is a blow gun'],
];

/**
 * Draws the cards of a job. `act` is called with what was pressed (before, after, remove, spread, branch, unbranch, add),
 * the path of what leads to the tool ('' of the job itself), the place of the card in it, and what else is to be known.
 */
export function showCards(list, job, act) {
  list.replaceChildren(...row({ run: job, path: '', start: el('li', { class: 'end' }, 'Supply'), called: '', act }));
}

/** What stands between two ends; where its splitter tells the lines behind it, these in place of the tool. */
function row({ run, path, start, called, act }) {
  const line = Array.isArray(run.line) ? run.line : [];
  const place = line.findIndex(isSpread);
  return [
    start,
    ...line.map((item, i) => card(item, { path, place: i, line, called, act })),
    ...(place < 0
      ? [called && toolCard(path, called), el('li', { class: 'end' }, nameOfTool(run))]
      : [
          ...line[place].lines.map((each, i) => branch(each, i, { path, place, called, act })),
          el(
            'li',
            { class: 'after' },
            el('button', { type: 'button', onclick: () => act('branch', path, place) }, 'One more line'),
          ),
        ]),
  ].filter(Boolean);
}

function nameOfTool(run) {
  const tool = at(run, 'tool.name');
  return typeof tool === 'string' && tool.trim() ? tool : 'Tool';
}

/** A line behind a splitter, in a row of its own, up to its tool. */
function branch(run, which, { path, place, called, act }) {
  const name = called ? `${called}.${which + 1}` : `${which + 1}`;
  const own = `${path}line.${place}.lines.${which}.`;
  const slug = `${slugOf(own)}-${which}`;
  const kind = el('select', { id: `branch-${slug}-kind` }, kindOptions());
  kind.value = 'hose';
  return el(
    'li',
    { class: 'branch' },
    el(
      'ol',
      { class: 'cards', 'aria-label': `Line ${name}` },
      row({
        run,
        path: own,
        start: el(
          'li',
          { class: 'end' },
          `Line ${name}`,
          el(
            'button',
            {
              type: 'button',
              class: 'sign',
              'aria-label': `Remove: line ${name}`,
              title: 'Remove',
              onclick: () => act('unbranch', path, place, which),
            },
            '×',
          ),
        ),
        called: name,
        act,
      }),
    ),
    el(
      'div',
      { class: 'row' },
      el('label', { for: kind.id }, `One more in line ${name}`),
      kind,
      el('button', { type: 'button', onclick: () => act('add', own, -1, kind.value) }, 'Add it'),
      el(
        'p',
        { class: 'field alike' },
        el('label', { for: `branch-${slug}-count` }, 'How many lines are alike'),
        el('input', {
          id: `branch-${slug}-count`,
          'data-field': `${own}count`,
          'data-type': 'number',
          inputmode: 'numeric',
          placeholder: '1',
        }),
      ),
    ),
  );
}

function toolCard(path, name) {
  const slug = `${slugOf(path)}-${name.split('.').pop()}-tool`;
  const heading = `card-${slug}-heading`;
  const described = { 'data-described': heading, 'aria-describedby': heading };
  return el(
    'li',
    { class: 'card tool' },
    el('h3', { id: heading }, `Line ${name}: the tool`),
    el(
      'div',
      { class: 'grid' },
      toolFields(`${path}tool.`, `card-${slug}`, described),
    ),
    el(
      'details',
      { class: 'more', 'data-more': slug },
      el('summary', {}, 'What kind of tool it is'),
      kindsOfTool(`${path}tool.`, described),
    ),
  );
}

/** Fields of the tool at a path; their ids begin with a word. */
export function toolFields(path, id, described = {}) {
  return TOOL.map(([field, label, placeholder, list]) =>
    el(
      'p',
      { class: 'field' },
      el('label', { for: `${id}-${field}` }, label),
      el('input', { id: `${id}-${field}`, ...described, 'data-field': `${path}${field}`, placeholder, list }),
    ),
  );
}

/** Ticks for what else can be said of it. */
export function kindsOfTool(path, described = {}) {
  return KIND_OF_TOOL.map(([field, label]) =>
    el(
      'p',
      { class: 'tick' },
      el('label', {}, el('input', { type: 'checkbox', ...described, 'data-field': `${path}${field}` }), ` ${label}`),
    ),
  );
}

function card(item, { path, place, line, called: lineName, act }) {
  const slug = slugOf(`${path}line.${place}`);
  const name = isTyped(item.name) && item.name ? String(item.name) : called(item.kind);
  const heading = `${lineName ? `Line ${lineName}, ` : ''}${place + 1}. ${called(item.kind)}`;
  const open = OPEN[item.kind] ?? OPEN_ELSE;
  // What was told stands open, whatever it is.
  const isOpen = (field, i) => i < open || item[field] !== undefined;
  const fields = fieldsOf(item);
  const kept = keptOf(item);
  const button = (words, sign, action, able, label) =>
    el(
      'button',
      {
        type: 'button',
        class: 'sign',
        'aria-label': `${words}: ${label}`,
        title: words,
        disabled: !able,
        'data-act': action,
        onclick: () => act(action, path, place),
      },
      sign,
    );
  const more = [
    ...fields.filter((field, i) => !isOpen(field, i)).map((field) => cardField(field, path, place)),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `card-${slug}-name` }, 'Called'),
      el('input', {
        id: `card-${slug}-name`,
        ...describedBy(slug),
        'data-field': `${path}line.${place}.name`,
        placeholder: called(item.kind).toLowerCase(),
      }),
    ),
  ];
  return el(
    'li',
    { class: 'card', 'data-place': slug, 'data-run': path, onkeydown: (e) => byKey(e, path, place, act) },
    el(
      'div',
      { class: 'cardhead' },
      el('h3', { id: `card-${slug}-heading` }, heading),
      button('Move towards the supply', arrow('←', '↑'), 'before', moved(line, place, -1) !== line, heading),
      button('Move towards the tool', arrow('→', '↓'), 'after', moved(line, place, 1) !== line, heading),
      button('Remove', '×', 'remove', true, heading),
      name !== called(item.kind) && el('p', { class: 'soft' }, name),
    ),
    ...fields.filter(isOpen).map((field) => cardField(field, path, place)),
    item.kind === 'splitter' &&
      !isSpread(item) &&
      el(
        'button',
        { type: 'button', 'data-act': 'spread', onclick: () => act('spread', path, place) },
        'Tell the tools behind it',
      ),
    el('details', { class: 'more', 'data-more': slug }, el('summary', describedBy(slug), 'More'), ...more),
    kept.length > 0 && el('p', { class: 'soft' }, keptInWords(kept)),
  );
}

/** Fields of several cards have one label; whoever listens hears in which card one is. */
function describedBy(slug) {
  const id = `card-${slug}-heading`;
  return { 'data-described': id, 'aria-describedby': id };
}

/** Where the cards stand beside one another it points sideways, on a telephone up or down. */
function arrow(sideways, upright) {
  return [el('span', { class: 'sideways' }, sideways), el('span', { class: 'upright' }, upright)];
}

/** What a card keeps without a field for it. */
const KEPT_IN_WORDS = { lines: 'lines to several tools', sameAs: 'the same as another' };

function keptInWords(kept) {
  const names = kept.map((name) => KEPT_IN_WORDS[name] ?? FIELDS[name]?.[0].toLowerCase() ?? name);
  return `The file tells also: ${names.join(', ')}. That counts and is kept; it cannot be changed here.`;
}

function cardField(field, path, place) {
  const [label, example, list] = FIELDS[field];
  const slug = slugOf(`${path}line.${place}`);
  const id = `card-${slug}-${field}`;
  return el(
    'p',
    { class: 'field' },
    el('label', { for: id }, label),
    el('input', {
      id,
      ...describedBy(slug),
      'data-field': `${path}line.${place}.${field}`,
      placeholder: example,
      list,
      'data-type': field === 'fittings' ? 'number' : undefined,
    }),
  );
}

/** Alt with an arrow moves the card that one is in. */
function byKey(e, path, place, act) {
  const action = { ArrowLeft: 'before', ArrowUp: 'before', ArrowRight: 'after', ArrowDown: 'after' }[e.key];
  if (e.altKey && !e.ctrlKey && !e.metaKey && action) {
    e.preventDefault();
    act(action, path, place);
  }
}

/** The kinds to add. */
export function kindOptions() {
  return KINDS.map(({ kind, name }) => el('option', { value: kind }, name));
}
