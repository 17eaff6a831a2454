// Fields of the page and values of the job: each field has the path of its value in data-field.
import { at } from './paths.mjs';
import { el } from './elements.mjs';
import { fieldOf } from './job.mjs';
import { slugOf } from './line.mjs';
import { SIZES } from './sizes.mjs';

/** The value that a field tells; undefined where it is empty. */
export function valueOf(field) {
  if (field.type === 'checkbox') {
    return field.checked ? true : undefined;
  }
  return typed(field.value, field.dataset.type);
}

/**
 * A text as the job file has it: a number or a truth value where the field is one and it reads as one. A decimal comma
 * is no number here, as it is none anywhere in airfit: what is refused stays a text.
 */
export function typed(text, type) {
  const words = text.trim();
  if (words === '') {
    return undefined;
  }
  if (type === 'number' && /^-?\d+(\.\d+)?$/.test(words)) {
    return Number(words);
  }
  if (type === 'truth') {
    return words === 'true';
  }
  if (type === 'repeats' && words.includes(';')) {
    return words
      .split(';')
      .map((each) => each.trim())
      .filter(Boolean);
  }
  return type === 'number' ? words : text;
}

/** A value as a field shows it; repeats of a reading stand behind one another. */
export function shownAs(value, type) {
  return type === 'repeats' && Array.isArray(value) ? value.join('; ') : value;
}

/** Shows the values of a job in the fields of a form. What cannot stand in a field is named and kept. */
export function showValues(form, job) {
  for (const field of form.querySelectorAll('[data-field]')) {
    showValue(field, at(job, field.dataset.field));
  }
}

function showValue(field, told) {
  const value = shownAs(told, field.dataset.type);
  const kept = value !== undefined && value !== null && typeof value === 'object';
  field.disabled = kept;
  if (field.type === 'checkbox') {
    field.checked = value === true;
    return;
  }
  const text = kept ? '' : String(value ?? '');
  if (field.localName === 'select') {
    if (![...field.options].some((option) => option.value === text)) {
      field.append(el('option', { value: text }, text));
    }
    field.value = text;
  } else if (shownAs(typed(field.value, field.dataset.type), field.dataset.type) !== value || kept) {
    field.value = text;
    if (kept) {
      field.dataset.example ??= field.placeholder;
      field.placeholder = 'kept as the file has it';
    } else if (field.dataset.example !== undefined) {
      field.placeholder = field.dataset.example;
    }
  }
}

/**
 * Says beside each field what is wrong with it, in one line, and takes away what was said before. Tells of each whether
 * its field is here.
 */
export function showWrong(form, wrong) {
  for (const field of form.querySelectorAll('[aria-invalid]')) {
    field.removeAttribute('aria-invalid');
    describe(field);
  }
  form.querySelectorAll('.wrong').forEach((each) => each.remove());
  const told = [];
  for (const { field, words } of wrong) {
    const place = fieldAt(form, field);
    if (place) {
      const id = `wrong-${told.length}`;
      place.setAttribute('aria-invalid', 'true');
      describe(place, id);
      const around = place.closest('.field') ?? place;
      around.append(el('span', { class: 'wrong', id }, words));
      place.closest('details')?.setAttribute('open', '');
    }
    told.push(Boolean(place));
  }
  return told;
}

/** What is read out with a field: what stands beside it always, and what is wrong with it. */
function describe(field, wrong = '') {
  const ids = [wrong, field.dataset.described ?? ''].filter(Boolean).join(' ');
  if (ids) {
    field.setAttribute('aria-describedby', ids);
  } else {
    field.removeAttribute('aria-describedby');
  }
}

/** The field of a path, or the nearest that holds it: of "line.1.part.bore" that of "line.1.part", or its card. */
export function fieldAt(form, path) {
  for (let names = path.split('.'); names.length > 0; names = names.slice(0, -1)) {
    const name = CSS.escape(names.join('.'));
    const found = form.querySelector(`[data-field="${name}"], [data-built="${name}"]`);
    if (found) {
      return found;
    }
  }
  return null;
}

/** What the field of a path is called on the page, for whoever is led to it; the path where none is its field. */
export function labelOf(path) {
  const field = fieldAt(document, path);
  const label = field?.labels?.[0]?.textContent.trim().replace(/\s+/g, ' ');
  const around =
    field?.closest('.card')?.querySelector('h3')?.textContent ??
    (field?.dataset.built ? field.closest('fieldset')?.querySelector('legend')?.textContent : undefined) ??
    (field ? undefined : document.querySelector(`.card[data-place="${CSS.escape(slugOf(path))}"] h3`))
      ?.textContent;
  const words = label ? label.charAt(0).toUpperCase() + label.slice(1) : undefined;
  return around && words ? `${around}: ${words}` : (words ?? around ?? path);
}

const PATH = new RegExp(
  `\\batHand\\.readings\\.(?:${SIZES.join('|')})\\b|` +
    '\\b(?:atHand|supply|tool|conditions|receiver|year)(?:\\.[A-Za-z]+)+|' +
    '\\bline\\[\\d+\\](?:\\.[A-Za-z]+|\\[\\d+\\])*',
  'g',
);

/** Fields of a plug that sentences name by their own name, in quotation marks. */
const NAMED = /"(worn|noNearCopies|socketOnly)"/g;

/** A sentence of the library in which fields of the job file stand, such as tool.air, with what the page calls them. */
export function inPageWords(sentence) {
  const named = sentence.replace(/the job's (?="worn")/, '').replace(NAMED, (_, name) => `atHand.${name}`);
  return named.replace(PATH, (place) => {
    const path = fieldOf(place);
    const label = labelOf(path);
    return label === path ? place : `“${label}”`;
  });
}
