// Which profiles a plug is compared with, where the shop's own set stands beside a stock with profiles of its own.

/** What can be chosen, each in the words of the page. */
export const CHOICES = {
  both: 'the set and the stock’s profiles',
  set: 'the set alone',
  stock: 'the stock’s profiles alone',
};

/**
 * What counts: {set, stock, how, shared, leftOut, sockets}. `set` is the file of the shop's own set {name, text,
 * profiles, sockets} or null, `profiles` being its profiles as a catalogue has them; `chosen` one of CHOICES. Unless one
 * is chosen both count, but where ids stand in both, which of the two is meant is for the shop to say, and the set alone
 * counts.
 */
export function compared(stock, set, chosen) {
  const ofStock = Array.isArray(stock?.profiles) ? stock.profiles : [];
  if (!set?.profiles || ofStock.length === 0) {
    return { set: set ?? null, stock, how: null, shared: [], leftOut: 0, sockets: 0 };
  }
  const own = new Set(set.profiles.map(({ id }) => id));
  const shared = ofStock.filter(({ id }) => own.has(id)).map(({ id, name }) => String(name ?? id));
  const how = Object.hasOwn(CHOICES, chosen ?? '') ? chosen : shared.length === 0 ? 'both' : 'set';
  if (how === 'stock') {
    return { set: null, stock, how, shared, leftOut: 0, sockets: 0 };
  }
  if (how === 'both') {
    return { set: null, stock: withProfiles(stock, set.profiles, own), how, shared, leftOut: 0, sockets: set.sockets };
  }
  const known = partsKnown(stock, own);
  const leftOut = piecesOf(stock) - piecesOf(known);
  return { set, stock: leftOut === 0 ? stock : known, how, shared, leftOut, sockets: 0 };
}

/** Made once for each stock and set: of ten thousand parts it takes longer than a key may wait. */
const compositions = new WeakMap();

function once(stock, key, how, make) {
  const before = compositions.get(stock);
  if (before?.key === key && before.how === how) {
    return before.stock;
  }
  const fresh = make();
  compositions.set(stock, { key, how, stock: fresh });
  return fresh;
}

/** The stock with the set's profiles; of an id in both the set's stands there. */
function withProfiles(stock, profiles, own) {
  return once(stock, profiles, 'both', () => ({
    ...stock,
    profiles: [...profiles, ...stock.profiles.filter(({ id }) => !own.has(id))],
  }));
}

/** The stock without the parts of profiles that the set does not know. */
function partsKnown(stock, own) {
  const key = [...own].join('\n');
  return once(stock, key, 'set', () => {
    const known = (part) => (part?.profile === undefined || own.has(part.profile) ? takes(part, own) : null);
    const kept = (list) => (Array.isArray(list) ? list.map(known).filter((part) => part !== null) : list);
    const { accessories, ...rest } = stock;
    return {
      ...rest,
      parts: kept(stock.parts),
      ...(accessories === undefined ? {} : { accessories: kept(accessories) }),
    };
  });
}

/** A socket that takes several profiles takes those that are known. */
function takes(part, own) {
  if (!Array.isArray(part?.takes)) {
    return part;
  }
  const known = part.takes.filter((id) => own.has(id));
  return known.length === 0 ? null : known.length === part.takes.length ? part : { ...part, takes: known };
}

function piecesOf({ parts, accessories }) {
  return [parts, accessories].reduce((sum, list) => sum + (Array.isArray(list) ? list.length : 0), 0);
}

/** What is done, in a sentence or two; empty where there is nothing to choose. */
export function comparedInWords({ how, shared, leftOut, sockets }) {
  if (!how) {
    return '';
  }
  const names = shared.slice(0, 4).join(', ') + (shared.length > 4 ? ` and ${shared.length - 4} more` : '');
  if (how === 'both') {
    const what =
      shared.length === 0
        ? 'Compared with both: no id stands in the set and in the stock.'
        : `Compared with both. In both stands ${names}; of these the set’s sizes count.`;
    return sockets > 0 ? `${what} The set’s universal sockets do not count beside a stock.` : what;
  }
  if (how === 'stock') {
    return 'Compared with the stock’s profiles; the set is put aside.';
  }
  const both = shared.length === 0 ? '' : ` In both stands ${names}: say which is meant.`;
  const left =
    leftOut === 0
      ? ''
      : ` ${leftOut === 1 ? 'One part of the stock is' : `${leftOut} parts of the stock are`} left out: ` +
        'for profiles that the set does not know.';
  return `Compared with the set alone.${both}${left}`;
}
