// Which file is answered by which call, seen by what stands in it.

/** The kinds of files, in the order of the list: the field that begins one, its call, and what it is in words. */
export const ANSWERED = [
  {
    field: 'airfitDay',
    call: 'day',
    what: 'A day of a plant',
    answers: 'the pressure over a day, users that are short, and what would change',
    example: ['smithy.json'],
  },
  {
    field: 'airfitDiagnosis',
    call: 'diagnosis',
    what: 'Readings of gauges',
    answers: 'what is wrong in a run, with two gauges, and what to read next',
    example: ['slow-grinder.json'],
  },
  {
    field: 'airfitWater',
    call: 'water',
    what: 'Water and purity',
    answers: 'where water falls out, and which filters and dryers reach a purity',
    example: ['print-works.json'],
  },
  {
    field: '',
    call: 'leaks',
    what: 'A ledger of leaks',
    answers: 'what leaks cost, and which repairs pay first; a table (CSV)',
    example: ['leaks.csv'],
  },
  {
    field: 'airfitInventory',
    call: 'inventory',
    what: 'An inventory of couplings',
    answers: 'which profile to keep, and what to change in which order',
    example: ['inventory.json', 'catalogue.json', 'workshop.csv'],
  },
  {
    field: 'airfitPriceList',
    call: 'priceList',
    what: 'A check of a price list',
    answers: 'its faults, and what it lacks for the jobs that come',
    example: ['check.json', 'price-list.json', 'profiles.csv'],
  },
  {
    field: 'airfitJob',
    call: 'cards',
    what: 'A job, as pencil cards',
    answers: 'what arrives at the tool, which thread and which plug it is, by pencil and ruler',
    example: ['weak-sander.json', 'parts.json'],
  },
];

/** The kind of file that a text is; undefined of one that others name, such as a catalogue. */
export function kindOf(text) {
  const plain = text.replace(/^\ufeff/, '').trimStart();
  if (!plain.startsWith('{')) {
    const columns = (plain.split(/\r?\n/).find((row) => /[^,;\s]/.test(row)) ?? '')
      .toLowerCase()
      .split(/[,;]/)
      .map((cell) => cell.trim().replace(/^"|"$/g, ''));
    return columns.includes('record') && columns.some((column) => ['tag', 'loadedpower', 'hole'].includes(column))
      ? ANSWERED.find(({ call }) => call === 'leaks')
      : undefined;
  }
  let content;
  try {
    content = JSON.parse(plain);
  } catch {
    // Whoever reads it for the answer tells what is wrong, with its line.
    return ANSWERED.find(({ field }) => field && plain.includes(`"${field}"`));
  }
  return ANSWERED.find(({ field }) => field && Object.hasOwn(content, field));
}
