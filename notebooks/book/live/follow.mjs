// Figures that follow their numbers: fields and sliders above what a cell showed, and what they change.
import { lines } from './lines.mjs';
import { formula } from './mathml.mjs';
import { picture, said } from './outputs.mjs';

/** What lies so far outside the window [px] can wait a moment. */
const NEAR = 400;
/** The moment [ms]. */
const PAUSE = 200;

/** Rows of four texts as the library answers them. */
export function rows(flat) {
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
export function follow(lesson, library) {
  described(library.figures(lesson)).forEach((figure) => new Follower(figure, library.answer));
}
