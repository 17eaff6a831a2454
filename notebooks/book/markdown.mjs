// Markdown with formulas to HTML, as the pages show it.
import MarkdownIt from 'markdown-it';
import { signed, tables } from './live/text.mjs';

const CODE = /(```[\s\S]*?```|`[^`\n]*`)/;
const DISPLAYED = /\$\$([\s\S]+?)\$\$/;
/** In a line: no space inside the dollars, no digit behind them, no empty line between them. */
const INLINE = /(?<![\\$\w])\$(?!\s)((?:[^$\\\n]|\\[^\n]|\n(?!\s*\n))+?)(?<!\s)\$(?!\d)/;
const CODE_OR_FORMULA = new RegExp([CODE, DISPLAYED, INLINE].map((one) => one.source).join('|'), 'g');

export class Markdown {
  #parser = new MarkdownIt({ html: false });
  #formulas;
  #name;

  /**
   * @param formulas the formulas of the page
   * @param link turns the target of a link, or of a picture, into the target on the page
   * @param name gives a heading the name by which links find it
   */
  constructor(formulas, link, name = named) {
    this.#formulas = formulas;
    this.#name = name;
    this.#parser.renderer.rules.link_open = (tokens, at, options, env, self) => {
      tokens[at].attrSet('href', link(tokens[at].attrGet('href')));
      return self.renderToken(tokens, at, options);
    };
    const { image } = this.#parser.renderer.rules;
    this.#parser.renderer.rules.image = (tokens, at, options, env, self) => {
      tokens[at].attrSet('src', link(tokens[at].attrGet('src')));
      return image(tokens, at, options, env, self);
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
          if (token.type === 'heading_open') {
            token.attrSet('class', 'title');
          }
        } else {
          token.tag = `h${Math.min(6, Number(token.tag[1]) + level)}`;
          if (token.type === 'heading_open') {
            token.attrSet('id', prefix + this.#name(tokens[at + 1].content));
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
