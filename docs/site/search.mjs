// What the search of the site knows: a list of places with their words. It is a script, because a page that is opened
// from a file may read no other kind of file.
import { plain, unescaped } from './source.mjs';

/**
 * The places of one page: one for each heading, and one for each row with a name of its own, such as a source.
 *
 * @param chapter {page, title, headings}
 * @param options headingsOnly: what stands below the headings is not found
 * @return each {page, chapter, at, title, text}; `at` is the name of the place, '' for the page itself
 */
export function entries({ page, title, headings }, { headingsOnly = false } = {}) {
  return headings.flatMap(({ level, id, text, body }) => {
    const rows = [...body.matchAll(/<tr>\s*<td[^>]*><span id="([^"]+)"><\/span>([\s\S]*?)<\/tr>/g)];
    const rest = rows.length > 0 ? body.replace(/<tbody>[\s\S]*?<\/tbody>/g, '') : body;
    const place = { page, chapter: title, at: level === 1 ? '' : id, title: level === 1 ? title : text };
    return [
      { ...place, text: headingsOnly ? '' : words(rest) },
      ...rows.map(([, at, row]) => ({ page, chapter: title, at, title: words(row).split(' ')[0], text: words(row) })),
    ];
  });
}

/** The words of HTML, with what only drawings, screen readers and compilers need left out. */
export function words(html) {
  const text = html
    .replace(/<mjx-assistive-mml[\s\S]*?<\/mjx-assistive-mml>/g, ' ')
    .replace(/<svg[\s\S]*?<\/svg>/g, ' ')
    .replace(/<(?:su[bp]|\/su[bp]|code|\/code|strong|\/strong|em|\/em|a|\/a|span|\/span)\b[^>]*>/g, '')
    .replace(/<[^>]*>/g, ' ');
  return unescaped(plain(text)).replace(/\bimport (?:static )?\w+(?:\.\w+)+;?/g, '').replace(/\s+/g, ' ').trim();
}

/**
 * The words of the trade for which this project has another one: from the tables of the glossary with three columns.
 *
 * @return pairs [word in US trade, our word], both in small letters
 */
export function synonyms(glossary) {
  return glossary
    .split('\n')
    .map((line) => line.split('|').map((cell) => cell.trim().toLowerCase()))
    .filter((cells) => cells.length === 5 && !/^(word|-*)$/.test(cells[1]))
    .flatMap(([, ours, , trade]) => trade.split(', ').map((one) => [one, ours.split(', ')[0]]))
    .filter(([trade, ours]) => trade !== ours && trade !== '');
}

/** The script that brings the index: path and title of each page, then of each place its page, name, title and text. */
export function index(all, glossary) {
  const pages = [...new Map(all.map(({ page, chapter }) => [page, chapter]))];
  const number = new Map(pages.map(([path], at) => [path, at]));
  const places = all.map(({ page, at, title, text }) => [number.get(page), at, title, text]);
  const json = JSON.stringify({ pages, synonyms: synonyms(glossary), places }).replaceAll('<', '\\u003c');
  return `globalThis.airfitPlaces = ${json};\n`;
}
