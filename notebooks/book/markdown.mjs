// Markdown with formulas to HTML, as the pages show it.
import MarkdownIt from 'markdown-it';

const CODE = /(```[\s\S]*?```|`[^`\n]*`)/;
const DISPLAYED = /\$\$([\s\S]+?)\$\$/;
/** In a line: no space inside the dollars, no digit behind them, no empty line between them. */
const INLINE = /(?<![\\$\w])\$(?!\s)((?:[^$\\\n]|\\[^\n]|\n(?!\s*\n))+?)(?<!\s)\$(?!\d)/;
const CODE_OR_FORMULA = new RegExp([CODE, DISPLAYED, INLINE].map((one) => one.source).join('|'), 'g');

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
  [/(?<!Tern )\bT([01])\b/g, 'T<sub>$1</sub>'],
  [/\b(\d+(?:\.\d+)?)e(-?)(\d+)\b/g, (all, digits, sign, power) => `${digits} × 10<sup>${sign && '−'}${power}</sup>`],
];

/** Sets the subscripts and powers of a text that is escaped already. */
export function signs(text) {
  return SIGNS.reduce((now, [pattern, sign]) => now.replace(pattern, sign), text);
}

/** The same for the text of HTML, but for code. */
function signed(html) {
  return html
    .split(/(<code>[\s\S]*?<\/code>|<[^>]*>)/)
    .map((part, n) => (n % 2 === 0 ? signs(part) : part))
    .join('');
}

export function plain(html) {
  return html.replace(/<[^>]*>/g, '').trim();
}

export class Markdown {
  #parser = new MarkdownIt({ html: false });
  #formulas;

  /**
   * @param formulas the formulas of the page
   * @param link turns the target of a link into the target on the page
   */
  constructor(formulas, link) {
    this.#formulas = formulas;
    this.#parser.renderer.rules.link_open = (tokens, at, options, env, self) => {
      tokens[at].attrSet('href', link(tokens[at].attrGet('href')));
      return self.renderToken(tokens, at, options);
    };
  }

  /**
   * @param source the Markdown
   * @param options level: what is added to the level of each heading; titles: headings become paragraphs;
   *     prefix: what the names of headings begin with
   */
  html(source, { level = 0, titles = false, prefix = '' } = {}) {
    const formulas = [];
    const text = source.replace(CODE_OR_FORMULA, (all, code, display, inline) => {
      if (code !== undefined) {
        return code;
      }
      formulas.push(this.#formulas.typeset((display ?? inline).trim(), display !== undefined));
      return `\uE000${formulas.length - 1}\uE001`;
    });
    const env = {};
    const tokens = this.#parser.parse(text, env);
    tokens.forEach((token, at) => {
      if (token.type === 'heading_open' || token.type === 'heading_close') {
        if (titles) {
          token.tag = 'p';
          token.attrSet('class', 'title');
        } else {
          token.tag = `h${Math.min(6, Number(token.tag[1]) + level)}`;
          if (token.type === 'heading_open') {
            token.attrSet('id', prefix + named(tokens[at + 1].content));
          }
        }
      }
    });
    return signed(tables(this.#parser.renderer.render(tokens, this.#parser.options, env)))
      .replace(/<p>\uE000(\d+)\uE001<\/p>/g, (all, n) => formulas[n])
      .replace(/\uE000(\d+)\uE001/g, (all, n) => formulas[n]);
  }
}

function named(heading) {
  return heading
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** Gives tables a box to scroll in, and the rows of a table without headings a heading each. */
function tables(html) {
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
