// A reference set built here, from repeated readings of known plugs: the project's own file in JSON.
import { SIZES } from './sizes.mjs';

/** So many readings of one plug or of several make a size: the library needs two. */
const FEWEST = 2;

/**
 * Readings that were typed behind one another, "11.90 11.92; 11.91 mm", apart; the last unit holds for those without.
 * What each of them says is read by the library alone, as it reads a job file. "1 15/32 in" is one reading.
 */
export function readingsIn(text) {
  const found = text.split(';').flatMap(behindOneAnother);
  const unit = /(?:\s|^[\d.,/ -]+)([^\d\s.,/-]+)$/.exec(found.at(-1) ?? '')?.[1];
  return unit ? found.map((each) => (/[^\d\s./-]/.test(each) ? each : `${each} ${unit}`)) : found;
}

/** A gap in front of a digit parts two readings, but not a whole number from the fraction that belongs to it. */
function behindOneAnother(text) {
  const pieces = text
    .trim()
    .split(/\s+(?=[\d.])/)
    .filter(Boolean);
  const found = [];
  for (const piece of pieces) {
    if (/^\d+$/.test(found.at(-1) ?? '') && /^\d+\/\d+/.test(piece)) {
      found.push(`${found.pop()} ${piece}`);
    } else {
      found.push(piece);
    }
  }
  return found;
}

/** The file of a set that is being built; profiles with no size that can be used are left out. */
export function setFile(built) {
  const profiles = placesOf(built).map((i) => profileOf(built.profiles[i], i, built.profiles));
  return { set: built.name?.trim() || 'Set built here', profiles };
}

/** Which of the profiles that are typed stand in the file, in their order there. */
export function placesOf(built) {
  return (built.profiles ?? []).flatMap((typed, i) => (Object.keys(sizesOf(typed)).length > 0 ? [i] : []));
}

function sizesOf(typed) {
  const sizes = {};
  for (const size of SIZES) {
    const readings = readingsIn(typed.readings?.[size] ?? '');
    if (readings.length >= FEWEST) {
      sizes[size] = { readings };
    }
  }
  return sizes;
}

function profileOf(typed, i, all) {
  const dimensions = sizesOf(typed);
  return {
    id: idOf(all, i),
    name: typed.name?.trim() || `Profile ${i + 1}`,
    from: 'measured',
    // As many as each size was read on: the library takes no claim of more.
    pieces: Math.min(...Object.values(dimensions).map(({ readings }) => readings.length)),
    source: typed.source?.trim() || 'measured here',
    basis: 'measured',
    caliper: typed.caliper || 'digital caliper 0.01 mm',
    dimensions,
  };
}

/** The id by which parts of a stock name a profile: the one that was typed, or one made of its name. */
export function idOf(all, i) {
  const typed = all[i].id?.trim();
  if (typed) {
    return typed;
  }
  const made = (all[i].name ?? '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const taken = all.slice(0, i).map((_, n) => idOf(all, n));
  return made === '' || taken.includes(made) ? `${made || 'profile'}-${i + 1}` : made;
}

/** Whether anything that can be used was typed. */
export function isUsable(built) {
  return placesOf(built).length > 0;
}

/** Whether anything at all was typed. */
export function isTypedInto(built) {
  return Boolean(built.name?.trim()) || (built.profiles ?? []).some((typed) => Object.keys(typed).length > 0);
}

/** The field of the builder that a refusal of its file is about: "profiles[2].dimensions.bore.readings[3]". */
export function builtField(place, built) {
  const found = /^profiles\[(\d+)\](?:\.dimensions\.([a-z ]+)|\.(id|name|source))?/.exec(place);
  const i = found ? placesOf(built)[Number(found[1]) - 1] : undefined;
  if (i === undefined) {
    return 'built.name';
  }
  return `built.profiles.${i}.${found[2] && SIZES.includes(found[2]) ? `readings.${found[2]}` : (found[3] ?? 'name')}`;
}
