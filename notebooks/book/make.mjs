#!/usr/bin/env node
// Makes the pages and the book from the notebooks: node make.mjs NOTEBOOKS PAGES FORM
//   NOTEBOOKS  the folder of the notebooks, with the outputs that are to be shown
//   PAGES      the folder that the pages are written to
//   FORM       an HTML file with the drawings of the measuring form, as org.airfit.lesson.MeasuringForm writes it
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { asked } from '../../.ci/browser/asked.mjs';
import { book } from './book.mjs';
import { page } from './frame.mjs';
import { Writer, lessons } from './lessons.mjs';
import { script } from './script.mjs';
import { escaped } from './live/text.mjs';

const [notebooks, pages, form] = asked(import.meta.url, 3, 3);
const all = lessons(notebooks);
const drawings = readFileSync(form, 'utf8');
mkdirSync(pages, { recursive: true });

function write(file, content) {
  writeFileSync(join(pages, file), content);
}

const course = all.flatMap((lesson) => [
  { file: lesson.page, title: `Lesson ${lesson.number}`, lesson },
  { file: lesson.exercisePage, title: `Exercises ${lesson.number}`, lesson, exercises: true },
]);

course.forEach(({ file, lesson, exercises }, at) => {
  const writer = new Writer({ live: true });
  const main = exercises
    ? exercisePage(lesson, writer)
    : writer.lesson(lesson) +
      `<p><a href="${lesson.exercisePage}">Now do the exercises of lesson ${lesson.number}.</a></p>\n`;
  write(
    file,
    page({
      title: `${exercises ? 'Exercises ' : ''}${lesson.number} · ${lesson.title}`,
      main,
      glyphs: writer.formulas.glyphs(),
      before: course[at - 1],
      after: course[at + 1],
      lesson: lesson.number,
    }),
  );
});

function exercisePage(lesson, writer) {
  const questions = [...lesson.key.keys()].map(
    (id) =>
      `<section aria-label="exercise ${id}">\n<h2 id="e${id}">Exercise ${
        id
      }</h2>\n${writer.question(lesson, id).replace(`<strong>${id}.</strong> `, '')}${writer.folded(
        lesson,
        id,
      )}</section>\n`,
  );
  return `<h1>Exercises ${lesson.number} · ${escaped(lesson.title)}</h1>
<p>Read <a href="${lesson.page}">lesson ${lesson.number}</a> first. Write your answer down, with its unit,
before you open a hint. The answer is behind the last hint.</p>
${writer.given(lesson, true)}${questions.join('')}`;
}

write('live.js', script());
for (const [file, content] of book(notebooks, all, drawings)) {
  write(file, content);
}
