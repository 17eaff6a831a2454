// The lessons and their exercises, read once and shown on the pages, in the book and in the marking key.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Formulas } from './formulas.mjs';
import { escaped, signs } from './live/text.mjs';
import { Markdown } from './markdown.mjs';
import { code, exercises, key as answerKey, read, shown } from './notebook.mjs';

/** All lessons in a folder of notebooks. */
export function lessons(folder) {
  const answers = answerKey(join(folder, 'lesson/src/main/resources/org/airfit/lesson/exercises.txt'));
  return readdirSync(folder)
    .filter((file) => /^\d\d-.*\.ipynb$/.test(file))
    .sort()
    .map((file) => {
      const name = file.replace('.ipynb', '');
      const number = Number(name.slice(0, 2));
      const lesson = read(join(folder, file));
      const first = lesson.cells[0].source;
      const questions = exercises(read(join(folder, 'exercises', file)));
      const solutions = exercises(read(join(folder, 'solutions', file)));
      const key = new Map([...answers].filter(([id]) => parseInt(id, 10) === number));
      for (const id of new Set([...key.keys(), ...questions.keys(), ...solutions.keys()].filter(Boolean))) {
        if (!key.has(id) || !questions.has(id) || !solutions.has(id)) {
          throw new Error(
            `exercise ${id} must stand in exercises.txt, in exercises/${file} and in solutions/${file}`,
          );
        }
      }
      return {
        name,
        number,
        title: lesson.title.replace(/^\d+ · /, ''),
        minutes: Number(/\*\*Time:\*\* (\d+) minutes/.exec(first)?.[1]),
        needs: /\*\*You need:\*\* ([^.]*)\./.exec(first.replaceAll('\n', ' '))?.[1].replaceAll('*', ''),
        page: `${name}.html`,
        exercisePage: `${name}-exercises.html`,
        cells: lesson.cells,
        exercises: questions,
        solutions,
        key,
      };
    });
}

/** Where a link of a notebook leads on the pages. */
export function target(href) {
  const notebook = /^(?:\.\.\/)?(?:(exercises|solutions)\/)?(\d\d-[^/]*)\.ipynb$/.exec(href);
  if (notebook) {
    return `${notebook[2]}${notebook[1] ? '-exercises' : ''}.html`;
  }
  if (/(^|\/)glossary\.md$/.test(href)) {
    return 'glossary.html';
  }
  const ours = /^(?:pages\/)?([\w-]+\.html)(#.*)?$/.exec(href);
  if (ours) {
    return `${ours[1]}${ours[2] ?? ''}`;
  }
  if (/(^|\/)README\.md$/.test(href)) {
    return 'index.html';
  }
  if (/TRAINER\.md$/.test(href)) {
    return 'trainer.html';
  }
  const document = /^\.\.\/(docs\/.*)$/.exec(href);
  if (document) {
    return `../../${document[1]}`;
  }
  if (/^(#|https?:)/.test(href)) {
    return href;
  }
  throw new Error(`a page cannot link to ${href}`);
}

/** Writes parts of lessons for one page. */
export class Writer {
  formulas = new Formulas();
  #level;
  #prefix;
  #live;

  /**
   * @param level what is added to the level of each heading
   * @param link where a link leads
   * @param live whether the script of the page may find outputs and exercises
   */
  constructor({ level = 0, link = target, live = false } = {}) {
    this.#level = level;
    this.#live = live;
    this.markdown = new Markdown(this.formulas, link);
  }

  /** The text of a lesson with what its cells showed. */
  lesson(lesson, { folded = true } = {}) {
    this.#prefix = `l${lesson.number}-`;
    return this.#cells(
      lesson.cells.filter((cell) => !/^Now do the \[exercises\]/.test(cell.source)),
      folded,
    ).replace(/<p>Now do the <a [^>]*>exercises<\/a>\.<\/p>\n/, '');
  }

  #cells(cells, folded) {
    return cells
      .map((cell) => {
        if (cell.cell_type === 'markdown') {
          return `<div class="text">\n${this.markdown.html(cell.source, {
            level: this.#level,
            prefix: this.#prefix,
          })}</div>\n`;
        }
        const output = shown(cell, `${this.#prefix}${cell.id}`, this.markdown, this.#live && this.#prefix[0] === 'l');
        return (folded ? code(cell.source) : '') + output;
      })
      .join('');
  }

  /** What the learner is given for all exercises of a lesson. */
  given(lesson, folded) {
    this.#prefix = `e${lesson.number}-`;
    const cells = lesson.exercises
      .get('')
      .filter((cell) => !/^# /.test(cell.source) && !(cell.cell_type === 'code' && !cell.outputs?.length));
    return this.#cells(cells, folded);
  }

  /** The question of an exercise, with what is drawn for it, and a line for the answer. */
  question(lesson, id) {
    this.#prefix = `e${id}-`;
    const cells = lesson.exercises.get(id).filter((cell) => !/sheet\.check\(/.test(cell.source));
    const { unit } = lesson.key.get(id);
    const place = this.#live ? ` data-exercise="${id}" data-unit="${escaped(measured(unit))}"` : '';
    const line = `Answer: <span class="rule"></span>${measured(unit) ? ` ${escaped(unit)}` : ''}`;
    return `<div class="keep">\n${this.#cells(cells, false)}<p class="blank"${place}>${line}</p>\n</div>\n`;
  }

  /** The answer with its tolerance, and how it is reached. */
  answer(lesson, id, folded) {
    const { answers, unit, tolerance, why, way } = lesson.key.get(id);
    const allowed = tolerance
      ? `<p class="quiet">Right within ${escaped(`${decimal(tolerance)} ${measured(unit)}`.trim())}: ${escaped(
          why,
        )}.</p>\n`
      : '';
    const words = answers.slice(1).filter((one) => !one.includes('*'));
    const others = words.length > 0 ? `<p class="quiet">Also right: ${words.map(told).join('; ')}.</p>\n` : '';
    this.#prefix = `s${id}-`;
    const solved = lesson.solutions.get(id).slice(1);
    const worked = solved.filter((cell) => cell.cell_type === 'markdown');
    const drawn = solved.filter((cell) => cell.cell_type === 'code' && !/sheet\.check\(/.test(cell.source));
    const checked = solved.filter((cell) => /sheet\.check\(/.test(cell.source));
    const right = told(`${answers[0]} ${measured(unit)}`.trim());
    return `<p><strong>${right}</strong></p>\n<p>${told(way)}</p>\n${allowed}${others}${this.#cells(
      worked,
      false,
    )}${this.#cells(drawn, folded)}${
      folded
        ? checked
            .map((cell) => code(cell.source))
            .join('')
            .replaceAll('Show the code', 'Show it with the library')
        : ''
    }`;
  }

  /** The hints of an exercise, folded one into the other, with the answer behind the last of them. */
  folded(lesson, id) {
    const { hints } = lesson.key.get(id);
    const answer = `<details class="answer"><summary>Answer</summary>\n${this.answer(lesson, id, true)}</details>\n`;
    return hints.reduceRight(
      (inside, hint, n) =>
        `<details class="hint"><summary>${
          hints.length > 1 ? `Hint ${n + 1}` : 'Hint'
        }</summary>\n<p>${told(hint)}</p>\n${inside}</details>\n`,
      answer,
    );
  }
}

/** A text of the key as HTML. */
export function told(text) {
  return signs(escaped(text));
}

/** A pure number has no unit to write. */
function measured(unit) {
  return unit.startsWith('(') ? '' : unit;
}

function decimal(number) {
  return Number(number) < 0.001 ? Number(number).toFixed(6).replace(/0+$/, '') : number;
}
