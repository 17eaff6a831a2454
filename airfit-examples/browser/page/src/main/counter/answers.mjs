// What follows from what was told, beside it.
import { el, adopted } from './elements.mjs';
import { chartUnder, reasonsOf } from './pages.mjs';

/** A part of the answers under its heading; nothing where nothing is to be said. */
function part(id, title, ...children) {
  const said = children.flat().filter(Boolean);
  return said.length === 0 ? null : el('section', { class: `answer ${id}`, 'aria-labelledby': `h-${id}` }, el('h3', { id: `h-${id}` }, title), ...said);
}

/** A refusal stands alone. */
export function refusal(lines) {
  return el('section', { class: 'answer refused', role: 'alert' }, el('h3', {}, 'Refused'), ...lines.map((line) => el('p', {}, line)));
}

/** What the plug may be: chances as bars, what to read next, and what looks wrong. */
export function plugPart(plug, { takeNext }) {
  if (!plug) {
    return null;
  }
  return part(
    'plug',
    'The plug',
    el('p', { class: 'verdict' }, plug.words),
    plug.slips?.map((slip) => el('p', { class: 'warn' }, slip)),
    plug.candidates?.length > 0 && el('ol', { class: 'chances' }, plug.candidates.map((candidate) =>
      el('li', {},
        el('span', { class: 'name' }, candidate.name),
        el('span', { class: 'chance' }, candidate.said ?? ''),
        bar(candidate.chance)))),
    plug.next && el('p', { class: 'next' }, el('strong', {}, 'Read next: '), plug.next.words, ' ',
      plug.next.dimension && el('button', { type: 'button', onclick: () => takeNext(plug.next.dimension) }, `Show where: ${plug.next.dimension}`)),
    plug.residuals?.length > 0 && el('details', {}, el('summary', {}, 'How the readings lie'), el('ul', {}, plug.residuals.map((line) => el('li', {}, line)))),
  );
}

function bar(chance) {
  const inner = el('span', { class: 'fill' });
  inner.style.width = `${Math.max(0.5, 100 * (chance ?? 0))}%`;
  return el('span', { class: 'bar', 'aria-hidden': 'true' }, inner);
}

export function setPart(hasSet, hasReadings) {
  return hasSet || !hasReadings ? null : part('noset', 'The plug', el('p', { class: 'verdict' },
    'Without a reference set no real plug can be named: no table of plug sizes could be verified, so none is built in. '
    + 'Open the shop’s own set, or build one from plugs that you know.'));
}

export function threadPart(thread) {
  return thread ? part('thread', 'Its thread', el('p', { class: 'verdict' }, thread.words), chances(thread.candidates)) : null;
}

function chances(candidates) {
  return candidates?.length > 1 && el('ol', { class: 'chances' }, candidates.slice(0, 5).map((each) =>
    el('li', {}, el('span', { class: 'name' }, each.name), el('span', { class: 'chance' }, each.said ?? ''), bar(each.chance))));
}

/** What is still to be told before parts can be chosen. */
export function wantedPart(wanted, { goTo }) {
  return wanted.length === 0 ? null : part('wanted', 'To choose parts, tell also', el('ul', { class: 'wants' }, wanted.map(({ field, what }) =>
    el('li', {}, el('button', { type: 'button', class: 'link', onclick: () => goTo(field) }, what)))));
}

/** A question that was refused, where no field is at fault. */
export function faultPart(lines) {
  return lines.length === 0 ? null : part('fault', 'Cannot be used so', ...lines.map((line) => el('p', { class: 'warn' }, line)));
}

/** The sheet's own lines, tables and drawings. */
export function sheetParts(sheet) {
  const now = chartUnder(sheet.behind, 'The air now');
  const then = chartUnder(sheet.behind, 'Why these parts');
  const facts = sheet.facts ? [...sheet.facts.children].filter((each) => each.localName !== 'h2').map(adopted) : [];
  facts.flatMap((each) => [...each.querySelectorAll('dt')]).filter((dt) => /^(Plug|Its thread)$/.test(dt.textContent))
    .forEach((dt) => { dt.nextElementSibling?.remove(); dt.remove(); });
  return [
    part('air', 'The air', ...facts),
    part('chart', 'Pressure along the run', then && adopted(then), now && el('details', { open: !then }, el('summary', {}, 'As it is now'), adopted(now))),
    partsTable(sheet),
    part('open', 'Still open', ...bodyOf(sheet.open)),
    part('care', 'Before anyone connects this', ...bodyOf(sheet.care)),
  ];
}

function bodyOf(section) {
  return section ? [...section.children].filter((each) => each.localName !== 'h2').map(adopted) : [];
}

/** The parts with their prices, and under each why it was chosen. */
function partsTable(sheet) {
  const children = bodyOf(sheet.parts);
  const why = reasonsOf(sheet.behind);
  for (const row of children.flatMap((each) => [...each.querySelectorAll('tbody tr')])) {
    const id = row.querySelector('td.id')?.textContent;
    const reason = why.get(id);
    const what = row.querySelector('th');
    if (reason && what) {
      what.querySelector('.soft')?.remove();
      what.append(el('span', { class: 'why' }, reason));
    }
  }
  return part('parts', 'Recommended parts', ...children);
}
