// A reference set built here, from repeated readings of known plugs: the project's own file in JSON.

/** The dimensions of a plug, as files name them. */
export const DIMENSIONS = [
  'tip diameter',
  'collar diameter',
  'tip length',
  'insertion length',
  'groove width',
  'groove diameter',
  'tip to collar',
  'shoulder diameter',
  'bore',
];

/** So many readings of one plug or of several make a dimension: the library needs two. */
const FEWEST = 2;

/** Readings that were typed behind one another: "11.90 11.92; 11.91 mm"; the last unit holds for those without. */
export function readingsIn(text) {
  const found = [...text.matchAll(/((?:\d+(?:[.,]\d+)?|(?<![\d.])\.\d+)(?:\s*\/\s*\d+)?)\s*(mm|in|")?/gi)];
  const last = [...found].reverse().find((each) => each[2])?.[2];
  return found.map((each) => {
    const unit = (each[2] ?? last ?? '').toLowerCase().replace('"', 'in');
    const number = each[1].replace(',', '.').replace(/\s/g, '').replace(/^\./, '0.');
    return unit ? `${number} ${unit}` : number;
  });
}

/** The file of a set that is being built; profiles with no dimension that can be used are left out. */
export function setFile(built) {
  const profiles = (built.profiles ?? [])
    .map(profileOf)
    .filter((profile) => Object.keys(profile.dimensions).length > 0);
  return { set: built.name?.trim() || 'Set built here', profiles };
}

function profileOf(typed, i) {
  const dimensions = {};
  let pieces = 0;
  for (const dimension of DIMENSIONS) {
    const readings = readingsIn(typed.readings?.[dimension] ?? '');
    if (readings.length >= FEWEST) {
      dimensions[dimension] = { readings };
      pieces = Math.max(pieces, readings.length);
    }
  }
  const name = typed.name?.trim() || `Profile ${i + 1}`;
  return {
    id: idOf(name, i),
    name,
    from: 'measured',
    pieces,
    source: typed.source?.trim() || 'measured here',
    basis: 'measured',
    caliper: typed.caliper || 'digital caliper 0.01 mm',
    dimensions,
  };
}

function idOf(name, i) {
  return (
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || `profile-${i + 1}`
  );
}

/** Whether anything that can be used was typed. */
export function isUsable(built) {
  return setFile(built).profiles.length > 0;
}
