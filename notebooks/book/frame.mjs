// What is the same on all pages: the head, the way from page to page, the style. A page loads nothing but
// the script of the lessons, if that lies beside it.
import { readFileSync } from 'node:fs';
import { escaped } from './live/text.mjs';

const STYLE = readFileSync(new URL('style.css', import.meta.url), 'utf8')
  .split('\n')
  .map((line) => line.trim())
  .filter(Boolean)
  .join('\n');

/** What the library computes, and what shows it. A page without them reads as well. */
const SCRIPTS = '<script defer src="airfit-lessons.js"></script>\n<script defer src="live.js"></script>\n';

/**
 * A page.
 *
 * @param title its title
 * @param main the HTML of its content, with one h1
 * @param glyphs the glyphs of its formulas
 * @param before the page before it: {file, title}, or undefined
 * @param after the page after it
 * @param style what the page adds to the style
 * @param lesson the number of the lesson whose figures follow their numbers where the script is there, or undefined
 */
export function page({ title, main, glyphs = '', before, after, style = '', lesson }) {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; ${
    lesson ? "script-src 'self'; " : ''
  }style-src 'unsafe-inline'; img-src data:${lesson ? "; form-action 'none'; base-uri 'none'" : ''}">
<title>${escaped(title)}</title>
<style>
${STYLE}${style}
</style>
${lesson ? SCRIPTS : ''}</head>
<body>
<header>
${way('Way at the top', before, after)}</header>
<main${lesson ? ` data-lesson="${lesson}"` : ''}>
${main}</main>
<footer>
${way('Way at the foot', before, after)}</footer>
${glyphs}</body>
</html>
`;
}

function way(name, before, after) {
  const links = [
    before && `<a rel="prev" href="${before.file}">← ${escaped(before.title)}</a>`,
    '<a href="index.html">All lessons</a>',
    after && `<a rel="next" href="${after.file}">${escaped(after.title)} →</a>`,
  ];
  return `<nav class="way" aria-label="${name}">\n${links.filter(Boolean).join('\n')}\n</nav>\n`;
}
