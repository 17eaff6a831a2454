// What a cell shows, as HTML, the same in the pages and in their script.
import { escaped, signs } from './text.mjs';

/** Printed text of more lines than this may go on over the side of a page. */
const SHORT = 25;

export function said(text) {
  const kind = text.split('\n').length > SHORT ? 'said' : 'said short';
  return `<pre class="${kind}">${signs(escaped(text.replace(/\n+$/, '')))}</pre>\n`;
}

/** A drawing, with a text that says what it shows; a chart has a narrow form for telephones inside. */
export function picture(svg, name) {
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
