// The site from the documents of the repository: every page, and what lies beside the pages.
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { HEADINGS_ONLY, PARTS, REPORT } from './contents.mjs';
import { page } from './frame.mjs';
import { dead } from './links.mjs';
import { entries, index } from './search.mjs';
import { escaped, read } from './source.mjs';

/** Pages that other scripts make: where they lie, and where they go. */
const LESSONS = { from: 'notebooks/pages', to: 'lessons' };

/** A script of the lessons that is built, not kept: their pages read as well without it. */
const MAY_BE_THERE = [`${LESSONS.to}/airfit-lessons.js`];

/** Where files go that a document leads to and that are no pages. */
const FILES = 'files';

/**
 * Makes the site in memory.
 *
 * @param root the folder of the repository
 * @param parts what it holds
 * @return {pages, files}: the HTML of each page and the path of each other file, by their paths in the site; the file
 *     of a text that is made here is {text}
 * @throws Error that lists links which lead nowhere, and documents which stand in no part
 */
export function site(root, parts = PARTS) {
  const chapters = parts.flatMap(({ title, chapters: all }, at) =>
    all.map((chapter) => ({ ...chapter, place: `Part ${at + 1} · ${title}` })),
  );
  const report = readdirSync(join(root, REPORT.folder))
    .sort()
    .map((file) => ({
      source: `${REPORT.folder}/${file}`,
      page: `${REPORT.pages}/${file.replace(/\.md$/, '.html')}`,
      place: 'Verification, a chapter of the report',
      wide: true,
    }));
  const all = [...chapters, ...report];
  complete(root, all);
  const bySource = new Map(all.map((one) => [one.source, one.page]));
  const files = new Map();
  const reading = (one) => {
    const text = readFileSync(join(root, one.source), 'utf8');
    return { ...read(text, (target) => linked(root, one, target, bySource, files)), ...one };
  };
  const whole = chapters.map(reading);
  const ofReport = report.map(reading);

  const pages = new Map();
  const way = [{ page: 'index.html', title: 'Contents' }, ...whole.map(({ page: to, title }) => ({ page: to, title }))];
  pages.set('index.html', page({ title: 'The documentation', main: front(parts, whole), after: way[1], wide: true }));
  whole.forEach((one, at) => pages.set(one.page, chapter(one, way[at], way[at + 2])));
  const back = { page: bySource.get(REPORT.source), title: 'Verification' };
  ofReport.forEach((one, at) => pages.set(one.page, chapter(one, ofReport[at - 1] ?? back, ofReport[at + 1] ?? back)));

  for (const file of readdirSync(join(root, LESSONS.from))) {
    const from = join(root, LESSONS.from, file);
    if (file.endsWith('.html')) {
      const to = `${LESSONS.to}/${file}`;
      const lesson = { source: `${LESSONS.from}/${file}`, page: to };
      const html = readFileSync(from, 'utf8').replace(
        /href="([^":]+\.md(?:#[^"]*)?)"/g,
        (all, target) => `href="${linked(root, lesson, target, bySource, files)}"`,
      );
      pages.set(to, html);
    } else {
      files.set(`${LESSONS.to}/${file}`, from);
    }
  }
  for (const [path, file] of [...files]) {
    if (file.folder) {
      files.delete(path);
      pages.set(path, folder(file, path));
      file.names.forEach((name) => files.set(posix.join(dirname(path), name), join(root, file.folder, name)));
    }
  }
  files.set('site.js', join(root, 'docs/site/live/site.js'));
  const searched = [...whole, ...ofReport].flatMap((one) =>
    entries(one, { headingsOnly: HEADINGS_ONLY.has(one.source) || one.wide }),
  );
  files.set('search-index.js', { text: index(searched, readFileSync(join(root, 'docs/glossary.md'), 'utf8')) });

  const nowhere = dead(pages, new Set([...files.keys(), ...MAY_BE_THERE]));
  if (nowhere.length > 0) {
    throw new Error(`links that lead nowhere:\n${nowhere.join('\n')}`);
  }
  return { pages, files };
}

/** Documents that stand in no part would be found by nobody. */
function complete(root, all) {
  const held = new Set(all.map(({ source }) => source));
  const lost = readdirSync(join(root, 'docs'))
    .filter((file) => file.endsWith('.md'))
    .map((file) => `docs/${file}`)
    .filter((source) => !held.has(source));
  if (lost.length > 0) {
    throw new Error(`not in the contents of the site: ${lost.join(', ')}`);
  }
}

/** The target on the site of a target in the document `one`; what is no page is put among the files. */
function linked(root, one, target, bySource, files) {
  const [file, place] = target.split('#');
  const behind = place === undefined ? '' : `#${place}`;
  if (file === '' || /^[a-z]+:/i.test(file)) {
    return target;
  }
  const up = '../'.repeat(one.page.split('/').length - 1);
  const source = posix.join(dirname(one.source), decodeURIComponent(file));
  const known = bySource.get(source);
  if (known !== undefined) {
    return `${up}${known}${behind}`;
  }
  if (source.startsWith(`${LESSONS.from}/`)) {
    return `${up}${LESSONS.to}/${source.slice(LESSONS.from.length + 1)}${behind}`;
  }
  const path = join(root, source);
  if (source.startsWith('..') || !existsSync(path)) {
    return target;
  }
  if (statSync(path).isDirectory()) {
    const to = `${FILES}/${source.replace(/\/$/, '')}/index.html`;
    const names = readdirSync(path).filter((name) => !statSync(join(path, name)).isDirectory());
    files.set(to, { folder: source, names });
    return `${up}${to}`;
  }
  files.set(`${FILES}/${source}`, path);
  return `${up}${FILES}/${source}${behind}`;
}

function chapter(one, before, after) {
  const up = '../'.repeat(one.page.split('/').length - 1);
  return page({ ...one, up, main: one.html, before, after });
}

function front(parts, whole) {
  const titles = new Map(whole.map((one) => [one.page, one]));
  const told = parts.map(({ title, what, chapters }, at) => {
    const items = chapters.map(({ page: to, title: short }) => {
      const { headings } = titles.get(to);
      const heading = short ?? headings[0].text;
      const line = escaped(holds(headings));
      return `<li><a href="${to}">${escaped(heading)}</a> <span class="quiet">${line}</span></li>\n`;
    });
    return `<section aria-labelledby="part-${at + 1}">
<h2 id="part-${at + 1}">${at + 1} · ${escaped(title)}</h2>
<p>${escaped(what)}</p>
<ul class="chapters">
${items.join('')}</ul>
</section>
`;
  });
  return `<h1>airfit, the documentation</h1>
<p>Which plug is this, which thread, does it fit, what arrives at the tool, and which parts solve the job: a Java library
that answers with reasons, with the working of every number, and with “that cannot be answered”. These pages need no
network and no server: copy the folder anywhere and open it.</p>
<blockquote>
<p>Compressed air injures and kills. Results carry the cautions that apply, but a calculation is not an approval: local
codes, the makers’ ratings and instructions, and the judgement of a licensed person come first. Read
<a href="safety.html">what an answer carries</a> and <a href="limits.html">where it ends</a>.</p>
</blockquote>
<div class="parts">
${told.join('')}</div>
`;
}

/** What a chapter holds, in a line: the first of its headings. */
function holds(headings) {
  const names = headings.filter(({ level }) => level === 2).map(({ text }) => text);
  const line = [];
  for (const name of names) {
    if ([...line, name].join(' · ').length > 90) {
      return `${line.join(' · ')} …`;
    }
    line.push(name);
  }
  return line.join(' · ');
}

function folder({ folder: source, names }, path) {
  const items = names.sort().map((name) => `<li><a href="${encodeURI(name)}">${escaped(name)}</a></li>\n`);
  return page({
    up: '../'.repeat(path.split('/').length - 1),
    title: source,
    main: `<h1>${escaped(source)}</h1>\n<ul>\n${items.join('')}</ul>\n`,
  });
}
