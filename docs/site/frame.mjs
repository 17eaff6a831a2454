// What is the same on all pages of the site: the head, the way from chapter to chapter, and what the chapter holds.
import { readFileSync } from 'node:fs';
import { escaped } from './source.mjs';

/** The style of the site: that of the book of lessons, and what a site needs beside it. It stands in each page. */
const STYLE = ['../../notebooks/book/style.css', 'style.css']
  .flatMap((file) => readFileSync(new URL(file, import.meta.url), 'utf8').split('\n'))
  .map((line) => line.trim())
  .filter(Boolean)
  .join('\n');

/**
 * A page.
 *
 * @param up how the page leads to the root of the site: '' or '../'
 * @param title its title
 * @param place where it stands in the book, such as 'Part 1 · Begin here', or undefined
 * @param main the HTML of its content, with one h1
 * @param headings its headings, of which those of the second level are listed beside it
 * @param glyphs the glyphs of its formulas
 * @param before the page before it, {page, title}, or undefined
 * @param after the page after it
 * @param wide whether it holds tables wider than a text
 */
export function page({ up = '', title, place, main, headings = [], glyphs = '', before, after, wide = false }) {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'unsafe-inline'; \
img-src 'self' data:; form-action 'none'; base-uri 'none'">
<title>${escaped(title)} · airfit</title>
<style>
${STYLE}
</style>
<script defer src="${up}site.js"></script>
</head>
<body class="site${wide ? ' wide' : ''}" data-up="${up}">
<a class="skip" href="#text">To the text</a>
<header>
<p class="name"><a href="${up}index.html">airfit</a></p>
${way('Way at the top', up, before, after)}</header>
<div class="spread">
${beside(headings)}<main id="text">
${place ? `<p class="place">${escaped(place)}</p>\n` : ''}${main}</main>
</div>
<footer>
${way('Way at the foot', up, before, after)}<p class="quiet">A calculation is not an approval: local codes, the makers’ \
ratings and the judgement of a licensed person come first. <a href="${up}safety.html">Safety</a></p>
</footer>
${glyphs}</body>
</html>
`;
}

function way(name, up, before, after) {
  const links = [
    before && `<a rel="prev" href="${up}${before.page}">← ${escaped(before.title)}</a>`,
    `<a href="${up}index.html">All chapters</a>`,
    after && `<a rel="next" href="${up}${after.page}">${escaped(after.title)} →</a>`,
  ];
  return `<nav class="way" aria-label="${name}">\n${links.filter(Boolean).join('\n')}\n</nav>\n`;
}

/** What the chapter holds, where that is more than one thing. */
function beside(headings) {
  const items = headings.filter(({ level }) => level === 2);
  if (items.length < 2) {
    return '';
  }
  const links = items.map(({ id, text }) => `<li><a href="#${id}">${escaped(text)}</a></li>\n`);
  return `<nav class="beside" aria-label="In this chapter">
<details><summary>In this chapter</summary>
<ol>
${links.join('')}</ol>
</details>
</nav>
`;
}
