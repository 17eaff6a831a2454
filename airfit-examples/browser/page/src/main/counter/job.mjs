// The job as the project's job file, from the page to the file and back. The state holds the file's own object, so what
// the page does not show goes through it untouched.
import { at, isObject, withAt } from './paths.mjs';
import { USUAL, isSpread, runs } from './line.mjs';

/** A job of which nothing was told yet, with the line that most jobs have. */
export function freshJob() {
  return { airfitJob: 2, line: USUAL };
}

/** Whether nothing was told of a job yet. */
export function isFresh(job) {
  return JSON.stringify(job) === JSON.stringify(freshJob());
}

/** The text of a job file to keep: what a file must have stands in it, all else as it was told. */
export function jobFile(job, catalogue) {
  return `${JSON.stringify(job.catalogue === undefined ? { ...job, catalogue } : job, null, 2)}\n`;
}

/** The name of the file to save a job in, from what the job is about. */
export function fileName(job, end = '.json') {
  const words = String(job.job ?? '')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return (words || 'job') + end;
}

/** What must be told before parts can be chosen, each with its field and its name on the page; none if all is there. */
export function lacking(job) {
  const wanted = [];
  const need = (path, what) => {
    if (at(job, path) === undefined) {
      wanted.push({ field: path, what });
    }
  };
  need('supply.pressure', 'the pressure of the supply');
  const line = Array.isArray(job.line) ? job.line : [];
  const outlet = line.findIndex((item) => item.kind === 'outlet');
  if (outlet < 0) {
    wanted.push({ field: 'line', what: 'an outlet in the run' });
  } else {
    need(`line.${outlet}.end`, 'the thread of the outlet');
  }
  for (const { run, path, called } of runs(job)) {
    const where = called && `, line ${called}`;
    const items = Array.isArray(run.line) ? run.line : [];
    items.forEach((item, i) => {
      if (/hose$/.test(item.kind) && item.reach === undefined && item.part === undefined) {
        wanted.push({ field: `${path}line.${i}.reach`, what: `how far the hose must reach${where}` });
      }
    });
    if (!items.some(isSpread)) {
      if (at(run, 'tool.marking') === undefined) {
        need(`${path}tool.air`, `the air the tool takes${where}`);
        need(`${path}tool.pressure`, `the pressure the tool needs${where}`);
      }
      need(`${path}tool.inlet`, `the thread at the tool${where}`);
    }
  }
  if (isObject(job.receiver)) {
    need('receiver.volume', 'how much the receiver holds');
    need('receiver.draws', 'how long the tool draws from the receiver at a time');
    need('receiver.every', 'how often the tool draws from the receiver');
  }
  if (isObject(job.year)) {
    need('year.hours', 'the hours that the plant runs in a year');
    need('year.electricity', 'the price of electricity');
    need('year.flow', 'the mean flow of the plant');
  }
  return wanted;
}

/** Whether the line is to carry anything but compressed air. That is refused, whatever else was told. */
export function isOtherMedium(job) {
  const medium = at(job, 'conditions.medium');
  return typeof medium === 'string' && medium.trim() !== '' && medium !== 'compressed air';
}

/** Whether anything was told of a plug: readings, or that there is only a socket. */
export function hasPlug(job) {
  return at(job, 'atHand.readings') !== undefined || at(job, 'atHand.socketOnly') === true;
}

/** Whether enough of a thread was read to ask what it is. */
export function hasThread(job) {
  const thread = at(job, 'atHand.thread') ?? {};
  return (
    thread.firstCrest !== undefined &&
    ((thread.pitches !== undefined && thread.overPitches !== undefined) ||
      thread.leafPerInch !== undefined ||
      thread.leafPitch !== undefined)
  );
}

/** The job as it is asked about: what the head of a sheet must have is filled in, unfinished parts are left out. */
export function asked(job) {
  let whole = {
    ...job,
    airfitJob: job.airfitJob ?? 2,
    job: job.job ?? 'Job at the counter',
    customer: job.customer ?? 'Customer not named',
    catalogue: 'stock.json',
  };
  for (const { run, path, called } of runs(whole)) {
    if (isObject(run.tool) && run.tool.name === undefined) {
      whole = withAt(whole, `${path}tool.name`, called ? `Tool ${called}` : 'Tool');
    }
  }
  if (isObject(whole.atHand)) {
    if (at(whole, 'atHand.thread') !== undefined && !hasThread(job)) {
      whole = withAt(whole, 'atHand.thread', undefined);
    }
    if (!hasPlug(job) && at(whole, 'atHand.thread') === undefined) {
      // A caliper alone is no plug at hand: then every coupling may have any profile.
      const { atHand: _, ...rest } = whole;
      whole = rest;
    } else if (at(whole, 'atHand.where') === undefined) {
      whole = withAt(whole, 'atHand.where', 'the counter');
    }
    if (at(whole, 'atHand.readings') !== undefined && at(whole, 'atHand.instrument') === undefined) {
      whole = withAt(whole, 'atHand.instrument', 'digital caliper 0.01 mm');
    }
  }
  return whole;
}

/**
 * The files by name to ask about a job: its stock, with the reference set in place of the stock's own profiles if one
 * is there, and what else was opened.
 */
export function filesFor(job, stock, set, others = {}) {
  // A set that is called as one of the two is called otherwise here, or it would stand in its place.
  const setName = set && /^(?:job|stock)\.json$/.test(set.name) ? `set-${set.name}` : (set?.name ?? '');
  return {
    ...others,
    ...(set ? { [setName]: set.text } : {}),
    'job.json': JSON.stringify(asked(job)),
    'stock.json': stockText(stock ?? NO_STOCK, setName),
  };
}

/** What stands for what was not told yet, only to see whether the rest can be used. */
const SAMPLES = {
  'supply.pressure': '100 psig',
  'tool.air': '10 scfm',
  'tool.pressure': '80 psig',
  'tool.inlet': '1/4 NPT female',
  end: '1/2 NPT female',
  reach: '25 ft',
  volume: '60 US gal',
  draws: '30 s',
  every: '5 min',
  hours: 2000,
  electricity: '0.15 USD',
  flow: '50 scfm',
};

/** Whether anything was told of supply, line or tool that can be checked. */
export function isBegun(job) {
  const lacks = lacking(job);
  const isTold = lacks.length < lacking(freshJob()).length || runs(job).length > 1;
  return isTold && lacks.every(({ field }) => field !== 'line');
}

/** The files by which a job that is not whole is checked, field by field: no stock, and samples for what is lacking. */
export function filesToCheck(job, set) {
  let whole = job;
  for (const { field } of lacking(job)) {
    const names = field.split('.');
    whole = withAt(whole, field, SAMPLES[names.slice(-2).join('.')] ?? SAMPLES[names.pop()]);
  }
  return filesFor({ ...whole, rules: undefined, now: undefined, atHand: undefined }, null, set);
}

const NO_STOCK = { catalogue: 'No stock', parts: [] };

/** Texts of stocks, each made once: of ten thousand parts that takes longer than a key may wait. */
const stockTexts = new WeakMap();

function stockText(stock, set) {
  const made = stockTexts.get(stock);
  if (made?.set === set) {
    return made.text;
  }
  const { profiles, ...rest } = stock;
  const text = JSON.stringify(
    set ? { ...rest, profileSet: set } : rest.profileSet === undefined ? { ...rest, profiles: profiles ?? [] } : stock,
  );
  stockTexts.set(stock, { set, text });
  return text;
}

/** Whether a real plug can be named: a set is there, of the shop's own or in its stock. */
export function hasSet(stock, set) {
  return (
    Boolean(set) || (Array.isArray(stock?.profiles) && stock.profiles.length > 0) || stock?.profileSet !== undefined
  );
}

/**
 * What is asked about the plug and its thread, whatever else of the job is known; null where nothing can be asked. The
 * shop's own set comes first, then the profiles of its stock. Without any a set is given to ask with: it tells the
 * thread, which needs none, and whether the readings can be used.
 */
export function handAsked(job, stock, set, others = {}, without = undefined) {
  const profiles = set?.text ?? profilesOf(stock, others) ?? (hasPlug(job) || hasThread(job) ? without : undefined);
  const hand = at(job, 'atHand') ?? {};
  if (profiles === undefined || !isObject(hand)) {
    return null;
  }
  const { instrument, readings, worn, noNearCopies, socketOnly, inUse } = hand;
  const told = {
    set: profiles,
    readings,
    caliper: instrument,
    worn,
    noNearCopies,
    socketOnly,
    profilesInUse: inUse,
    thread: hasThread(job) ? hand.thread : undefined,
    units: job.units,
  };
  return Object.fromEntries(Object.entries(told).filter(([, value]) => value !== undefined));
}

function profilesOf(stock, others) {
  if (Array.isArray(stock?.profiles) && stock.profiles.length > 0) {
    return { catalogue: String(stock.catalogue ?? 'stock'), profiles: stock.profiles, parts: [] };
  }
  return typeof stock?.profileSet === 'string' ? others[stock.profileSet.split('/').pop()] : undefined;
}

/**
 * The field of the page that a refusal of the library is about, and its words: {field, words}. No field where a file is
 * at fault. Lists count from one in a refusal.
 */
export function placed({ name, message, field = '', file = '' }, inside = '') {
  const isJob = name === 'WrongField' || file === 'job.json' || /^job\.json: /.test(message);
  const bare = message.replace(/^(?:job|stock)\.json: /, '');
  const place = field || (isJob ? (/^([A-Za-z][^:"]*?): /.exec(bare)?.[1] ?? '') : '');
  if (!isJob || place === '') {
    return { field: '', words: bare };
  }
  // Beside a field there is room for a line: examples are enough there, and one sees where it stands.
  // A field of the page has no quotation marks.
  const words = (bare.startsWith(`${place}: `) ? bare.slice(place.length + 2) : bare)
    .replace(/; the units are .*$/s, '')
    .replace(/, at position \d+/, '')
    .replace('a number without quotation marks is wanted', 'a number such as 18 or 1.5 is wanted, with a point')
    .replace('a whole number without quotation marks is wanted', 'a whole number such as 5 is wanted');
  return {
    field: fieldOf((name === 'WrongField' ? inside : '') + place),
    words: words.replace(/^./, (sign) => sign.toUpperCase()),
  };
}

/** "line[2].reach" of a message as "line.1.reach" of the page; a caliper is the instrument of a job file. */
export function fieldOf(place) {
  return place.replace(/\[(\d+)\]/g, (_, n) => `.${Number(n) - 1}`).replace(/^atHand\.caliper$/, 'atHand.instrument');
}
