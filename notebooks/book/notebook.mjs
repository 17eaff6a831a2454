// The cells of a notebook as parts of a page.
import { readFileSync } from 'node:fs';
import hljs from 'highlight.js/lib/core';
import java from 'highlight.js/lib/languages/java';
import { escaped, signs } from './markdown.mjs';

hljs.registerLanguage('java', java);

export function read(file) {
  const { metadata, cells } = JSON.parse(readFileSync(file, 'utf8'));
  return { title: metadata.title, cells: cells.map((cell) => ({ ...cell, source: joined(cell.source) })) };
}

export function joined(lines) {
  return Array.isArray(lines) ? lines.join('') : (lines ?? '');
}

/** The code of a cell, folded. */
export function code(source) {
  const body = source.replace(/^%.*\n/gm, '');
  return `<details class="code"><summary>Show the code</summary>\n<pre tabindex="0"><code>${
    hljs.highlight(body, { language: 'java' }).value
  }</code></pre>\n</details>\n`;
}

/** What a cell showed. `name` is the cell's, so that the parts of two drawings have names of their own. */
export function shown(cell, name, markdown) {
  return (cell.outputs ?? [])
    .map((output, n) => {
      if (output.output_type === 'error') {
        throw new Error(`cell ${cell.id} failed: ${output.evalue}`);
      }
      if (output.output_type === 'stream') {
        return said(joined(output.text));
      }
      const { data } = output;
      if (data['image/svg+xml']) {
        return figure(joined(data['image/svg+xml']), `${name}-${n}`);
      }
      if (data['text/markdown']) {
        return `<div class="shown">${markdown.html(joined(data['text/markdown']), { titles: true })}</div>\n`;
      }
      if (data['text/html']) {
        return `<div class="shown">${joined(data['text/html'])}</div>\n`;
      }
      return said(joined(data['text/plain']));
    })
    .join('');
}

/** Printed text of more lines than this may go on over the side of a page. */
const SHORT = 25;

function said(text) {
  const kind = text.split('\n').length > SHORT ? 'said' : 'said short';
  return `<pre class="${kind}">${signs(escaped(text.replace(/\n+$/, '')))}</pre>\n`;
}

/** A drawing, with a text that says what it shows; a chart has a narrow form for telephones inside. */
export function figure(svg, name) {
  const narrow = /<metadata>\s*(<svg[\s\S]*?<\/svg>)\s*<\/metadata>/.exec(svg)?.[1];
  if (!narrow) {
    return `<figure class="drawing"><div class="scroll" tabindex="0" role="group" aria-label="drawing">${drawing(
      svg,
      name,
    )}</div></figure>\n`;
  }
  return `<figure class="chart">${drawing(svg.replace(/<metadata>[\s\S]*?<\/metadata>\s*/, ''), name).replace(
    '<svg',
    '<svg class="wide"',
  )}${drawing(narrow, `${name}n`).replace('<svg', '<svg class="narrow"')}</figure>\n`;
}

function drawing(svg, name) {
  const open = /<svg[^>]*>/.exec(svg)[0];
  const title = /<title>([\s\S]*?)<\/title>/.exec(svg)?.[1];
  const label = /aria-label="([^"]*)"/.exec(open)?.[1] ?? title;
  if (!label) {
    throw new Error(`the drawing ${name} does not say what it shows`);
  }
  let labelled = open.replace(/ aria-label="[^"]*"/, '').replace(/ role="[^"]*"/, '');
  labelled = labelled.replace(/>$/, ` role="img" aria-label="${label.replaceAll('"', '&quot;')}">`);
  return svg
    .replace(open, labelled)
    .replace(/<\?xml[^>]*\?>\s*/, '')
    .replace(/<title>[\s\S]*?<\/title>\s*/, '')
    .replace(/\bid="([^"]+)"/g, `id="${name}-$1"`)
    .replace(/url\(#([^)]+)\)/g, `url(#${name}-$1)`)
    .replace(/href="#([^"]+)"/g, `href="#${name}-$1"`);
}

/** The parts of a notebook of exercises or solutions: what stands before the first one, then the cells of each. */
export function exercises({ cells }) {
  const parts = new Map([['', []]]);
  let now = '';
  for (const cell of cells) {
    const id = cell.cell_type === 'markdown' ? /^\*\*(\d[a-z])\.\*\*/.exec(cell.source)?.[1] : undefined;
    if (id) {
      now = id;
      parts.set(id, []);
    }
    parts.get(now).push(cell);
  }
  return parts;
}

/** The key of all exercises. */
export function key(file) {
  const key = new Map();
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    if (cells.length === 7 && !line.startsWith('#')) {
      const [id, answer, unit, tolerance, why, hint, way] = cells;
      key.set(id, {
        id,
        answers: answer.split(';').map((word) => word.trim()),
        unit,
        tolerance,
        why,
        hints: hint.split(' // ').map((one) => one.trim()),
        way,
      });
    }
  }
  return key;
}
