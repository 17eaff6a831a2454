// With which set a job was judged: the job file names it, in a remark that no reader of job files takes for a field.

const REMARK = '// judged with';

/** What tells one set from another: a mark of its text, whatever blanks stand in it (FNV-1a, 32 bits). */
export function markOf(text) {
  let bare;
  try {
    bare = JSON.stringify(JSON.parse(text));
  } catch {
    bare = text.replace(/\r\n/g, '\n').trim();
  }
  let mark = 0x811c9dc5;
  for (let i = 0; i < bare.length; i++) {
    mark = Math.imul(mark ^ bare.charCodeAt(i), 0x01000193) >>> 0;
  }
  return mark.toString(16).padStart(8, '0');
}

/** A set, as a job file names it: {title, name, text}, and whether the stock's profiles count beside. */
export function setInWords({ title, name, text }, isWithStock) {
  return `${title} (${name}${isWithStock ? ', with the profiles of the stock' : ''}), mark ${markOf(text)}`;
}

/** The job as it is saved: judged with a set of the shop's own, with profiles of its stock, or with nothing yet. */
export function withJudged(job, words, isByStock) {
  const { [REMARK]: before, ...rest } = job;
  if (words) {
    return { ...rest, [REMARK]: words };
  }
  return before === undefined || isByStock ? rest : job;
}

/** A warning where the set that counts now is not the one that the job was judged with; empty where it is. */
export function otherSet(job, words) {
  const before = job[REMARK];
  if (typeof before !== 'string' || before === words) {
    return '';
  }
  const now = words ? `Now it is compared with ${bare(words)}.` : 'That set does not count now.';
  return `This job was judged with another set: ${bare(before)}. ${now}`;
}

/** The mark too: it is all that two states of one set may differ in. */
function bare(words) {
  return words.slice(0, 200);
}
