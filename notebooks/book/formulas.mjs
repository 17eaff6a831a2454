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

  /** The HTML of a formula. */
  typeset(latex, display) {
    this.#now = latex;
    this.#used = true;
    const html = adaptor
      .outerHTML(this.#document.convert(latex, { display }))
      .replaceAll(' role="img" focusable="false"', '')
      .replace(' style="position: relative;"', '');
    const wide = Number(/ width="([\d.]+)ex"/.exec(html)?.[1]) > (display ? NARROW : NARROW_IN_LINE);
    const scrolls = wide ? ' tabindex="0" role="group" aria-label="formula"' : '';
    if (!display) {
      return wide ? `<span class="long"${scrolls}>${html}</span>` : html;
    }
    return `<div class="formula"${scrolls}>${html}</div>`;
  }

  /** The glyphs that the formulas of the page refer to. */
  glyphs() {
    if (!this.#used) {
      return '';
    }
    const cache = adaptor.outerHTML(this.#svg.fontCache.getCache());
    return `<svg aria-hidden="true" class="glyphs" width="0" height="0">${cache}</svg>\n`;
  }
}
