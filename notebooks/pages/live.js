'use strict';
(() => {
// Text and tables as HTML, the same in the pages and in their script.

/** Tables of this many columns may be wider than a telephone: they scroll by themselves. */
const WIDE = 3;

function escaped(text) {
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
function signs(text) {
  return SIGNS.reduce((now, [pattern, sign]) => now.replace(pattern, sign), text);
}

/** The same for the text of HTML, but for code. */
function signed(html) {
  return html
    .split(/(<code>[\s\S]*?<\/code>|<[^>]*>)/)
    .map((part, n) => (n % 2 === 0 ? signs(part) : part))
    .join('');
}

function plain(html) {
  return html.replace(/<[^>]*>/g, '').trim();
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

// What a cell shows, as HTML, the same in the pages and in their script.

/** Printed text of more lines than this may go on over the side of a page. */
const SHORT = 25;

function said(text) {
  const kind = text.split('\n').length > SHORT ? 'said' : 'said short';
  return `<pre class="${kind}">${signs(escaped(text.replace(/\n+$/, '')))}</pre>\n`;
}

/** A drawing, with a text that says what it shows; a chart has a narrow form for telephones inside. */
function picture(svg, name) {
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

// The formulas of a working as MathML: those few commands of LaTeX that the library writes.

const LETTERS = {
  alpha: 'α', beta: 'β', gamma: 'γ', delta: 'δ', epsilon: 'ϵ', varepsilon: 'ε', eta: 'η', theta: 'θ', kappa: 'κ',
  lambda: 'λ', mu: 'μ', nu: 'ν', xi: 'ξ', pi: 'π', rho: 'ρ', sigma: 'σ', tau: 'τ', phi: 'φ', varphi: 'φ', chi: 'χ',
  psi: 'ψ', omega: 'ω',
};
const UPRIGHT = { Delta: 'Δ', Sigma: 'Σ', Phi: 'Φ', Psi: 'Ψ', Omega: 'Ω', Gamma: 'Γ' };
const SIGNS_OF = { cdot: '·', times: '×', circ: '∘', le: '≤', ge: '≥', approx: '≈', pm: '±', infty: '∞' };
const NAMES = ['ln', 'log', 'exp', 'tan', 'sin', 'cos', 'max', 'min'];
const SPACES = { ',': 0.167, ':': 0.222, ';': 0.278, quad: 1, qquad: 2, '!': 0, ' ': 0.25 };

class Reader {
  #tokens;
  #at = 0;

  constructor(latex) {
    this.#tokens = latex.match(/\\[a-zA-Z]+|\\.|\d+(?:\.\d+)?|\s+|[\s\S]/gu) ?? [];
  }

  /** Everything up to a closing brace, a \right, or the end. */
  row(roman = false) {
    const parts = [];
    for (let token = this.#peek(); token !== undefined && token !== '}' && token !== '\\right'; token = this.#peek()) {
      if (token === '^' || token === '_') {
        this.#at++;
        const base = parts.pop() ?? '<mrow></mrow>';
        parts.push(this.#script(base, token, roman));
      } else if (/^\s+$/.test(token)) {
        this.#at++;
      } else {
        const sign = token === '-' && (parts.length === 0 || parts.at(-1).startsWith('<mo'));
        parts.push(sign ? this.#minus() : this.#atom(roman));
      }
    }
    return parts.length === 1 ? parts[0] : `<mrow>${parts.join('')}</mrow>`;
  }

  get done() {
    return this.#at >= this.#tokens.length;
  }

  #peek() {
    return this.#tokens[this.#at];
  }

  /** The minus of a number stands close to it. */
  #minus() {
    this.#at++;
    return '<mo form="prefix" lspace="0" rspace="0">−</mo>';
  }

  #script(base, sign, roman) {
    const first = this.#argument(roman);
    const other = this.#peek();
    if ((other === '^' || other === '_') && other !== sign) {
      this.#at++;
      const second = this.#argument(roman);
      const [low, high] = sign === '_' ? [first, second] : [second, first];
      return `<msubsup>${base}${low}${high}</msubsup>`;
    }
    const kind = sign === '_' ? 'msub' : 'msup';
    return `<${kind}>${base}${first}</${kind}>`;
  }

  /** What a command takes: a group or one atom. */
  #argument(roman) {
    while (/^\s+$/.test(this.#peek() ?? 'x')) {
      this.#at++;
    }
    return this.#atom(roman);
  }

  #group(roman) {
    this.#wanted('{');
    const row = this.row(roman);
    this.#wanted('}');
    return row;
  }

  #wanted(token) {
    if (this.#peek() !== token) {
      throw new Error(`a formula needs ${token}, has ${this.#peek() ?? 'its end'}`);
    }
    this.#at++;
  }

  /** The text between braces as it is written. */
  #verbatim() {
    this.#wanted('{');
    let text = '';
    while (this.#peek() !== '}' && !this.done) {
      text += this.#tokens[this.#at++];
    }
    this.#wanted('}');
    return text;
  }

  #atom(roman) {
    const token = this.#peek();
    if (token === '{') {
      return this.#group(roman);
    }
    this.#at++;
    if (token[0] === '\\') {
      return this.#command(token.slice(1), roman);
    }
    if (/^\d/.test(token)) {
      return `<mn>${token}</mn>`;
    }
    if (/^\p{L}$/u.test(token)) {
      return roman ? this.#word(token) : `<mi>${token}</mi>`;
    }
    if ('()[]|'.includes(token)) {
      return `<mo stretchy="false">${token}</mo>`;
    }
    if (token === '*') {
      return '<mo>∗</mo>';
    }
    if (token === '/') {
      return '<mo lspace="0" rspace="0">/</mo>';
    }
    if ("=+-,.<>%;:'−×·≈≤≥±²³°′".includes(token)) {
      return `<mo>${token === '-' ? '−' : escaped(token)}</mo>`;
    }
    throw new Error(`no sign of a formula: ${token}`);
  }

  /** Upright letters one after another are one word. */
  #word(first) {
    let word = first;
    while (/^\p{L}$/u.test(this.#peek() ?? '')) {
      word += this.#tokens[this.#at++];
    }
    return `<mi mathvariant="normal">${word}</mi>`;
  }

  #command(name, roman) {
    if (name === 'frac') {
      return `<mfrac>${this.#group(roman)}${this.#group(roman)}</mfrac>`;
    }
    if (name === 'sqrt') {
      return `<msqrt>${this.#group(roman)}</msqrt>`;
    }
    if (name === 'mathrm') {
      return this.#group(true);
    }
    if (name === 'text') {
      return `<mtext>${escaped(this.#verbatim()).replace(/^ | $/g, '\u00a0')}</mtext>`;
    }
    if (name === 'dot') {
      return `<mover accent="true">${this.#argument(roman)}<mo>˙</mo></mover>`;
    }
    if (name === 'left') {
      const open = this.#tokens[this.#at++];
      const row = this.row(roman);
      this.#wanted('\\right');
      const close = this.#tokens[this.#at++];
      return `<mrow><mo stretchy="true">${open}</mo>${row}<mo stretchy="true">${close}</mo></mrow>`;
    }
    if (name in LETTERS) {
      return `<mi${roman ? ' mathvariant="normal"' : ''}>${LETTERS[name]}</mi>`;
    }
    if (name in UPRIGHT) {
      return `<mi mathvariant="normal">${UPRIGHT[name]}</mi>`;
    }
    if (name in SIGNS_OF) {
      return `<mo>${SIGNS_OF[name]}</mo>`;
    }
    if (NAMES.includes(name)) {
      return `<mi>${name}</mi>`;
    }
    if (name in SPACES) {
      return `<mspace width="${SPACES[name]}em"></mspace>`;
    }
    if (name === '%') {
      return '<mo>%</mo>';
    }
    throw new Error(`no command of a formula: \\${name}`);
  }
}

function math(latex, display) {
  const reader = new Reader(latex);
  const row = reader.row();
  if (!reader.done) {
    throw new Error(`a formula has a bracket too many: ${latex}`);
  }
  return `<math${display ? ' display="block"' : ''}>${row}</math>`;
}

/** A formula as MathML; what proves it stands on a line of its own. */
function formula(latex, display) {
  if (!display) {
    return math(latex, false);
  }
  const lines = latex.split(/\\quad(?=\s*\\text\{check: \})/).map((line) => math(line, true));
  return `<div class="formula" tabindex="0" role="group" aria-label="formula">${lines.join('')}</div>`;
}

// The Markdown that the library and the lessons write, as HTML: headings, tables, formulas, bold and slanted text.

const INLINE = /(?<![\\$\w])\$(?!\s)((?:[^$\\\n]|\\[^\n])+?)(?<!\s)\$(?!\d)/g;

/** @param formula what makes HTML of a formula and of whether it stands on its own */
function lines(source, formula) {
  const formulas = [];
  const put = (html) => `\uE000${formulas.push(html) - 1}\uE001`;
  const blocks = source.split(/\n{2,}/).filter((block) => block.trim() !== '');
  const html = blocks
    .map((block) => {
      const text = block.trim();
      const display = /^\$\$([\s\S]+)\$\$$/.exec(text);
      if (display) {
        return `${put(formula(display[1].trim(), true))}\n`;
      }
      const inline = text.replace(INLINE, (all, latex) => put(formula(latex.trim(), false)));
      const heading = /^#{1,6} (.*)$/.exec(inline);
      if (heading) {
        return `<p class="title">${marked(heading[1])}</p>\n`;
      }
      return inline.startsWith('| ') ? table(inline) : `<p>${marked(inline)}</p>\n`;
    })
    .join('');
  return signed(tables(html)).replace(/\uE000(\d+)\uE001/g, (all, n) => formulas[n]);
}

/** Signs behind a backslash are put aside, so that they are no marks. */
const ASIDE = 0xe100;

function marked(text) {
  return escaped(text.replace(/\\([!-/:-@[-`{-~])/g, (all, sign) => String.fromCharCode(ASIDE + sign.charCodeAt(0))))
    .replace(/\*\*(\S(?:.*?\S)?)\*\*/g, '<strong>$1</strong>')
    .replace(/\*(\S(?:.*?\S)?)\*/g, '<em>$1</em>')
    .replace(/[\ue121-\ue17e]/g, (sign) => escaped(String.fromCharCode(sign.charCodeAt(0) - ASIDE)));
}

function table(text) {
  const [head, , ...rows] = text.split('\n').map((line) =>
    line
      .replace(/^\| | \|$/g, '')
      .split(/ \| /)
      .map((cell) => marked(cell.trim())),
  );
  const row = (cells, tag) => `<tr>\n${cells.map((cell) => `<${tag}>${cell}</${tag}>\n`).join('')}</tr>\n`;
  return `<table>\n<thead>\n${row(head, 'th')}</thead>\n<tbody>\n${rows
    .map((cells) => row(cells, 'td'))
    .join('')}</tbody>\n</table>\n`;
}

// Figures that follow their numbers: fields and sliders above what a cell showed, and what they change.

/** What lies so far outside the window [px] can wait a moment. */
const NEAR = 400;
/** The moment [ms]. */
const PAUSE = 200;

/** Rows of four texts as the library answers them. */
function rows(flat) {
  const found = [];
  for (let i = 0; i < flat.length; i += 4) {
    found.push({ what: flat[i], name: flat[i + 1], form: flat[i + 2], text: flat[i + 3] });
  }
  return found;
}

/** The figures of a lesson as the library describes them. */
function described(flat) {
  const figures = [];
  for (const { what, name, form, text } of rows(flat)) {
    const now = figures.at(-1);
    const input = now?.inputs.at(-1);
    if (what === 'figure') {
      figures.push({ id: name, title: form, heart: text, inputs: [], places: new Map(), sum: '' });
    } else if (what === 'input') {
      now.inputs.push({ id: name, label: form, text, choices: [] });
    } else if (what === 'choice') {
      input.choices.push({ value: form, text });
    } else if (what === 'slider') {
      Object.assign(input, { low: name, high: form, step: text });
    } else if (what === 'unit') {
      Object.assign(input, { unit: name, digits: Number(form), optional: text === 'optional' });
    } else if (what === 'place') {
      now.places.set(name, { form, text });
    } else if (what === 'sum') {
      now.sum = text;
    }
  }
  return figures;
}

/** An output as HTML. */
function html(form, text, name) {
  if (form === 'text/markdown') {
    return `<div class="shown">${lines(text, formula)}</div>`;
  }
  if (form === 'image/svg+xml') {
    return picture(text, name);
  }
  return form === 'text/html' ? `<div class="shown">${text}</div>` : said(text);
}

function element(tag, attributes = {}, ...inside) {
  const made = document.createElement(tag);
  Object.entries(attributes).forEach(([name, value]) => made.setAttribute(name, value));
  made.append(...inside);
  return made;
}

/** One figure in the page, in as many places as the text of the lesson parts its outputs into. */
class Follower {
  #figure;
  #answer;
  #texts;
  #fields = [];
  #sums = [];
  #heart;
  #lesson;
  #asked = 0;
  #later = 0;
  #shown = new Map();

  constructor(figure, answer) {
    this.#figure = figure;
    this.#answer = answer;
    this.#texts = figure.inputs.map((input) => input.text);
    for (const place of figure.places.keys()) {
      const original = document.querySelector(`[data-out="${place}"]`);
      if (original) {
        this.#shown.set(place, { original, copy: undefined });
      }
    }
    const groups = new Map();
    for (const [place, { original }] of this.#shown) {
      const before = this.#textBefore(original);
      if (!groups.has(before)) {
        groups.set(before, original);
      }
      if (place === figure.heart) {
        this.#heart = groups.get(before);
      }
    }
    groups.forEach((original) => this.#place(original, original === this.#heart));
    this.#extra();
    (globalThis.requestIdleCallback ?? setTimeout)(() => this.#ofLesson());
  }

  #textBefore(element) {
    let before = element;
    while (before && !before.matches('.text')) {
      before = before.previousElementSibling;
    }
    return before;
  }

  /** Puts the fields above an output: open at the heart of the figure, folded elsewhere. */
  #place(original, open) {
    const number = this.#sums.length;
    const label = open ? this.#figure.title : `${this.#figure.title}, place ${number + 1}`;
    const form = element('form', { class: 'live', 'data-figure': this.#figure.id, 'aria-label': label });
    form.addEventListener('submit', (event) => event.preventDefault());
    const fields = element('div', { class: 'fields' });
    this.#figure.inputs.forEach((input, n) => fields.append(this.#field(input, n, number)));
    const back = element('button', { type: 'button' }, 'Back to the lesson’s numbers');
    back.addEventListener('click', () => this.#change(this.#figure.inputs.map((input) => input.text)));
    const wrong = element('p', { class: 'wrong', role: 'status' });
    const sum = element('p', { class: 'sum', ...(open ? { role: 'status' } : {}) });
    sum.textContent = this.#figure.sum;
    this.#sums.push({ sum, wrong, form, open });
    if (open) {
      form.append(element('p', { class: 'title' }, this.#figure.title), sum, wrong, fields, back);
      form.append(
        element('p', { class: 'quiet' }, 'The text of the lesson and the printed page keep the lesson’s own numbers.'),
      );
    } else {
      form.append(
        element('details', {}, element('summary', {}, this.#figure.title), sum, wrong, fields, back),
      );
    }
    original.before(form);
  }

  #field(input, n, number) {
    const id = `${this.#figure.id}-${input.id}-${number}`;
    const label = element('label', { for: id, id: `${id}-l` }, input.label);
    if (input.choices.length > 0) {
      const select = element('select', { id });
      input.choices.forEach(({ value, text }) => select.append(element('option', { value }, text)));
      select.value = input.text;
      select.addEventListener('change', () => this.#set(n, select.value));
      (this.#fields[n] ??= []).push({ select });
      return element('div', { class: 'field' }, label, select);
    }
    const wrong = element('p', { class: 'wrong', id: `${id}-w`, role: 'status' });
    const text = element('input', {
      id,
      type: 'text',
      autocomplete: 'off',
      spellcheck: 'false',
      'aria-describedby': `${id}-w ${id}-t`,
      ...(input.optional ? { placeholder: 'not read' } : {}),
    });
    text.value = input.text;
    const slider = element('input', {
      type: 'range',
      min: input.low,
      max: input.high,
      step: input.step,
      'aria-labelledby': `${id}-l`,
      'aria-valuetext': input.text || 'not read',
    });
    const taken = element('p', { class: 'taken', id: `${id}-t`, role: 'status' });
    slider.value = input.text ? String(parseFloat(input.text)) : String((Number(input.low) + Number(input.high)) / 2);
    text.addEventListener('input', () => this.#set(n, text.value));
    slider.addEventListener('input', () => this.#set(n, this.#written(input, slider.value)));
    (this.#fields[n] ??= []).push({ text, slider, wrong, taken });
    return element('div', { class: 'field' }, label, text, slider, taken, wrong);
  }

  #written(input, value) {
    const number = Number(value).toFixed(input.digits);
    return `${number.includes('.') ? number.replace(/\.?0+$/, '') : number} ${input.unit}`.trim();
  }

  #set(n, text) {
    this.#change(this.#texts.map((old, m) => (m === n ? text : old)));
  }

  #change(texts) {
    this.#texts = texts;
    texts.forEach((text, n) =>
      this.#fields[n].forEach((field) => {
        const box = field.text ?? field.select;
        if (box.value !== text) {
          box.value = text;
        }
      }),
    );
    this.#state('asked');
    cancelAnimationFrame(this.#asked);
    this.#asked = requestAnimationFrame(() => this.#follow());
  }

  /** What can be seen follows at once, the rest in a moment. */
  #follow() {
    clearTimeout(this.#later);
    const near = [];
    const far = [];
    for (const [place, { original, copy }] of this.#shown) {
      const box = (copy ?? original).getBoundingClientRect();
      (box.bottom > -NEAR && box.top < innerHeight + NEAR ? near : far).push(place);
    }
    if (this.#show(near.length > 0 ? near : far) && near.length > 0 && far.length > 0) {
      this.#later = setTimeout(() => {
        this.#show(far);
        this.#state('shown');
      }, PAUSE);
    } else {
      this.#state('shown');
    }
  }

  /** Whether all outputs show what the fields say. */
  #state(state) {
    this.#sums.forEach(({ form }) => {
      form.dataset.state = state;
    });
  }

  /** What the library answers; if it fails, a line that says so. */
  #answered(places) {
    try {
      return rows(this.#answer(this.#figure.id, this.#texts, places));
    } catch {
      return [{ what: 'wrong', name: '', form: '', text: 'This cannot be computed. Try other numbers.' }];
    }
  }

  /** Asks for some places and shows them; false if the numbers cannot be used. */
  #show(places) {
    const answered = this.#answered(places);
    const faults = new Map(answered.filter(({ what }) => what === 'wrong').map(({ name, text }) => [name, text]));
    const at = new Map(answered.filter(({ what }) => what === 'at').map((row) => [row.name, row]));
    this.#figure.inputs.forEach((input, n) =>
      this.#fields[n].forEach(({ text, slider, wrong, taken }) => {
        if (text) {
          const fault = faults.get(input.id) ?? '';
          wrong.textContent = fault;
          text.setAttribute('aria-invalid', String(fault !== ''));
          if (at.has(input.id)) {
            slider.value = at.get(input.id).text;
          }
          const unit = at.get(input.id)?.form ?? '';
          taken.textContent = unit && `taken as ${unit}`;
          slider.setAttribute('aria-valuetext', this.#texts[n] || 'not read');
        }
      }),
    );
    const bad = faults.size > 0;
    this.#sums.forEach(({ wrong, form }) => {
      wrong.textContent = faults.get('') ?? '';
      form.classList.toggle('stale', bad);
    });
    for (const { original, copy } of this.#shown.values()) {
      original.classList.toggle('stale', bad);
      copy?.classList.toggle('stale', bad);
    }
    if (bad) {
      return false;
    }
    for (const { what, name, form, text } of answered) {
      if (what === 'place') {
        this.#put(name, form, text);
      } else if (what === 'sum') {
        this.#sums.forEach(({ sum }) => {
          sum.textContent = text;
        });
      }
    }
    return true;
  }

  /** What the lesson's own numbers show, by place. */
  #ofLesson() {
    if (!this.#lesson) {
      const texts = this.#figure.inputs.map((input) => input.text);
      this.#lesson = new Map(
        rows(this.#answer(this.#figure.id, texts, []))
          .filter(({ what }) => what === 'place')
          .map(({ name, text }) => [name, text]),
      );
    }
    return this.#lesson;
  }

  /** The page's own output where it says the same, else one made here; paper always shows the page's own. */
  #put(place, form, text) {
    const shown = this.#shown.get(place);
    if (!shown) {
      return;
    }
    const same = text === this.#ofLesson().get(place);
    shown.original.classList.toggle('replaced', !same);
    if (same) {
      shown.copy?.remove();
      shown.copy = undefined;
      return;
    }
    if (!shown.copy) {
      shown.copy = element('div', { class: 'live-copy', 'data-copy': place });
      shown.original.after(shown.copy);
    }
    shown.copy.innerHTML = html(form, text, `live-${place}`);
  }

  /** What only the script shows stands right below the first fields. */
  #extra() {
    for (const [place, { form, text }] of this.#figure.places) {
      if (place.startsWith('+') && this.#sums.length > 0) {
        const original = element('div', { class: 'live-extra', 'data-out': place });
        original.innerHTML = html(form, text, `live${place.replace('+', '-')}`);
        this.#sums.find(({ open }) => open).form.after(original);
        this.#shown.set(place, { original, copy: undefined });
      }
    }
  }
}

/** Makes all figures of a lesson follow. */
function follow(lesson, library) {
  described(library.figures(lesson)).forEach((figure) => new Follower(figure, library.answer));
}

// Exercises that check an answer in the page.

/** Puts a field and a button in place of the line to write on. */
function exercises(library) {
  for (const line of document.querySelectorAll('p.blank[data-exercise]')) {
    const id = line.dataset.exercise;
    const form = document.createElement('form');
    form.className = 'check';
    form.setAttribute('aria-label', `answer ${id}`);
    form.innerHTML = `<label for="a-${id}">Answer${line.dataset.unit ? ` [${escaped(line.dataset.unit)}]` : ''}</label>
<input id="a-${id}" type="text" autocomplete="off" spellcheck="false" aria-describedby="r-${id}">
<button>Check</button>
<p id="r-${id}" class="reply" role="status"></p>`;
    const [field, reply] = [form.querySelector('input'), form.querySelector('.reply')];
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      const [{ name, text }] = rows(library.check(id, field.value));
      reply.className = `reply ${name.replace(' ', '-')}`;
      reply.innerHTML = signs(escaped(text));
      field.setAttribute('aria-invalid', String(name !== 'right'));
    });
    line.after(form);
    line.classList.add('replaced');
  }
}

// Begins when the page is there and the library was loaded; without it the page stays as it is.

/* global figures, answer, check */
if (typeof figures === 'function' && typeof answer === 'function' && typeof check === 'function') {
  const library = { figures, answer, check };
  follow(Number(document.querySelector('main').dataset.lesson), library);
  exercises(library);
}
})();
