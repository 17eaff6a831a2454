// The run as a row of cards.
import { el } from './elements.mjs';
import { at } from './paths.mjs';
import { KINDS, called, fieldsOf, isTyped, keptOf } from './line.mjs';

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

/** Draws the cards of a job. `act` is called with what was pressed: move, remove. */
export function showCards(list, job, act) {
  const line = Array.isArray(job.line) ? job.line : [];
  const tool = at(job, 'tool.name');
  list.replaceChildren(
    el('li', { class: 'end' }, 'Supply'),
    ...line.map((item, place) => card(item, place, line.length, act)),
    el('li', { class: 'end' }, typeof tool === 'string' && tool.trim() ? tool : 'Tool'),
  );
}

function card(item, place, count, act) {
  const name = isTyped(item.name) && item.name ? String(item.name) : called(item.kind);
  const heading = `${place + 1}. ${called(item.kind)}`;
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
        onclick: () => act(action, place),
      },
      sign,
    );
  const more = [
    ...fields.filter((field, i) => !isOpen(field, i)).map((field) => cardField(item, field, place)),
    el(
      'p',
      { class: 'field' },
      el('label', { for: `card-${place}-name` }, 'Called'),
      el('input', {
        id: `card-${place}-name`,
        ...describedBy(place),
        'data-field': `line.${place}.name`,
        placeholder: called(item.kind).toLowerCase(),
      }),
    ),
  ];
  return el(
    'li',
    { class: 'card', 'data-place': place, onkeydown: (e) => byKey(e, place, act) },
    el(
      'div',
      { class: 'cardhead' },
      el('h3', { id: `card-${place}-heading` }, heading),
      button('Move towards the supply', arrow('←', '↑'), 'before', place > 0, heading),
      button('Move towards the tool', arrow('→', '↓'), 'after', place < count - 1, heading),
      button('Remove', '×', 'remove', true, heading),
      name !== called(item.kind) && el('p', { class: 'soft' }, name),
    ),
    ...fields.filter(isOpen).map((field) => cardField(item, field, place)),
    el('details', { class: 'more', 'data-more': place }, el('summary', {}, 'More'), ...more),
    kept.length > 0 && el('p', { class: 'soft' }, keptInWords(kept)),
  );
}

/** Fields of several cards have one label; whoever listens hears in which card one is. */
function describedBy(place) {
  const id = `card-${place}-heading`;
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

function cardField(item, field, place) {
  const [label, example, list] = FIELDS[field];
  const id = `card-${place}-${field}`;
  return el(
    'p',
    { class: 'field' },
    el('label', { for: id }, label),
    el('input', {
      id,
      ...describedBy(place),
      'data-field': `line.${place}.${field}`,
      placeholder: example,
      list,
      'data-type': field === 'fittings' ? 'number' : undefined,
    }),
  );
}

/** Alt with an arrow moves the card that one is in. */
function byKey(e, place, act) {
  const action = { ArrowLeft: 'before', ArrowUp: 'before', ArrowRight: 'after', ArrowDown: 'after' }[e.key];
  if (e.altKey && !e.ctrlKey && !e.metaKey && action) {
    e.preventDefault();
    act(action, place);
  }
}

/** The kinds to add. */
export function kindOptions() {
  return KINDS.map(({ kind, name }) => el('option', { value: kind }, name));
}
