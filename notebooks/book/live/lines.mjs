// The Markdown that the library and the lessons write, as HTML: headings, tables, formulas, bold and slanted text.
import { escaped, signed, tables } from './text.mjs';

const INLINE = /(?<![\\$\w])\$(?!\s)((?:[^$\\\n]|\\[^\n])+?)(?<!\s)\$(?!\d)/g;

/** @param formula what makes HTML of a formula and of whether it stands on its own */
export function lines(source, formula) {
  const formulas = [];
  const put = (html) => `\uE000${formulas.push(html) - 1}\uE001`;
  const blocks = source.split(/\n{2,}/).filter((block) => block.trim() !== '');
  const html = blocks
    .map((block) => {
      const text = block.trim();
      const display = /^\$\$([\s\S]+)\$\$$/.exec(text);
      if (display) {
        return `${put(formula(display[1].trim(), true))}\n`;
      }
      const inline = text.replace(INLINE, (all, latex) => put(formula(latex.trim(), false)));
      const heading = /^#{1,6} (.*)$/.exec(inline);
      if (heading) {
        return `<p class="title">${marked(heading[1])}</p>\n`;
      }
      return inline.startsWith('| ') ? table(inline) : `<p>${marked(inline)}</p>\n`;
    })
    .join('');
  return signed(tables(html)).replace(/\uE000(\d+)\uE001/g, (all, n) => formulas[n]);
}

/** Signs behind a backslash are put aside, so that they are no marks. */
const ASIDE = 0xe100;

function marked(text) {
  return escaped(text.replace(/\\([!-/:-@[-`{-~])/g, (all, sign) => String.fromCharCode(ASIDE + sign.charCodeAt(0))))
    .replace(/\*\*(\S(?:.*?\S)?)\*\*/g, '<strong>$1</strong>')
    .replace(/\*(\S(?:.*?\S)?)\*/g, '<em>$1</em>')
    .replace(/[\ue121-\ue17e]/g, (sign) => escaped(String.fromCharCode(sign.charCodeAt(0) - ASIDE)));
}

function table(text) {
  const [head, , ...rows] = text.split('\n').map((line) =>
    line
      .replace(/^\| | \|$/g, '')
      .split(/ \| /)
      .map((cell) => marked(cell.trim())),
  );
  const row = (cells, tag) => `<tr>\n${cells.map((cell) => `<${tag}>${cell}</${tag}>\n`).join('')}</tr>\n`;
  return `<table>\n<thead>\n${row(head, 'th')}</thead>\n<tbody>\n${rows
    .map((cells) => row(cells, 'td'))
    .join('')}</tbody>\n</table>\n`;
}
