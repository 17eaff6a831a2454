// The index, the book, the marking key, and the trainer's pages.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { page } from './frame.mjs';
import { Writer, target, told } from './lessons.mjs';
import { escaped } from './live/text.mjs';

const INVENTED = `<p>Tern Creek Boatyard, its plugs, its parts and its prices are invented: no real coupling has these
sizes. The method is the same for real ones.</p>
`;

/** {file, content} of all pages that are made of several lessons. */
export function book(notebooks, lessons, drawings) {
  return [
    ['index.html', index(lessons)],
    ['book.html', learners(notebooks, lessons, drawings)],
    ['marking-key.html', markingKey(lessons)],
    ['measuring-form.html', measuringForm(drawings)],
    ['trainer.html', document(join(notebooks, 'TRAINER.md'), 'Trainer’s guide')],
    ['glossary.html', document(join(notebooks, '../docs/glossary.md'), 'Glossary')],
  ];
}

function index(lessons) {
  const items = lessons.map(
    (lesson) => `<li><strong>${lesson.number} · ${escaped(lesson.title)}</strong>
<span class="quiet">${lesson.minutes} minutes. You need ${escaped(lesson.needs)}.</span><br>
<a href="${lesson.page}">Lesson ${lesson.number}</a>
<a href="${lesson.exercisePage}">Exercises ${lesson.number}</a></li>\n`,
  );
  return page({
    title: 'Thirteen lessons on compressed air',
    after: { file: lessons[0].page, title: 'Lesson 1' },
    main: `<h1>Thirteen lessons on compressed air</h1>
<p>Each lesson goes from a job to the given values, the model, the steps and the answer, and compares the answer with
published numbers. You need no computer program: the pages open in any browser, without a network.</p>
${INVENTED}<ol class="lessons">
${items.join('')}</ol>
<h2>To print</h2>
<ul>
<li><a href="book.html">The book</a>: all lessons and exercises, hints, form and glossary; the trainer’s guide and
marking key at its end</li>
<li><a href="measuring-form.html">The measuring form</a>: blank, with drawings of where the caliper goes</li>
<li><a href="marking-key.html">The marking key</a>: all answers, for the trainer</li>
<li><a href="variants.html">Further exercises</a>: the same kinds with other numbers, and their key; the
trainer’s guide tells how to make more</li>
<li><a href="trainer.html">The trainer’s guide</a>: minutes, materials, air supply</li>
<li><a href="glossary.html">The glossary</a>: the words of the trade that the lessons use</li>
</ul>
<p>Print at 100 % (“actual size”), so that drawings come out to true scale.</p>
`,
  });
}

/** Pages of a lesson are numbered 3-1, 3-2, …, so that the contents are right on any paper. */
function numbered(lessons) {
  const small = 'font: 9pt "DejaVu Sans", Arial, sans-serif; color: #333;';
  const rules = lessons.map(({ number, title }) => {
    const name = title.replaceAll('"', '\\"');
    return `
@page lesson${number} { counter-increment: p${number};
@bottom-right { content: "${number}-" counter(p${number}); }
@bottom-left { content: "${name}"; ${small} } }
.lesson${number} { page: lesson${number}; }`;
  });
  return `${rules.join('')}
@page appendix { counter-increment: pa; @bottom-right { content: "A-" counter(pa); } }
.appendix { page: appendix; }
@page guide { counter-increment: pb; @bottom-right { content: "B-" counter(pb); }
@bottom-left { content: "For the trainer"; ${small} } }
.guide { page: guide; }
@page key { counter-increment: pc; @bottom-right { content: "C-" counter(pc); }
@bottom-left { content: "Marking key: for the trainer"; ${small} } }
.key { page: key; }
@page front { @bottom-right { content: none; } }
.front { page: front; }
`;
}

function learners(notebooks, lessons, drawings) {
  const writer = new Writer({ level: 1, link: (href) => within(target(href)) });
  const chapters = lessons.map((lesson) => {
    const questions = [...lesson.key.keys()].map((id) =>
      writer.question(lesson, id).replace('<div class="keep">', '<div class="keep ask">'),
    );
    return `<section class="chapter lesson${lesson.number}" id="lesson-${lesson.number}"
aria-label="lesson ${lesson.number}">
${writer.lesson(lesson, { folded: false })}<h3 id="exercises-${lesson.number}">Exercises ${lesson.number}</h3>
${writer.given(lesson, false)}${questions.join('')}</section>\n`;
  });
  const hints = lessons.map((lesson) =>
    [...lesson.key.values()]
      .map(({ id, hints }) => `<tr><th scope="row">${id}</th><td>${hints.map(told).join('<br>')}</td></tr>\n`)
      .join(''),
  );
  const guide = readFileSync(join(notebooks, 'TRAINER.md'), 'utf8');
  const words = writer.markdown.html(glossary(notebooks), { level: 1, prefix: 'g-' });
  const contents = lessons.map(
    (lesson) => `<li><a href="#lesson-${lesson.number}">${lesson.number} · ${escaped(lesson.title)}</a>
<span class="quiet">from page ${lesson.number}-1; exercises at its end</span></li>\n`,
  );
  return page({
    title: 'Thirteen lessons on compressed air: the book',
    style: numbered(lessons),
    main: `<div class="front">
<h1>Thirteen lessons on compressed air</h1>
<p>The book for learners, with the trainer’s part at its end.</p>
${INVENTED}<p>The calculations were made with the library airfit. A page, a pencil, a pocket calculator and a
caliper are enough to follow them. Each lesson ends with exercises; the hints stand at the end of the book, the
answers in the trainer’s part.</p>
<blockquote>
<p>Depressurise before you separate a coupling. Wear eye protection whenever air is on. Sizes that agree do not prove a
safe joint. The rules at your place, the makers’ ratings and a licensed fitter’s word come before this book.</p>
</blockquote>
<p>Print at 100 % (“actual size”), so that drawings come out to true scale.</p>
<h2 id="contents">Contents</h2>
<ol class="lessons">
${contents.join('')}<li><a href="#hints">Hints</a> <span class="quiet">page A-1</span></li>
<li><a href="#form">Measuring form</a> <span class="quiet">after the hints</span></li>
<li><a href="#glossary">Glossary</a> <span class="quiet">after the form</span></li>
<li><a href="#guide">For the trainer: minutes, materials, air supply</a> <span class="quiet">page B-1</span></li>
<li><a href="#key">For the trainer: marking key</a> <span class="quiet">page C-1</span></li>
</ol>
<p>A learner’s copy ends with the glossary: leave the sides B and C out when you print it.</p>
</div>
${chapters.join('')}<section class="chapter appendix first" id="hints" aria-label="hints">
<h2>Hints</h2>
<p>Try the exercise before you read its hint.</p>
<table>
<thead><tr><th scope="col">exercise</th><th scope="col">hint</th></tr></thead>
<tbody>
${hints.join('')}</tbody>
</table>
</section>
<section class="chapter appendix" id="form" aria-label="measuring form">
${form(drawings, 2)}</section>
<section class="chapter appendix" id="glossary" aria-label="glossary">
${words}</section>
<section class="chapter guide" id="guide" aria-label="trainer’s guide">
${writer.markdown.html(guide, { level: 1, prefix: 'b-' })}</section>
<section class="chapter key" id="key" aria-label="marking key">
${key(writer, lessons, 1)}</section>
`,
    glyphs: writer.formulas.glyphs(),
  });
}

function glossary(notebooks) {
  return readFileSync(join(notebooks, '../docs/glossary.md'), 'utf8');
}

/** In the book, lessons and exercises are places of the same file. */
function within(href) {
  const lesson = /^0?(\d+)-[^.]*?(-exercises)?\.html$/.exec(href);
  if (lesson) {
    return `#${lesson[2] ? 'exercises' : 'lesson'}-${lesson[1]}`;
  }
  return href === 'glossary.html' ? '#glossary' : href;
}

function markingKey(lessons) {
  const writer = new Writer();
  const main = key(writer, lessons, 0);
  return page({
    title: 'Marking key',
    main,
    glyphs: writer.formulas.glyphs(),
    style:
      '\n@page { @bottom-left { content: "Marking key: for the trainer"; ' +
      'font: 9pt "DejaVu Sans", Arial, sans-serif; } }\n',
  });
}

/** The marking key with its headings `level` lower than on a page of its own. */
function key(writer, lessons, level) {
  const h = (n) => `h${n + level}`;
  const chapters = lessons.map((lesson) => {
    const answers = [...lesson.key.values()].map(
      ({ id, hints }) => `<section class="keep" aria-label="answer ${id}">
<${h(3)} id="k${id}">${id}</${h(3)}>
${question(writer, lesson, id)}${writer.answer(lesson, id, false)}<p class="quiet">${
        hints.length > 1 ? 'Hints' : 'Hint'
      }: ${hints.map(told).join(' / ')}</p>
</section>\n`,
    );
    return `<section aria-label="key of lesson ${lesson.number}">
<${h(2)} id="k${lesson.number}">${lesson.number} · ${escaped(lesson.title)}</${h(2)}>
${answers.join('')}</section>\n`;
  });
  const ids = lessons.flatMap((lesson) => [...lesson.key.keys()]);
  const rows = lessons.map(
    (lesson) =>
      `<tr><th scope="row">${lesson.number} · ${escaped(lesson.title)}</th>${'abcde'
        .split('')
        .map(
          (letter) =>
            `<td class="box">${
              ids.includes(`${lesson.number}${letter}`) ? '<span class="tick"></span> <span class="tick"></span>' : ''
            }</td>`,
        )
        .join('')}<td></td></tr>\n`,
  );
  return `<${h(1)}>Marking key</${h(1)}>
<p>For the trainer. Two points for each exercise, by our own choice: one for the way, shown with units, and one for the
answer within what is allowed. Another way that leads there is just as good. A hint costs nothing.</p>
<${h(2)} id="sheet">Sheet for one learner</${h(2)}>
<p>Name: <span class="blank"><span class="rule"></span></span>
Date: <span class="blank"><span class="rule"></span></span></p>
<div class="scroll" tabindex="0" role="group" aria-label="table"><table>
<thead><tr><th scope="col">lesson (way, answer)</th>${'abcde'
      .split('')
      .map((l) => `<th scope="col">${l}</th>`)
      .join('')}<th scope="col">points</th></tr></thead>
<tbody>
${rows.join('')}</tbody>
</table></div>
<p class="quiet">${ids.length} exercises, ${2 * ids.length} points.</p>
${chapters.join('')}`;
}

function question(writer, lesson, id) {
  return writer
    .question(lesson, id)
    .replace(/<p class="blank">[\s\S]*?<\/p>\n/, '')
    .replace(`<strong>${id}.</strong> `, '')
    .replace('<div class="keep">', '<div>');
}

function measuringForm(drawings) {
  return page({ title: 'Measuring form', main: form(drawings, 1) });
}

function form(drawings, level) {
  return drawings.replace(/<(\/?)h(\d)/g, (all, end, n) => `<${end}h${Number(n) + level - 1}`);
}

function document(file, title) {
  const writer = new Writer();
  const main = writer.markdown.html(readFileSync(file, 'utf8'));
  return page({ title, main, glyphs: writer.formulas.glyphs() });
}
