// What runs inside the page. Each function is sent there alone, so it holds all that it needs.

/** Elements that stick out of the window, and texts that stick out of their box. */
export function overflow() {
  const named = (element) => {
    const id = element.id && !element.id.startsWith('print-') ? `#${element.id}` : '';
    const kind =
      typeof element.className === 'string' && element.className ? `.${element.className.split(' ')[0]}` : '';
    const text = (element.getAttribute('aria-label') ?? element.textContent).trim().replace(/\s+/g, ' ').slice(0, 50);
    return `${element.localName}${id}${kind} "${text}"`;
  };
  const print = matchMedia('print').matches;
  // What lies in a box that scrolls on the screen, or in one that only a screen reader meets, widens nothing.
  const held = (element) => {
    for (let up = element; up && up !== document.body; up = up.parentElement) {
      const style = getComputedStyle(up);
      if (style.clipPath !== 'none' || style.clip !== 'auto' || style.position === 'fixed') {
        return true;
      }
      if (!print && up !== element && ['auto', 'scroll'].includes(style.overflowX)) {
        return true;
      }
    }
    return false;
  };
  const width = document.documentElement.clientWidth;
  const found = [];
  if (document.documentElement.scrollWidth > width) {
    found.push({
      element: 'html',
      fault: `is ${document.documentElement.scrollWidth} px wide in a window of ${width} px`,
    });
  }
  const outside = [];
  for (const element of document.body.querySelectorAll(':not(svg *), svg text')) {
    if (!element.checkVisibility?.() || element.closest('[data-print-ends]')) {
      continue;
    }
    const box = element.getBoundingClientRect();
    const style = getComputedStyle(element);
    const out = box.width > 1 && (box.right > width + 1 || box.left < -1);
    if (out && !element.ownerSVGElement && !held(element)) {
      outside.push(element);
    }
    const cuts =
      ['hidden', 'clip'].includes(style.overflowX) || (print && ['auto', 'scroll'].includes(style.overflowX));
    if (
      cuts &&
      !(element instanceof SVGElement) &&
      style.clipPath === 'none' &&
      element.clientWidth > 2 &&
      element.scrollWidth > element.clientWidth + 1
    ) {
      found.push({
        element: named(element),
        fault: `cuts off ${element.scrollWidth - element.clientWidth} px of what is in it`,
      });
    }
    if (element.localName === 'text' && element.ownerSVGElement) {
      let root = element.ownerSVGElement;
      while (root.ownerSVGElement) {
        root = root.ownerSVGElement;
      }
      const around = root.getBoundingClientRect();
      if (
        box.width > 0 &&
        (box.left < around.left - 1 ||
          box.right > around.right + 1 ||
          box.top < around.top - 2 ||
          box.bottom > around.bottom + 2)
      ) {
        found.push({ element: named(element), fault: 'is cut off at the edge of its drawing' });
      }
    }
  }
  // The cause is innermost; what it widens around it is not told.
  for (const element of outside.filter((one) => !outside.some((other) => other !== one && one.contains(other)))) {
    const box = element.getBoundingClientRect();
    found.push({
      element: named(element),
      fault: `reaches from ${Math.round(box.left)} to ${Math.round(box.right)} px of ${width}`,
    });
  }
  return found;
}

/** What a formula or drawing refers to and the page does not have: it stays blank. */
export function blank() {
  const found = new Map();
  for (const use of document.querySelectorAll('svg use')) {
    const target = (use.getAttribute('href') ?? use.getAttribute('xlink:href') ?? '').slice(1);
    if (!document.getElementById(target)) {
      const formula = use.closest('mjx-container')?.textContent.trim().replace(/\s+/g, ' ').slice(0, 50) ?? '';
      found.set(target, `is not in the page, so that "${formula}" has a gap`);
    }
  }
  return [...found].map(([target, fault]) => ({ element: `use "#${target}"`, fault }));
}

/**
 * Marks one text of each look that is not among those seen, and gives the new looks. A look is all that decides whether
 * its colours can be told apart: its own colour, whether it is large, and what is painted behind it, up to the page. What
 * is laid over something else by its place is known by its kind. Of a drawing axe knows no more than the colour of its
 * texts; formulas for screen readers alone are not seen.
 */
export function newLooks(seen) {
  const known = new Set(seen);
  const found = [];
  document.querySelectorAll('[data-new-look]').forEach((element) => element.removeAttribute('data-new-look'));
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const unseen = 'mjx-assistive-mml, desc, title';
    if (!node.textContent.trim() || !element.checkVisibility() || element.closest(unseen)) {
      continue;
    }
    const own = getComputedStyle(element);
    const around = element.parentElement ? getComputedStyle(element.parentElement).color : '';
    const isBold = Number(own.fontWeight) >= 700;
    // large by WCAG: 18 pt, or 14 pt in bold, which is 24 and 18.67 px
    const isLarge = parseFloat(own.fontSize) >= (isBold ? 18.66 : 24);
    const link = element.closest('a') ? `link ${own.textDecorationLine} ${isBold}` : 'text';
    const parts = [link, isLarge, own.color, own.fill, around];
    for (let up = element; up; up = up.parentElement) {
      const style = getComputedStyle(up);
      if (style.backgroundColor !== 'rgba(0, 0, 0, 0)' || style.opacity !== '1') {
        parts.push(`on ${style.backgroundColor} ${style.opacity}`);
      }
      if (style.backgroundImage !== 'none' || !['static', 'relative'].includes(style.position)) {
        parts.push(`laid over by ${up.localName} ${up.id} ${up.getAttribute('class')}`);
      }
    }
    const look = parts.join('; ');
    if (!known.has(look)) {
      known.add(look);
      found.push(look);
      element.setAttribute('data-new-look', '');
    }
  }
  return found;
}

/** Words that are smaller on paper than they should be, indices too [pt]. */
export function fine(least) {
  const found = new Map();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    const unseen = 'mjx-assistive-mml, desc, title, [data-print-ends], [data-print-mark]';
    if (!node.textContent.trim() || !element.checkVisibility() || element.closest(unseen)) {
      continue;
    }
    const drawn = element.closest('text')?.getScreenCTM();
    const pt = 0.75 * parseFloat(getComputedStyle(element).fontSize) * (drawn ? Math.hypot(drawn.a, drawn.b) : 1);
    if (pt && pt < least - 0.05) {
      const around = element.parentElement.textContent.trim().replace(/\s+/g, ' ').slice(0, 50);
      found.set(`${element.localName} "${node.textContent.trim().slice(0, 20)}" in "${around}"`, pt);
    }
  }
  return [...found].map(([element, pt]) => ({ element, fault: `is ${pt.toFixed(1)} pt, less than ${least}` }));
}

/** Texts of drawings that are smaller than they should be; drawings inside img are read from their source. */
export function small(least) {
  const found = [];
  const tell = (text, px) =>
    found.push({
      element: `text "${text.trim().slice(0, 50)}"`,
      fault: `is ${px.toFixed(1)} px, less than ${least}`,
    });
  for (const text of document.querySelectorAll('svg text')) {
    const size =
      parseFloat(getComputedStyle(text).fontSize) *
      Math.hypot(text.getScreenCTM()?.a ?? 0, text.getScreenCTM()?.b ?? 0);
    if (text.checkVisibility() && text.textContent.trim() && size && size < least - 0.05) {
      tell(text.textContent, size);
    }
  }
  for (const img of document.querySelectorAll('img[src^="data:image/svg"]')) {
    if (!img.checkVisibility() || !img.naturalWidth) {
      continue;
    }
    const [, coding, data] = /^data:[^,]*?(;base64)?,(.*)$/s.exec(img.currentSrc || img.src);
    const source = coding
      ? new TextDecoder().decode(Uint8Array.from(atob(data), (c) => c.charCodeAt(0)))
      : decodeURIComponent(data);
    const holder = document.createElement('div');
    holder.style.cssText = 'position:absolute;visibility:hidden;left:-9999px;top:0';
    holder.innerHTML = source;
    document.body.append(holder);
    const svg = holder.querySelector('svg');
    const scale = img.getBoundingClientRect().width / svg.getBoundingClientRect().width;
    for (const text of svg.querySelectorAll('text')) {
      const size =
        scale *
        parseFloat(getComputedStyle(text).fontSize) *
        Math.hypot(text.getScreenCTM().a, text.getScreenCTM().b);
      if (text.textContent.trim() && size < least - 0.05) {
        tell(text.textContent, size);
      }
    }
    holder.remove();
  }
  return found;
}

/** The papers that the page's own style asks for, or none, and its margins [mm]. */
export function windowed() {
  const mm = (length) => {
    const [, value, unit] = /^([\d.]+)(\w*)$/.exec(length) ?? [null, '0', 'mm'];
    return Number(value) * ({ mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, px: 25.4 / 96 }[unit] ?? 1);
  };
  const margins = { left: 10, right: 10, top: 10, bottom: 10 };
  let papers = null;
  const read = (rules) => {
    for (const rule of rules) {
      if (rule instanceof CSSPageRule) {
        const { style } = rule;
        for (const side of Object.keys(margins)) {
          const length = style[`margin${side[0].toUpperCase()}${side.slice(1)}`];
          if (length && rule.selectorText === '') {
            margins[side] = mm(length);
          }
        }
        const size = style.size?.toLowerCase() ?? '';
        if (size && size !== 'auto') {
          const known = { a4: [210, 297], letter: [215.9, 279.4] };
          const name = Object.keys(known).find((one) => size.includes(one));
          const lengths = name ? known[name] : size.split(/\s+/).map(mm);
          const pair = lengths.length === 2 ? lengths : [lengths[0], lengths[0]];
          papers = { [name ?? size]: size.includes('landscape') ? [pair[1], pair[0]] : pair };
        }
      } else if (rule.cssRules && (!(rule instanceof CSSMediaRule) || matchMedia(rule.conditionText).matches)) {
        read(rule.cssRules);
      }
    }
  };
  [...document.styleSheets].forEach((sheet) => read(sheet.cssRules));
  return { papers, margins };
}

/** Whether the page is a sheet to hand over, of so few parts or so small a network that it is to be one side of paper. */
export function oneSide() {
  const parts = document.querySelectorAll('table.parts tbody tr').length;
  const network = document.title.startsWith('Network: ') ? document.querySelectorAll('tbody tr').length : 0;
  return (parts > 0 && parts <= 12) || (network > 0 && network <= 18);
}

/** Drawings and rows that are higher than a side of paper. */
export function ends(height) {
  return [...document.querySelectorAll('svg, img, tr')]
    .filter(
      (element) =>
        !element.ownerSVGElement && element.checkVisibility() && element.getBoundingClientRect().height > height + 1,
    )
    .map((element) => {
      const words = element.getAttribute('aria-label') ?? element.alt ?? element.textContent;
      const high = Math.round(element.getBoundingClientRect().height);
      return {
        element: `${element.localName} "${words.trim().slice(0, 50)}"`,
        fault: `is ${high} px high, more than a side of paper (${height} px)`,
      };
    });
}

/**
 * Marks where headings and code end and where what belongs to them begins, and both ends of rows, lines, cautions and
 * figures, so that the print tells their sides. Returns the pairs that must lie on one side.
 */
export function prepare() {
  const named = (element) => {
    const id = element.id && !element.id.startsWith('print-') ? `#${element.id}` : '';
    return `${element.localName}${id} "${element.textContent.trim().replace(/\s+/g, ' ').slice(0, 60)}"`;
  };
  const shown = (element) => element.checkVisibility() && element.getBoundingClientRect().height > 0;
  const LEAVES = 'p, li, pre, tr, svg, img, dt, dd, figcaption, td, th, h1, h2, h3, h4, h5, h6';
  const pairs = [];
  const links = document.createElement('div');
  links.dataset.printEnds = '';
  links.style.cssText = 'position:absolute;top:0;left:0;width:100%;height:1px;overflow:hidden;font-size:1px;line-height:1px';
  let count = 0;
  const linked = new Set();
  const name = (element) => {
    if (!element.id) {
      element.id = `print-${count++}`;
      element.dataset.printId = '';
    }
    if (!linked.has(element.id)) {
      linked.add(element.id);
      const link = document.createElement('a');
      link.href = `#${element.id}`;
      link.textContent = '.';
      links.append(link);
    }
    return element.id;
  };
  const mark = (element, last) => {
    const place = document.createElement('span');
    place.dataset.printMark = '';
    element[last ? 'append' : 'prepend'](place);
    return name(place);
  };
  const begins = (element) =>
    element.ownerSVGElement || ['svg', 'img', 'tr'].includes(element.localName)
      ? name(element.closest('figure') ?? element)
      : mark(element, false);
  // Leaves lie in the order of the document, so the first that follows is found by halving.
  const next = (element, leaves) => {
    let [before, after] = [-1, leaves.length];
    while (after - before > 1) {
      const middle = (before + after) >> 1;
      if (element.compareDocumentPosition(leaves[middle]) & Node.DOCUMENT_POSITION_FOLLOWING) {
        after = middle;
      } else {
        before = middle;
      }
    }
    return leaves.find(
      (leaf, at) =>
        at >= after &&
        !element.contains(leaf) &&
        leaf.textContent.trim() + leaf.localName.replace(/^(?!svg|img).*/, '') !== '',
    );
  };
  const leaves = [...document.querySelectorAll(LEAVES)].filter((leaf) => !leaf.ownerSVGElement && shown(leaf));
  for (const heading of document.querySelectorAll('h1, h2, h3, h4, h5, h6, p.title')) {
    const below = shown(heading) && next(heading, leaves);
    if (below) {
      pairs.push({
        kind: 'a heading alone at the foot of a side',
        element: named(heading),
        first: () => mark(heading, true),
        second: () => begins(below),
      });
    }
  }
  for (const code of document.querySelectorAll('details.code pre, .code > pre')) {
    const output = code.closest('details, .code').nextElementSibling;
    const below =
      shown(code) &&
      output?.matches('.said, .shown, figure') &&
      leaves.find((leaf) => output === leaf || output.contains(leaf));
    if (below) {
      pairs.push({
        kind: 'code parted from what it shows',
        element: named(code),
        first: () => mark(code, true),
        second: () => begins(below),
      });
    }
  }
  for (const figure of document.querySelectorAll('figcaption, caption')) {
    const drawing = figure.parentElement.querySelector('svg, img, tr');
    if (shown(figure) && drawing) {
      pairs.push({
        kind: 'a caption parted from its picture',
        element: named(figure),
        first: () => mark(figure, true),
        second: () => name(drawing),
      });
    }
  }
  // What is read in one piece lies on one side, unless it is so long that it leaves a side half empty.
  for (const whole of document.querySelectorAll('tr, figure, li, dd, .care p')) {
    const high = whole.getBoundingClientRect().height;
    if (shown(whole) && whole.textContent.trim() && high < 300) {
      const longest = [...whole.children].reduce(
        (most, cell) => (cell.textContent.length > most.textContent.length ? cell : most),
        whole.firstElementChild,
      );
      const last = whole.localName === 'tr' ? longest : whole;
      if (last) {
        pairs.push({
          kind: 'broken across two sides',
          element: named(whole),
          first: () => mark(last, false),
          second: () => mark(last, true),
        });
      }
    }
  }
  // Marks are set when all is measured: a mark between two measurements has the page laid out anew.
  const marked = pairs.map(({ first, second, ...told }) => ({ ...told, first: first(), second: second() }));
  document.body.append(links);
  return marked;
}

/** Takes the marks of {@link prepare} away. */
export function unlink() {
  document.querySelectorAll('[data-print-ends], [data-print-mark]').forEach((element) => element.remove());
  document.querySelectorAll('[data-print-id]').forEach((element) => {
    element.removeAttribute('id');
    delete element.dataset.printId;
  });
}
