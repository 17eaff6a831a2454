// Text and tables as HTML, the same in the pages and in their script.

/** Tables of this many columns may be wider than a telephone: they scroll by themselves. */
const WIDE = 3;

export function escaped(text) {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** Subscripts and powers of ten that a printed line can only write as D_t, p2 or 2e-5. */
const SIGNS = [
  [/\b([DLWd])_([a-z])\b/g, '$1<sub>$2</sub>'],
  [/\b([pEL])([0-5])\b/g, '$1<sub>$2</sub>'],
  [/\bCd\b/g, 'C<sub>d</sub>'],
  [/(Tern )?\bT([01])\b/g, (all, name, sign) => (name ? all : `T<sub>${sign}</sub>`)],
  [/\b(\d+(?:\.\d+)?)e(-?)(\d+)\b/g, (all, digits, sign, power) => `${digits} × 10<sup>${sign && '−'}${power}</sup>`],
];

/** Sets the subscripts and powers of a text that is escaped already. */
export function signs(text) {
  return SIGNS.reduce((now, [pattern, sign]) => now.replace(pattern, sign), text);
}

/** The same for the text of HTML, but for code. */
export function signed(html) {
  return html
    .split(/(<code>[\s\S]*?<\/code>|<[^>]*>)/)
    .map((part, n) => (n % 2 === 0 ? signs(part) : part))
    .join('');
}

export function plain(html) {
  return html.replace(/<[^>]*>/g, '').trim();
}

/** Gives tables a box to scroll in, and the rows of a table without headings a heading each. */
export function tables(html) {
  return html.replace(/<table>[\s\S]*?<\/table>/g, (table) => {
    const head = /<thead>([\s\S]*?)<\/thead>/.exec(table)[1];
    const columns = head.split('<th').length - 1;
    const headed = plain(head) !== '';
    let told = table
      .replace(/<th(?=[ >])/g, '<th scope="col"')
      .replace(/<th scope="col"([^>]*)><\/th>/g, '<td$1></td>');
    if (!headed) {
      told = told
        .replace(/<thead>[\s\S]*?<\/thead>\n?/, '')
        .replace(/<tr>\n<td([^>]*)>([\s\S]*?)<\/td>/g, '<tr>\n<th scope="row"$1>$2</th>');
    }
    const longest = told
      .split(/<\/t[dh]>/)
      .map((cell) => plain(cell).length)
      .reduce((a, b) => Math.max(a, b), 0);
    const kind = headed ? (columns > 4 && longest > 40 ? ' class="dense"' : '') : ' class="plain"';
    told = told.replace('<table>', `<table${kind}>`);
    return columns < WIDE ? told : `<div class="scroll" tabindex="0" role="group" aria-label="table">${told}</div>`;
  });
}
