// The cells of a notebook as parts of a page.
import { readFileSync } from 'node:fs';
import { highlighted } from './code.mjs';
import { picture, said } from './live/outputs.mjs';

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
    highlighted(body, 'java')
  }</code></pre>\n</details>\n`;
}

/**
 * What a cell showed. `name` is the cell's, so that the parts of two drawings have names of their own. Where the script
 * of a page may find the outputs, `live` gives each its place.
 */
export function shown(cell, name, markdown, live) {
  return (cell.outputs ?? [])
    .map((output, n) => html(cell, output, `${name}-${n}`, markdown).replace(/^<\w+/, (tag) =>
      live ? `${tag} data-out="${cell.id}-${n}"` : tag,
    ))
    .join('');
}

function html(cell, output, name, markdown) {
  if (output.output_type === 'error') {
    throw new Error(`cell ${cell.id} failed: ${output.evalue}`);
  }
  if (output.output_type === 'stream') {
    return said(joined(output.text));
  }
  const { data } = output;
  if (data['image/svg+xml']) {
    return picture(joined(data['image/svg+xml']), name);
  }
  if (data['text/markdown']) {
    return `<div class="shown">${markdown.html(joined(data['text/markdown']), { titles: true })}</div>\n`;
  }
  if (data['text/html']) {
    return `<div class="shown">${joined(data['text/html'])}</div>\n`;
  }
  return said(joined(data['text/plain']));
}

/** The parts of a notebook of exercises or solutions: what stands before the first one, then the cells of each. */
export function exercises({ cells }) {
  const parts = new Map([['', []]]);
  let now = '';
  for (const cell of cells) {
    const id = cell.cell_type === 'markdown' ? /^\*\*(\d+[a-z])\.\*\*/.exec(cell.source)?.[1] : undefined;
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
