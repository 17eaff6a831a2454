// Elements made by hand. What comes from files is only ever text here.

const SVG = 'http://www.w3.org/2000/svg';

/** An element with attributes, listeners (onclick: …) and children; texts stay texts. */
export function el(name, attributes = {}, ...children) {
  return filled(document.createElement(name), attributes, children);
}

/** The same in a drawing. */
export function svg(name, attributes = {}, ...children) {
  return filled(document.createElementNS(SVG, name), attributes, children);
}

function filled(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith('on')) {
      element.addEventListener(name.slice(2), value);
    } else if (value === true) {
      element.setAttribute(name, '');
    } else if (value !== false && value !== undefined && value !== null) {
      element.setAttribute(name, value);
    }
  }
  element.append(
    ...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false),
  );
  return element;
}

const KEPT = new Set([
  'a',
  'article',
  'br',
  'caption',
  'dd',
  'div',
  'dl',
  'dt',
  'em',
  'figcaption',
  'figure',
  'footer',
  'h1',
  'h2',
  'h3',
  'header',
  'li',
  'main',
  'ol',
  'p',
  'pre',
  'section',
  'span',
  'strong',
  'sub',
  'sup',
  'table',
  'tbody',
  'td',
  'tfoot',
  'th',
  'thead',
  'tr',
  'ul',
  'details',
  'summary',
  'svg',
  'g',
  'line',
  'path',
  'polyline',
  'polygon',
  'rect',
  'circle',
  'ellipse',
  'text',
  'tspan',
  'title',
  'desc',
]);

/** Elements of the library's own pages as elements of this one: known kinds alone, and nothing that runs or loads. */
export function adopted(node) {
  const copy = document.importNode(node, true);
  const all = copy.nodeType === Node.ELEMENT_NODE ? [copy, ...copy.querySelectorAll('*')] : [];
  for (const element of all) {
    if (!KEPT.has(element.localName)) {
      element.remove();
      continue;
    }
    for (const { name, value } of [...element.attributes]) {
      if (
        name.startsWith('on') ||
        name === 'style' ||
        name === 'id' ||
        (/href|src/.test(name) && !value.startsWith('#'))
      ) {
        element.removeAttribute(name);
      }
    }
  }
  // One picture with one label: those who listen need not hear every figure on it.
  const pictures = all.filter((element) => element.localName === 'svg' && element.getAttribute('role') === 'img');
  for (const child of pictures.flatMap((element) => [...element.children])) {
    child.setAttribute('aria-hidden', 'true');
  }
  return copy;
}
