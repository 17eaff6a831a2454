// What the site must find by itself, and what its search must find for people: node --test test.mjs
import assert from 'node:assert/strict';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import { PARTS } from './contents.mjs';
import { dead, resolved } from './links.mjs';
import { synonyms } from './search.mjs';
import { site } from './site.mjs';
import { namer, read } from './source.mjs';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

let made;
let folder;
before(() => {
  made = site(ROOT);
  folder = mkdtempSync(join(tmpdir(), 'site-'));
});
after(() => rmSync(folder, { recursive: true }));

/** A small repository with one document, and what else is told. */
function repository(name, guide, more = {}) {
  const root = join(folder, name);
  for (const path of ['docs/site/live', 'docs/verification', 'notebooks/pages']) {
    mkdirSync(join(root, path), { recursive: true });
  }
  cpSync(join(ROOT, 'docs/site/live/site.js'), join(root, 'docs/site/live/site.js'));
  const files = Object.fromEntries(
    ['verification', 'glossary', 'safety', 'limits'].map((one) => [`docs/${one}.md`, `# ${one}\n`]),
  );
  for (const [path, text] of Object.entries({ ...files, 'docs/guide.md': guide, ...more })) {
    writeFileSync(join(root, path), text);
  }
  const chapters = ['guide', 'verification', 'glossary', 'safety', 'limits'].map((one) => ({
    source: `docs/${one}.md`,
    page: `${one}.html`,
  }));
  return site(root, [{ title: 'All', what: 'All there is.', chapters }]);
}

test('every chapter is a page, and each page has one title', () => {
  for (const { chapters } of PARTS) {
    for (const { page } of chapters) {
      assert.equal(made.pages.get(page).split('<h1').length, 2, page);
    }
  }
  assert.ok(made.pages.has('verification/flow-leaks.html'));
});

test('a sound link, a place and a file are found', () => {
  const { pages, files } = repository('sound', '# G\n\n## A part\n\n[a](#a-part) [b](glossary.md) [c](x.csv)\n', {
    'docs/x.csv': '1\n',
  });
  assert.match(pages.get('guide.html'), /href="files\/docs\/x\.csv"/);
  assert.ok(files.has('files/docs/x.csv'));
});

for (const [name, text, told] of [
  ['file', '[a](gone.md)', /guide\.html: gone\.md/],
  ['place of another page', '[a](glossary.md#gone)', /guide\.html: glossary\.html#gone/],
  ['place of this page', '[a](#gone)', /guide\.html: #gone/],
  ['picture', '![a](gone.svg)', /guide\.html: gone\.svg/],
  ['host', '[a](https://example.org/)', /guide\.html: https:/],
  ['file above the repository', '[a](../../../etc/hosts)', /guide\.html: /],
]) {
  test(`a planted link to a ${name} that is not there fails`, () => {
    assert.throws(() => repository(`dead-${name.replaceAll(' ', '-')}`, `# G\n\n${text}\n`), told);
  });
}

test('a document that stands in no part fails', () => {
  const lost = { 'docs/lost.md': '# Lost\n' };
  assert.throws(() => repository('lost', '# G\n', lost), /not in the contents.*docs\/lost\.md/);
});

test('a document with two titles fails', () => {
  assert.throws(() => read('# One\n\n# Two\n', (target) => target), /one title/);
});

test('links are followed from where they stand', () => {
  assert.equal(resolved('verification/a.html', '../sources.html'), 'sources.html');
  assert.equal(resolved('a.html', '../b.html'), undefined);
  assert.deepEqual(dead(new Map([['a/b.html', '<p id="x"></p><a href="b.html#x">']]), new Set()), []);
});

test('headings have the names that GitHub gives them', () => {
  const name = namer();
  assert.deepEqual(
    ['Parts: ISO 6358', 'The view `suitable_parts`', 'A & B', 'Units', 'Units', 'Size ≤ 2'].map(name),
    ['parts-iso-6358', 'the-view-suitable_parts', 'a--b', 'units', 'units-1', 'size--2'],
  );
});

test('comments and places of a document are not shown as text', () => {
  const table = '| a | b |\n|---|---|\n| <a id="s1"></a>S1 | c |\n';
  const { html } = read(`# T\n\n<!-- table x -->\n\n${table}`, (target) => target);
  assert.doesNotMatch(html, /&lt;|table x/);
  assert.match(html, /<span id="s1"><\/span>S1/);
});

/** The search as the browser runs it, over the index that was made. */
function search() {
  const nothing = { querySelector: () => undefined, querySelectorAll: () => [], body: { dataset: { up: '' } } };
  const source = readFileSync(new URL('live/site.js', import.meta.url), 'utf8').replace('  search();\n', '');
  const world = vm.createContext({ document: nothing, navigator: {}, matchMedia: () => ({}) });
  vm.runInContext(source, world);
  vm.runInContext(made.files.get('search-index.js').text, world);
  return (question) => world.airfitSearch.found(question, world.airfitPlaces);
}

for (const [question, page, place] of [
  ['NPT into G 1/2', 'faq.html'],
  ['dew point', 'faq.html'],
  ['pressure dew point', 'guide.html'],
  ['Colebrook', 'theory.html'],
  ['biggest restriction', 'guide.html', 'find-the-biggest-restriction'],
  ['FlowCapacity', 'guide.html'],
  ['oxygen', 'limits.html'],
  ['Babcock', 'verification/line-babcock-s-table.html'],
  ['A-A-59439', 'sources.html', 'p01'],
  ['busy Retry-After', 'counter-service.html', 'limits'],
]) {
  test(`a search for ${question} finds ${page}`, () => {
    const best = search()(question);
    assert.ok(
      best.some((one) => one.page === page && (place === undefined || one.at === place)),
      best.map((one) => `${one.page}#${one.at} ${one.score}`).join('\n'),
    );
  });
}

test('a search for air finds air, not the name of the project', () => {
  const best = search()('air');
  assert.equal(best.length, 12);
  for (const one of best) {
    assert.match(one.title, /(?<![\p{L}\p{N}])air(?![\p{L}\p{N}])/iu, `${one.page}#${one.at} ${one.score}`);
  }
  assert.ok(search()('airfit').length > 0);
  assert.ok(search()('airf').length > 0, 'while its name is typed');
});

test('a word that is typed whole stands before longer ones that begin so', () => {
  const [whole, longer] = search()('thread').map(({ title }) => title);
  assert.match(whole, /\bthread\b/i);
  assert.ok(longer);
  assert.ok(search()('threa').length > 0, 'while it is typed');
});

test('the word of the trade finds ours', () => {
  const pairs = synonyms(readFileSync(join(ROOT, 'docs/glossary.md'), 'utf8'));
  assert.ok(pairs.some(([trade, ours]) => trade === 'check valve' && ours === 'non return valve'));
  const best = search()('check valve in a ring');
  assert.ok(best.length > 0);
});

test('the search needs every word, and finds nothing for nonsense', () => {
  assert.equal(search()('zzyzx').length, 0);
  assert.equal(search()('hose zzyzx').length, 0);
});

test('imports of programs are not found', () => {
  assert.equal(search()('import org.airfit').filter(({ text }) => /import org/.test(text)).length, 0);
});

test('the index is small enough to be read on a telephone', () => {
  assert.ok(made.files.get('search-index.js').text.length < 800_000);
});
