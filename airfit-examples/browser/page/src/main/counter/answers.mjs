// What follows from what was told, beside it.
import { el, adopted } from './elements.mjs';
import { drawn } from './pages.mjs';

/** A part of the answers under its heading, which is no landmark of its own; nothing where nothing is to be said. */
function part(id, title, ...children) {
  const said = children.flat(Infinity).filter(Boolean);
  return said.length === 0
    ? null
    : el('section', { class: `answer ${id}` }, el('h3', { id: `a-${id}` }, title), said);
}

/** Sentences as a list; nothing where there are none. */
function list(sentences, kind = '') {
  return (
    sentences?.length > 0 &&
    el(
      'ul',
      { class: kind },
      sentences.map((each) => el('li', {}, words(each))),
    )
  );
}

/** A sentence with the index of a symbol, such as D_t, set low. */
function words(sentence) {
  return String(sentence)
    .replace(/(\d) %/g, '$1\u00a0%')
    .split(/\b([DLWd]_[a-z])\b/)
    .map((piece, i) => (i % 2 === 0 ? piece : el('span', {}, piece[0], el('sub', {}, piece[2]))));
}

/** What is made only when it is unfolded: a key need not wait for it. */
function folded(title, make) {
  const details = el('details', { 'data-fold': title }, el('summary', {}, title));
  details.addEventListener('toggle', () => details.append(...make().flat(Infinity).filter(Boolean)), { once: true });
  return details;
}

/** A refusal stands alone; that there is one is read out with the summary. */
export function refusal(headline) {
  return el(
    'section',
    { class: 'answer refused' },
    el('h3', {}, 'Refused'),
    el('p', {}, headline),
    el('p', {}, 'Nothing was computed and no part was chosen.'),
  );
}

/** What the plug may be: chances as bars, what to read next and why, and what looks like a slip. */
export function plugPart(plug, hasReadings, isSelected, { takeNext }) {
  const next = plug.kind === 'identified' ? undefined : plug.next.find(({ bits }) => bits >= WORTH_BITS);
  const first = plug.candidates[0];
  const said = new Set([plug.headline, next?.text]);
  const isNew = (sentence) => !said.has(sentence) && !plug.headline.includes(sentence);
  return part(
    'plug',
    'The plug',
    hasReadings && el('p', { class: 'verdict' }, words(plug.headline)),
    plug.slips.filter(isNew).map((slip) => el('p', { class: 'warn' }, words(slip))),
    hasReadings &&
      plug.chances.length > 0 &&
      el(
        'ol',
        { class: 'chances' },
        shownChances(plug.chances).map(({ what, chance, probability }) =>
          el('li', {}, el('span', { class: 'name' }, what), el('span', { class: 'chance' }, chance), bar(probability)),
        ),
      ),
    next &&
      el('p', { class: 'next' }, el('strong', {}, hasReadings ? 'Read next: ' : 'Read first: '), words(next.text)),
    next &&
      el(
        'p',
        {},
        el(
          'button',
          { type: 'button', class: 'link', onclick: () => takeNext(next.size) },
          `Where the caliper goes: ${next.size}`,
        ),
      ),
    list(plug.waysOut),
    // With parts chosen, all that is open stands below.
    hasReadings && !isSelected && list(plug.open.filter(isNew)),
    folded('How the readings lie', () => [
      list(first?.why),
      list(plug.takenForGranted),
      plug.picture && picture(plug.picture.svg),
    ]),
  );
}

/** Below so much expected information a reading is not worth its time [bit]; our own choice. */
const WORTH_BITS = 0.001;

/** The chances that are worth a line, the largest first. */
function shownChances(chances) {
  return likeliest(chances)
    .filter(({ probability }, i) => probability >= 0.0005 || i < 3)
    .slice(0, 8);
}

/** Chances, the largest first. */
export function likeliest(chances) {
  return [...chances].sort((a, b) => b.probability - a.probability);
}

function bar(probability) {
  const inner = el('span', { class: 'fill' });
  inner.style.width = `${Math.max(0.5, 100 * probability)}%`;
  return el('span', { class: 'bar', 'aria-hidden': 'true' }, inner);
}

export function setPart(isKnown, hasReadings, { goTo }) {
  return isKnown || !hasReadings
    ? null
    : part(
        'noset',
        'The plug',
        el(
          'p',
          { class: 'verdict' },
          'Without a reference set no real plug can be named: no table of plug sizes could be verified, so none is ' +
            'built in. Open the shop’s own set, or build one from plugs that you know.',
        ),
        links([{ field: 'set', what: 'To the reference set' }], goTo),
      );
}

/** A job that was opened was judged with another set than counts now. */
export function otherSetPart(sentence, { goTo }) {
  return sentence
    ? part(
        'otherset',
        'Another set',
        el('p', { class: 'warn' }, sentence),
        el('p', {}, 'Open that set to have the same answer, or read this one anew and save the job.'),
        links([{ field: 'set', what: 'To the reference set' }], goTo),
      )
    : null;
}

/** Entries that cannot be used: what is wrong stands beside each. */
export function wrongPart(wrong, { goTo }) {
  return wrong.length === 0 ? null : part('look', 'Look again at', links(wrong, goTo));
}

/** Buttons that lead to fields, [{field, what}]. */
function links(fields, goTo) {
  return el(
    'ul',
    { class: 'wants' },
    fields.map(({ field, what }) =>
      el('li', {}, el('button', { type: 'button', class: 'link', onclick: () => goTo(field) }, what)),
    ),
  );
}

export function threadPart(thread) {
  return thread
    ? part(
        'thread',
        'Its thread',
        el('p', { class: 'verdict' }, thread.sentence),
        el('p', { class: 'soft' }, thread.read),
      )
    : null;
}

/** What is still to be told before parts can be chosen. */
export function wantedPart(wanted, { goTo }) {
  return wanted.length === 0 ? null : part('wanted', 'To choose parts, tell also', links(wanted, goTo));
}

/** A question that was refused, where no field is at fault. */
export function faultPart(lines) {
  return part(
    'fault',
    'This cannot be used',
    lines.map((line) => el('p', { class: 'warn' }, line)),
  );
}

let last = { told: '', parts: [] };

/** What was found and chosen, with its reasons; the very elements that stand there if nothing has changed. */
export function selectedParts(selected) {
  const told = JSON.stringify(selected);
  if (told !== last.told) {
    last = { told, parts: partsOf(selected).filter(Boolean) };
  }
  return last.parts;
}

function partsOf(selected) {
  const best = selected.proposals[0];
  const fits = selected.kind === 'fits';
  const now = selected.now;
  return [
    part('wrong', 'Not right with it', list(selected.wrong)),
    part(
      'air',
      'The air',
      el(
        'dl',
        {},
        selected.found
          .filter(({ what }) => !/^(Plug|Its thread)$/.test(what))
          .map(({ what, text }) => [el('dt', {}, what), el('dd', {}, words(text))]),
      ),
      !fits && list(selected.toGive.filter((give) => !selected.found.some(({ text }) => text.includes(give)))),
    ),
    part(
      'chart',
      'Pressure along the run',
      fits && best?.ways.map((way) => [best.ways.length > 1 && el('h4', {}, way.to), chart(way.picture)]),
      now && folded('As it is now', () => [el('p', {}, now.sentence), chart(now.picture), list(now.helps)]),
    ),
    fits && best ? partsTable(best) : null,
    !fits && best
      ? part(
          'miss',
          'The nearest miss, not to be sold',
          folded('What it is, and what it does not meet', () => [
            list(best.parts.map(({ name }) => name)),
            list(
              best.rules
                .filter(({ outcome }) => outcome === 'unmet')
                .map(({ rule, sentence }) => `${rule}: ${sentence}`),
            ),
          ]),
        )
      : null,
    part('open', 'Still open', list(selected.questions, 'ask')),
    part('offers', 'Which offer?', list(selected.offers)),
    cautionsPart(selected.cautions),
    selected.remarks.length > 0
      ? part(
          'read',
          'How it was read',
          folded('What may be meant otherwise, and what was assumed', () => [
            list(selected.remarks.map(({ what, text }) => (what ? `${what}: ${text}` : text))),
          ]),
        )
      : null,
    fits && best
      ? part(
          'rules',
          'Rule by rule',
          folded('Each rule, and what it found', () => [
            el(
              'dl',
              {},
              best.rules
                .filter(({ outcome }) => outcome !== 'doesNotApply')
                .map(({ rule, said, sentence }) => [el('dt', {}, `${rule}: ${said}`), el('dd', {}, sentence)]),
            ),
          ]),
        )
      : null,
  ];
}

function picture(svg) {
  const drawing = drawn(svg);
  return drawing && el('figure', { class: 'picture' }, adopted(drawing));
}

/** The column is narrow, so its drawing is the narrow one. */
function chart({ narrow }) {
  const drawing = drawn(narrow);
  return drawing && el('figure', { class: 'chart' }, adopted(drawing));
}

/** The parts with their prices, and with each why it was chosen. */
function partsTable(best) {
  const isPriced = best.parts.some(({ price }) => price);
  return part(
    'parts',
    'Recommended parts',
    el(
      'table',
      {},
      el(
        'thead',
        {},
        el(
          'tr',
          {},
          el('th', { scope: 'col' }, 'pieces'),
          el('th', { scope: 'col' }, 'part, and why'),
          isPriced && el('th', { scope: 'col', class: 'n' }, 'price'),
        ),
      ),
      el(
        'tbody',
        {},
        best.parts.map((line) =>
          el(
            'tr',
            {},
            el('td', { class: 'count' }, line.quantity),
            el(
              'th',
              { scope: 'row' },
              line.name,
              line.id && el('span', { class: 'id' }, ` ${line.id}`),
              el('span', { class: 'why' }, line.existing ? 'is there already; ' : '', line.reason),
            ),
            isPriced && el('td', { class: 'n' }, line.price ?? ''),
          ),
        ),
      ),
    ),
    best.price && el('p', { class: 'total' }, best.price),
  );
}

/** The title of the caution that defers to codes, makers and licensed practice. */
const DEFERS = 'Before anyone connects this';

export function cautionsPart(cautions) {
  if (!cautions?.length) {
    return null;
  }
  const [first, ...rest] = cautions;
  // What defers to codes and makers stands last, and its title is the heading; of a plug alone none does.
  const last = rest.at(-1)?.title === DEFERS ? rest.pop() : null;
  return part(
    'care',
    DEFERS,
    el('p', { class: 'first' }, `${first.title}. ${first.text}`),
    el(
      'ul',
      {},
      rest.map(({ title, text }) => el('li', {}, el('strong', {}, `${title}. `), text)),
    ),
    last && el('p', { class: 'last' }, last.text),
  );
}
