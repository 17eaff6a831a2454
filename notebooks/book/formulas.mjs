// Typesets LaTeX to SVG that needs no font and no script. The glyphs of a page stand once, at its end.
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const { mathjax } = require('mathjax-full/js/mathjax.js');
const { TeX } = require('mathjax-full/js/input/tex.js');
const { SVG } = require('mathjax-full/js/output/svg.js');
const { liteAdaptor } = require('mathjax-full/js/adaptors/liteAdaptor.js');
const { RegisterHTMLHandler } = require('mathjax-full/js/handlers/html.js');
const { AssistiveMmlHandler } = require('mathjax-full/js/a11y/assistive-mml.js');
require('mathjax-full/js/input/tex/base/BaseConfiguration.js');
require('mathjax-full/js/input/tex/ams/AmsConfiguration.js');

const adaptor = liteAdaptor();
AssistiveMmlHandler(RegisterHTMLHandler(adaptor));

/** Wider formulas than this [ex] may not fit on a telephone; they get the keyboard's focus, so that they scroll. */
const NARROW = 34;
/** The same for a formula in a line, which has less room where a list is set in. */
const NARROW_IN_LINE = 24;

/** A formula on its own that is wider than this [ex] does not fit on a printed side: it is broken. */
const SIDE = 86;
/** A left side of at most this width [ex] stands beside its right side, not above it. */
const SHORT_LEFT = 12;

const SIGN = /^(?:=|\+|-|\\cdot(?![a-zA-Z]))/;

/**
 * The parts of a formula between the signs that stand in no bracket, each but the first with its sign in front. A minus
 * behind another sign belongs to a number.
 */
function parts(latex, signs) {
  const found = [''];
  let depth = 0;
  for (let at = 0; at < latex.length; ) {
    const rest = latex.slice(at);
    const token = /^(?:\\left\b|\\right\b|\\[a-zA-Z]+|\\.|[\s\S])/.exec(rest)[0];
    const sign = depth === 0 && SIGN.exec(rest)?.[0];
    if (sign && signs.includes(sign) && /[^\s=+-]\s*$/.test(found.at(-1))) {
      found.push(sign);
      at += sign.length;
      continue;
    }
    depth += token === '{' || token === '\\left' ? 1 : token === '}' || token === '\\right' ? -1 : 0;
    found[found.length - 1] += token;
    at += token.length;
  }
  return found;
}

function width(html) {
  return Number(/ width="([\d.]+)ex"/.exec(html)?.[1]);
}

/** The formulas of one page. */
export class Formulas {
  #tex = new TeX({
    packages: ['base', 'ams'],
    formatError: (jax, error) => {
      throw new Error(`${error.message} in the formula ${this.#now}`);
    },
  });
  #svg = new SVG({ fontCache: 'global' });
  #document = mathjax.document('', { InputJax: this.#tex, OutputJax: this.#svg });
  #now = '';
  #used = false;
  #written = false;

  /** The HTML of a formula. */
  typeset(latex, display) {
    if (this.#written) {
      throw new Error(`The glyphs of the page are written already; they lack those of ${latex}`);
    }
    this.#now = latex;
    this.#used = true;
    const html = this.#html(display ? this.#broken(latex) : latex, display);
    const wide = width(html) > (display ? NARROW : NARROW_IN_LINE);
    const scrolls = wide ? ' tabindex="0" role="group" aria-label="formula"' : '';
    if (!display) {
      return wide ? `<span class="long"${scrolls}>${html}</span>` : html;
    }
    return `<div class="formula"${scrolls}>${html}</div>`;
  }

  #html(latex, display) {
    return adaptor
      .outerHTML(this.#document.convert(latex, { display }))
      .replaceAll(' role="img" focusable="false"', '')
      .replace(' style="position: relative;"', '');
  }

  #fits(latex) {
    return width(this.#html(latex, true)) <= SIDE;
  }

  /** The same formula on several lines, where one is too wide: in front of "check:", of =, of + and −, of a factor. */
  #broken(latex) {
    if (/\\begin/.test(latex) || this.#fits(latex)) {
      return latex;
    }
    const lines = [];
    latex.split(/\\quad(?=\\text\{check: \})/).forEach((line, n) => {
      const [left, ...right] = this.#fits(line) ? [line] : parts(line, ['=']);
      const short = width(this.#html(left, true)) < SHORT_LEFT;
      const told = right.flatMap((one) => this.#lines(one).map((piece, m) => (m > 0 ? '\\quad ' : '') + piece));
      const before = n === 0 ? '' : '\\\\[6pt] ';
      lines.push(
        short
          ? `${before}${left} & ${told.join(' \\\\[4pt] & ')}`
          : [`${before}& ${left}`, ...told.map((piece) => `\\\\[4pt] & \\qquad ${piece}`)].join(' '),
      );
    });
    return `\\begin{aligned} ${lines.join(' ')} \\end{aligned}`;
  }

  /** As much on each line as fits. */
  #lines(latex) {
    if (this.#fits(latex)) {
      return [latex];
    }
    const lines = [''];
    for (const part of parts(latex, ['+', '-', '\\cdot'])) {
      if (lines.at(-1) !== '' && !this.#fits(lines.at(-1) + part)) {
        lines.push('');
      }
      lines[lines.length - 1] += part;
    }
    return lines;
  }

  /** The glyphs that the formulas of the page refer to: all of them, so no formula may follow. */
  glyphs() {
    this.#written = true;
    if (!this.#used) {
      return '';
    }
    const cache = adaptor.outerHTML(this.#svg.fontCache.getCache());
    return `<svg aria-hidden="true" class="glyphs" width="0" height="0">${cache}</svg>\n`;
  }
}
