// A Markdown file as the parts of a page: HTML, headings with the names that GitHub gives them, places and links.
import { highlighted } from '../../notebooks/book/code.mjs';
import { Formulas } from '../../notebooks/book/formulas.mjs';
import { Markdown } from '../../notebooks/book/markdown.mjs';
import { escaped, plain } from '../../notebooks/book/live/text.mjs';

/** A place in the text that a link may lead to. HTML itself is not read, so it goes round the reader. */
const PLACE = /<a id="([a-z0-9-]+)"><\/a>/g;
const MARKED_PLACE = /\uE002([a-z0-9-]+)\uE003/g;

/**
 * Reads a document.
 *
 * @param text its Markdown
 * @param link turns the target of a link or of a picture into that on the site
 * @return {title, html, glyphs, headings}; a heading is {level, id, text, body}, its body the HTML up to the next one
 */
export function read(text, link) {
  const formulas = new Formulas();
  const name = namer();
  const markdown = new Markdown(formulas, link, name);
  const html = markdown
    .html(text.replace(/<!--[\s\S]*?-->\n*/g, '').replace(PLACE, '\uE002$1\uE003'))
    .replace(MARKED_PLACE, '<span id="$1"></span>')
    .replace(/<pre><code(?: class="language-(\w+)")?>([\s\S]*?)<\/code><\/pre>/g, (all, language, code) =>
      block(language, code),
    )
    .replace(/<p>(<img [^>]*>)<\/p>/g, '<figure class="picture">$1</figure>');
  const headings = sections(html);
  const [first] = headings;
  if (first?.level !== 1 || headings.filter(({ level }) => level === 1).length > 1) {
    throw new Error(`a document begins with its one title, this one with ${text.slice(0, 60)}`);
  }
  return { title: first.text, html, glyphs: formulas.glyphs(), headings };
}

/** The names of the headings of one page, as GitHub makes them; one that comes again has its number behind it. */
export function namer() {
  const seen = new Map();
  return (heading) => {
    const id = heading
      .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
      .replace(/[`*]/g, '')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\p{M} _-]/gu, '')
      .replaceAll(' ', '-');
    const before = seen.get(id) ?? 0;
    seen.set(id, before + 1);
    return before === 0 ? id : `${id}-${before}`;
  };
}

function block(language, code) {
  const body = highlighted(unescaped(code), language) ?? code;
  return `<div class="code"><pre tabindex="0"><code>${body.trimEnd()}</code></pre></div>`;
}

function unescaped(html) {
  return html
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

function sections(html) {
  const marks = [...html.matchAll(/<h([1-6]) id="([^"]*)">([\s\S]*?)<\/h\1>/g)];
  return marks.map((mark, at) => ({
    level: Number(mark[1]),
    id: mark[2],
    text: unescaped(plain(mark[3])),
    body: html.slice(mark.index + mark[0].length, marks[at + 1]?.index ?? html.length),
  }));
}

export { escaped, plain, unescaped };
