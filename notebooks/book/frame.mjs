// What is the same on all pages: the head, the way from page to page, the style. A page is one file that loads nothing.
import { readFileSync } from 'node:fs';
import { escaped } from './markdown.mjs';

const STYLE = readFileSync(new URL('style.css', import.meta.url), 'utf8')
  .split('\n')
  .map((line) => line.trim())
  .filter(Boolean)
  .join('\n');

/**
 * A page.
 *
 * @param title its title
 * @param main the HTML of its content, with one h1
 * @param glyphs the glyphs of its formulas
 * @param before the page before it: {file, title}, or undefined
 * @param after the page after it
 * @param style what the page adds to the style
 */
export function page({ title, main, glyphs = '', before, after, style = '' }) {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escaped(title)}</title>
<style>
${STYLE}${style}
</style>
</head>
<body>
<header>
${way('Way at the top', before, after)}</header>
<main>
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
