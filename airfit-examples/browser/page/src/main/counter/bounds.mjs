// Files that people open: how large they may be, and what they are.

const MEGABYTES = 10;
const PARTS = 100000;
/** A job of ten splitters, one behind another, has not half of it. */
const DEPTH = 100;

/** A refusal of a file: one line to show. */
export class WrongFile extends Error {
  constructor(name, complaint) {
    super(`${name}: ${complaint}`);
    this.name = 'WrongFile';
  }
}

/** Refuses a file by its size, before it is read. */
export function requireSmall(name, bytes) {
  if (bytes > MEGABYTES * 1e6) {
    throw new WrongFile(name, `holds ${(bytes / 1e6).toFixed(1)} MB; up to ${MEGABYTES} MB are read`);
  }
}

/**
 * Refuses JSON in which a field stands twice: the page would sell by the second, and nobody would know of the first. So
 * too what is nested deeper than the page can follow.
 */
function requireOnce(name, text) {
  const open = [];
  const words = /"(?:[^"\\]+|\\.)*"(\s*:)?|[{}[\]]/gs;
  for (const [word, isField] of text.matchAll(words)) {
    if (word === '{' || word === '[') {
      if (open.push(new Set()) > DEPTH) {
        throw new WrongFile(name, `holds lists or objects more than ${DEPTH} deep; up to ${DEPTH} are read`);
      }
    } else if (word === '}' || word === ']') {
      open.pop();
    } else if (isField !== undefined) {
      const field = JSON.parse(word.slice(0, -isField.length));
      const fields = open.at(-1);
      if (fields.has(field)) {
        throw new WrongFile(name, `"${field.slice(0, 60)}" stands twice in one object; keep one of them`);
      }
      fields.add(field);
    }
  }
}

/** The place of the first null in a list, as a refusal counts, such as "line[2]"; empty where there is none. */
function nullIn(value, path = '') {
  const isList = Array.isArray(value);
  for (const [name, each] of Object.entries(value)) {
    const place = isList ? `${path}[${Number(name) + 1}]` : path + (path && '.') + name;
    const found = each === null ? isList && place : typeof each === 'object' && nullIn(each, place);
    if (found) {
      return found;
    }
  }
  return '';
}

/** What a file is, by what stands in it: {kind, content}; kind is job, stock, set, letterhead or rules. */
export function recognised(name, text) {
  if (/\.csv$/i.test(name)) {
    const heading = text
      .slice(0, 2000)
      .replace(/^\ufeff/, '')
      .split(/\r?\n/, 1)[0]
      .toLowerCase();
    const columns = heading.split(/[,;]/).map((cell) => cell.trim().replace(/^"|"$/g, ''));
    if (columns.includes('record') && columns.includes('id')) {
      return { kind: 'set', content: null };
    }
    if (columns.includes('jurisdiction') || columns.includes('citation') || columns.includes('place')) {
      return { kind: 'rules', content: null };
    }
    throw new WrongFile(name, 'is a table, but neither a reference set nor safety rules');
  }
  let content;
  try {
    content = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (e) {
    throw new WrongFile(name, `is no JSON: ${String(e.message).split('\n', 1)[0].slice(0, 120)}`);
  }
  requireOnce(name, text);
  if (content === null || typeof content !== 'object' || Array.isArray(content)) {
    throw new WrongFile(name, 'holds no job, stock or reference set');
  }
  const place = nullIn(content);
  if (place) {
    throw new WrongFile(name, `${place} is null; tell what stands there, or take it out of the list`);
  }
  if (Object.hasOwn(content, 'airfitJob')) {
    return { kind: 'job', content };
  }
  if (Object.hasOwn(content, 'parts') || Object.hasOwn(content, 'catalogue')) {
    const parts = Array.isArray(content.parts) ? content.parts.length : 0;
    if (parts > PARTS) {
      throw new WrongFile(name, `holds ${parts} parts; up to ${PARTS} are read`);
    }
    return { kind: 'stock', content };
  }
  if (Object.hasOwn(content, 'profiles')) {
    return { kind: 'set', content };
  }
  if (
    Object.hasOwn(content, 'name') &&
    ['address', 'phone', 'validDays', 'tax'].some((field) => Object.hasOwn(content, field))
  ) {
    return { kind: 'letterhead', content };
  }
  throw new WrongFile(name, 'holds no job, stock or reference set: no airfitJob, parts or profiles stands in it');
}
