// The page's own logic, without a browser: node --test
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import test from 'node:test';
import { fileURLToPath } from 'node:url';
import { at, withAt } from '../../main/counter/paths.mjs';
import { begun, canRedo, canUndo, changedTo, paused, redone, undone } from '../../main/counter/history.mjs';
import {
  USUAL,
  added,
  branched,
  fieldsOf,
  gathered,
  keptOf,
  moved,
  placeFor,
  removed,
  runs,
  slugOf,
  spread,
  unbranched,
} from '../../main/counter/line.mjs';
import {
  asked,
  fieldOf,
  fileName,
  filesFor,
  filesToCheck,
  freshJob,
  handAsked,
  isBegun,
  isOtherMedium,
  jobFile,
  lacking,
  placed,
} from '../../main/counter/job.mjs';
import { recognised, requireSmall } from '../../main/counter/bounds.mjs';
import { compared, comparedInWords } from '../../main/counter/compared.mjs';
import { otherSet, setInWords, withJudged } from '../../main/counter/judged.mjs';
import { builtField, isTypedInto, isUsable, readingsIn, setFile } from '../../main/counter/set.mjs';
import { UNMEASURED, scaleOf } from '../../main/counter/scale.mjs';
import { FileStock, ServiceStock } from '../../main/counter/stock.mjs';
import { shownAs, typed } from '../../main/counter/fields.mjs';

const JOBS = join(dirname(fileURLToPath(import.meta.url)), '../../../../../jobs');

const everyJob = readdirSync(JOBS, { recursive: true })
  .filter((name) => name.endsWith('.json'))
  .map((name) => ({ name, content: JSON.parse(readFileSync(join(JOBS, name), 'utf8')) }))
  .filter(({ content }) => content.airfitJob === 2);

/** Every place of a job where a text, a number or a truth value stands, with what stands there. */
function leaves(value, path = []) {
  return value !== null && typeof value === 'object'
    ? Object.entries(value).flatMap(([name, each]) => leaves(each, [...path, name]))
    : [[path, value]];
}

test('a value that was set is found there, and nothing else has changed', () => {
  const job = { a: { b: '1', c: [1, { d: 2 }] }, e: true };
  const next = withAt(job, 'a.c.1.d', 'x');
  assert.equal(at(next, 'a.c.1.d'), 'x');
  assert.deepEqual(job, { a: { b: '1', c: [1, { d: 2 }] }, e: true });
  assert.deepEqual(withAt(next, 'a.c.1.d', 2), job);
  assert.equal(next.e, job.e);
});

test('a field that was emptied is gone, and so is what holds nothing then', () => {
  assert.deepEqual(withAt({ supply: { pressure: '90 psig' }, x: 1 }, 'supply.pressure', undefined), { x: 1 });
  assert.deepEqual(withAt({ x: 1 }, 'atHand.thread.pitches', undefined), { x: 1 });
  assert.deepEqual(withAt({ line: [{ kind: 'hose', reach: '1 m' }] }, 'line.0.reach', undefined), {
    line: [{ kind: 'hose' }],
  });
});

test('names of the language itself are fields like any other', () => {
  const job = JSON.parse('{"__proto__": {"x": "1"}, "constructor": "2"}');
  const next = withAt(job, 'a', 'b');
  assert.deepEqual(JSON.stringify(next), '{"__proto__":{"x":"1"},"constructor":"2","a":"b"}');
  assert.equal(at({}, 'constructor'), undefined);
  assert.equal(at({}, 'toString.name'), undefined);
});

test('every job of the examples goes through the page and comes out the same', () => {
  assert.ok(everyJob.length > 20);
  for (const { name, content } of everyJob) {
    const text = JSON.stringify(content);
    assert.equal(JSON.stringify(JSON.parse(jobFile(content, 'other.json'))), text, name);
    for (const [path, value] of leaves(content)) {
      assert.equal(at(withAt(content, path, undefined), path), undefined, `${name}: ${path.join('.')}`);
      assert.equal(JSON.stringify(withAt(content, path, value)), text, `${name}: ${path.join('.')}`);
    }
  }
});

test('typing and taking back what was typed leaves the file as it was', () => {
  for (const { name, content } of everyJob) {
    const next = withAt(withAt(content, 'tool.name', 'x'), 'tool.name', at(content, 'tool.name'));
    assert.deepEqual(next, content, name);
  }
});

test('undo goes back step by step, and what is typed in one go is one step', () => {
  let history = begun('');
  for (const text of ['1', '12', '12 m', '12 mm']) {
    history = changedTo(history, text, 'reach');
  }
  history = changedTo(history, '12 mm, 3', 'size');
  assert.equal(undone(history).now, '12 mm');
  assert.equal(undone(undone(history)).now, '');
  assert.equal(canUndo(undone(undone(history))), false);
  assert.equal(redone(undone(history)).now, '12 mm, 3');
  assert.equal(canRedo(history), false);
});

test('after a pause the same field is a step of its own, and a change takes away what could be done again', () => {
  let history = changedTo(begun('a'), 'b', 'field');
  history = changedTo(paused(history), 'c', 'field');
  assert.equal(undone(history).now, 'b');
  assert.equal(canRedo(changedTo(undone(history), 'd')), false);
  assert.equal(changedTo(history, 'c', 'other'), history);
});

test('no more than two hundred steps are remembered', () => {
  let history = begun(0);
  for (let i = 1; i <= 300; i++) {
    history = changedTo(history, i);
  }
  for (let i = 0; i < 300; i++) {
    history = undone(history);
  }
  assert.equal(history.now, 100);
});

test('cards move one place, and not over an end', () => {
  assert.deepEqual(moved(['a', 'b', 'c'], 0, 1), ['b', 'a', 'c']);
  assert.deepEqual(moved(['a', 'b', 'c'], 2, -1), ['a', 'c', 'b']);
  const line = ['a', 'b'];
  assert.equal(moved(line, 0, -1), line);
  assert.equal(moved(line, 1, 1), line);
  assert.deepEqual(removed(['a', 'b', 'c'], 1), ['a', 'c']);
  assert.deepEqual(added([{ kind: 'outlet' }], 'pipe', -1), [{ kind: 'pipe' }, { kind: 'outlet' }]);
});

test('a new card goes where such a part stands', () => {
  const kinds = (line) => line.map(({ kind }) => kind);
  const put = (line, kind) => kinds(added(line, kind, placeFor(line, kind)));
  assert.deepEqual(put(USUAL, 'pipe'), ['pipe', 'outlet', 'coupling', 'hose', 'coupling']);
  assert.deepEqual(put(USUAL, 'regulator'), ['outlet', 'regulator', 'coupling', 'hose', 'coupling']);
  assert.deepEqual(put(USUAL, 'hose').pop(), 'hose');
  assert.deepEqual(put([{ kind: 'outlet' }, { kind: 'splitter', lines: [] }], 'hose'), ['outlet', 'hose', 'splitter']);
});

test('a card names what it keeps without showing it', () => {
  assert.deepEqual(keptOf({ kind: 'hose', reach: '5 m', part: { hose: '3/8 in' }, '//': 'remark' }), ['part']);
  assert.deepEqual(keptOf({ kind: 'splitter', lines: [{ line: [] }], others: '1' }), ['others']);
  assert.deepEqual(keptOf({ kind: 'splitter', lines: ['none of ours'] }), ['lines']);
  assert.deepEqual(keptOf({ kind: 'coupling', name: 'x', sameAs: 'y' }), ['sameAs']);
  assert.deepEqual(fieldsOf({ kind: 'not known' }), []);
});

test('what stands behind a splitter, with the tool, becomes the first of its lines, and comes back', () => {
  const tool = { name: 'sander', air: '12 scfm' };
  const job = { airfitJob: 2, line: [{ kind: 'outlet' }, { kind: 'splitter', part: 'W-2' }, { kind: 'hose' }], tool };
  const several = spread(job, 1);
  assert.equal(several.tool, undefined);
  assert.deepEqual(several.line.slice(0, 1), [{ kind: 'outlet' }]);
  assert.equal(several.line.length, 2);
  assert.equal(several.line[1].part, 'W-2');
  assert.deepEqual(several.line[1].lines[0], { tool, line: [{ kind: 'hose' }] });
  assert.deepEqual(
    several.line[1].lines[1].line.map(({ kind }) => kind),
    ['coupling', 'hose', 'coupling'],
  );
  assert.deepEqual(gathered(several, 1), { airfitJob: 2, line: [{ kind: 'outlet' }, { kind: 'hose' }], tool });
  const three = branched(several, 1);
  assert.equal(three.line[1].lines.length, 3);
  assert.deepEqual(unbranched(three, 1, 2), several);
  const second = unbranched(unbranched(three, 1, 0), 1, 0);
  assert.equal(second.line[1].lines.length, 1);
  assert.equal(unbranched(second, 1, 0).line.at(-1).kind, 'coupling');
  assert.deepEqual(spread({ line: [{ kind: 'splitter', othersTake: '9 scfm' }] }, 0).line[0].othersTake, undefined);
});

test('nothing goes behind a splitter that tells its lines, and it stays last', () => {
  const line = [{ kind: 'outlet' }, { kind: 'hose' }, { kind: 'splitter', lines: [] }];
  assert.equal(moved(line, 1, 1), line);
  assert.equal(moved(line, 2, -1), line);
  assert.equal(moved(line, 1, -1)[0].kind, 'hose');
  assert.deepEqual(
    added(USUAL, 'splitter', placeFor(USUAL, 'splitter')).map(({ kind }) => kind),
    ['outlet', 'splitter', 'coupling', 'hose', 'coupling'],
  );
});

test('lines behind lines are found, each with its number and its path', () => {
  const content = everyJob.find(({ name }) => name.endsWith('two-benches.json')).content;
  const found = runs(content);
  assert.ok(found.some(({ called }) => /^\d\.\d$/.test(called)));
  for (const { run, path } of found) {
    assert.equal(path === '' ? content : at(content, path.slice(0, -1)), run);
  }
  assert.equal(slugOf('line.4.part.bore'), '4');
  assert.equal(slugOf('line.3.lines.0.line.2.reach'), '3-0-2');
  assert.equal(slugOf('line.3.lines.0.tool.air'), '3');
  assert.equal(slugOf('tool.air'), '');
});

test('what several tools lack is told for each, and samples stand for it when the rest is checked', () => {
  const splitter = { ...freshJob(), line: [{ kind: 'outlet' }, { kind: 'splitter' }] };
  const several = spread(splitter, 1);
  const wanted = lacking(several).map(({ field, what }) => `${field}: ${what}`);
  assert.ok(wanted.includes('line.1.lines.1.tool.inlet: the thread at the tool, line 2'));
  assert.ok(wanted.includes('line.1.lines.0.line.1.reach: how far the hose must reach, line 1'));
  assert.ok(isBegun(several));
  const whole = JSON.parse(filesToCheck(several, { name: 'own.csv', text: 'record,id' })['job.json']);
  assert.deepEqual(lacking(whole), []);
  assert.equal(whole.line[1].lines[0].tool.pressure, '80 psig');
  assert.equal(whole.line[1].lines[1].tool.name, 'Tool 2');
});

test('of a receiver and of a year what must be there is wanted once something of it is told', () => {
  const fields = (more) => lacking({ ...freshJob(), ...more }).map(({ field }) => field);
  assert.deepEqual(fields({ receiver: { volume: '240 US gal' } }).slice(-2), ['receiver.draws', 'receiver.every']);
  assert.deepEqual(fields({ year: { flow: '60 scfm' } }).slice(-2), ['year.hours', 'year.electricity']);
});

test('what is lacking is told field by field, and nothing of a whole job', () => {
  assert.deepEqual(
    lacking(freshJob()).map(({ field }) => field),
    ['supply.pressure', 'line.0.end', 'line.2.reach', 'tool.air', 'tool.pressure', 'tool.inlet'],
  );
  assert.deepEqual(
    lacking({ ...freshJob(), tool: { marking: '6.3 bar 400 l/min', inlet: 'G 1/4 female' } }).map(({ field }) => field),
    ['supply.pressure', 'line.0.end', 'line.2.reach'],
  );
  for (const { name, content } of everyJob.filter(({ content }) => !isOtherMedium(content))) {
    assert.deepEqual(lacking(content), [], name);
  }
});

test('anything but compressed air is seen before all else', () => {
  assert.equal(isOtherMedium({ conditions: { medium: 'breathing air' } }), true);
  assert.equal(isOtherMedium({ conditions: { medium: 'compressed air' } }), false);
  assert.equal(isOtherMedium({}), false);
});

test('what a file must have is filled in only to ask, and a caliper alone is no plug', () => {
  const job = { ...freshJob(), atHand: { instrument: 'vernier caliper 0.02 mm' } };
  assert.equal(asked(job).atHand, undefined);
  assert.equal(asked(job).job, 'Job at the counter');
  assert.equal(asked({ ...job, tool: { air: '5 scfm' } }).tool.name, 'Tool');
  const read = { ...freshJob(), atHand: { readings: { bore: '5 mm' }, thread: { lastCrest: '13 mm' } } };
  assert.deepEqual(asked(read).atHand, {
    readings: { bore: '5 mm' },
    where: 'the counter',
    instrument: 'digital caliper 0.01 mm',
  });
  assert.equal(jobFile(job, 'shop.json').includes('Job at the counter'), false);
  assert.equal(JSON.parse(jobFile(job, 'shop.json')).catalogue, 'shop.json');
  assert.equal(JSON.parse(jobFile({ ...job, catalogue: '../a.json' }, 'shop.json')).catalogue, '../a.json');
});

test('a job that is not whole is checked with samples for what is lacking', () => {
  assert.equal(isBegun(freshJob()), false);
  const job = { ...freshJob(), supply: { pressure: '90' } };
  assert.equal(isBegun(job), true);
  const set = { name: 'own.csv', text: 'record,id' };
  const whole = JSON.parse(filesToCheck(job, set)['job.json']);
  assert.deepEqual(lacking(whole), []);
  assert.equal(whole.supply.pressure, '90');
  assert.equal(isBegun({ ...job, line: [] }), false);
});

test('a set that was opened stands in place of the profiles of the stock', () => {
  const stock = { catalogue: 'Shop', profiles: [{ id: 'a' }], parts: [] };
  const files = filesFor(freshJob(), stock, { name: 'own.csv', text: 'record,id' });
  assert.deepEqual(JSON.parse(files['stock.json']), { catalogue: 'Shop', parts: [], profileSet: 'own.csv' });
  assert.equal(files['own.csv'], 'record,id');
  assert.deepEqual(JSON.parse(filesFor(freshJob(), stock, null)['stock.json']), stock);
  assert.equal(handAsked(freshJob(), stock, { name: 'own.csv', text: 'record,id' }).set, 'record,id');
  assert.deepEqual(handAsked(freshJob(), stock, null).set, { catalogue: 'Shop', profiles: [{ id: 'a' }], parts: [] });
  assert.equal(handAsked(freshJob(), { profileSet: 'sets/own.csv' }, null, { 'own.csv': 'x' }).set, 'x');
  assert.equal(handAsked(freshJob(), null, null), null);
  assert.equal(handAsked(freshJob(), null, null, {}, 'to ask with'), null);
  const read = { ...freshJob(), atHand: { readings: { bore: '5 mm' } } };
  assert.deepEqual(handAsked(read, null, null, {}, 'to ask with'), { set: 'to ask with', readings: { bore: '5 mm' } });
});

test('a refusal finds its field', () => {
  assert.deepEqual(placed({ name: 'WrongFile', message: 'job.json: tool.air: was "22"; a flow is wanted' }), {
    field: 'tool.air',
    words: 'Was "22"; a flow is wanted',
  });
  assert.deepEqual(
    placed({ name: 'WrongFile', message: 'job.json: line[3].reach: is missing: a length' }).field,
    'line.2.reach',
  );
  assert.deepEqual(
    placed(
      { name: 'WrongField', field: 'readings.tip diameter', message: 'readings.tip diameter: was "x"' },
      'atHand.',
    ),
    { field: 'atHand.readings.tip diameter', words: 'Was "x"' },
  );
  assert.deepEqual(placed({ name: 'WrongFile', message: 'stock.json: parts[2].end: was "x"' }), {
    field: '',
    words: 'parts[2].end: was "x"',
  });
  const long =
    'job.json: tool.air: "22": the unit is missing, at position 2; accepted: such as "34 scfm"; the units are scfm';
  assert.equal(
    placed({ name: 'WrongFile', message: long }).words,
    '"22": the unit is missing; accepted: such as "34 scfm"',
  );
  assert.equal(fieldOf('line[12].part.bore'), 'line.11.part.bore');
});

test('files are bounded and known by what stands in them', () => {
  requireSmall('a.json', 10e6);
  assert.throws(() => requireSmall('a.json', 10e6 + 1), /a\.json: holds 10\.0 MB; up to 10 MB are read/);
  assert.equal(recognised('a.json', '\ufeff{"airfitJob": 2}').kind, 'job');
  assert.equal(recognised('a.json', '{"catalogue": "x", "parts": []}').kind, 'stock');
  assert.equal(recognised('a.json', '{"set": "x", "profiles": []}').kind, 'set');
  assert.equal(recognised('a.json', '{"name": "Shop", "phone": "555"}').kind, 'letterhead');
  assert.equal(recognised('a.csv', 'record,id,name\n').kind, 'set');
  assert.equal(recognised('a.CSV', 'record;id;name\r\n').kind, 'set');
  assert.equal(recognised('r.csv', 'jurisdiction,citation,text\n').kind, 'rules');
  const many = (count) => JSON.stringify({ catalogue: 'x', parts: new Array(count).fill(0) });
  assert.equal(recognised('a.json', many(100000)).kind, 'stock');
  assert.throws(() => recognised('a.json', many(100001)), /holds 100001 parts; up to 100000 are read/);
  const holding = (line) => JSON.stringify({ airfitJob: 2, tool: null, line });
  assert.equal(recognised('a.json', holding([{ kind: 'hose', part: null }])).kind, 'job');
  assert.throws(() => recognised('a.json', holding([{}, null])), /^WrongFile: a\.json: line\[2\] is null; tell what/);
  assert.throws(() => recognised('a.json', holding([{ lines: [{ line: [null] }] }])), /lines\[1\]\.line\[1\] is/);
  assert.throws(() => recognised('a.json', '{"parts": [null]}'), /a\.json: parts\[1\] is null/);
  assert.throws(() => recognised('a.json', '{"profiles": [{}, null]}'), /a\.json: profiles\[2\] is null/);
  const deep = (depth) => `{"airfitJob": 2, "x": ${'['.repeat(depth - 1)}"{[[[["${']'.repeat(depth - 1)}}`;
  assert.equal(recognised('a.json', deep(100)).kind, 'job');
  assert.throws(() => recognised('a.json', deep(101)), /^WrongFile: a\.json: .* more than 100 deep/);
});

test('a broken file is refused in one line', () => {
  for (const text of ['{"a": ', '', '[]', 'null', '3', '{}', '<html>']) {
    assert.throws(
      () => recognised('b.json', text),
      (e) => e.name === 'WrongFile' && !e.message.includes('\n') && e.message.startsWith('b.json: '),
      text,
    );
  }
  assert.throws(() => recognised('b.csv', 'a,b\n1,2'), /neither/);
});

test('a field that stands twice is refused, wherever it stands', () => {
  const stock = (part) => `{"catalogue": "x", "parts": [{"name": "a {\\"b\\": [", "price": "1"}, ${part}]}`;
  assert.equal(recognised('s.json', stock('{"name": "a", "price": "1"}')).kind, 'stock');
  assert.throws(() => recognised('s.json', stock('{"price": "36", "price" : "1"}')), /s.json: "price" stands twice/);
  assert.throws(() => recognised('j.json', '{"airfitJob": 2, "tool": {"air": "1", "\\u0061ir": "2"}}'), /"air" stands/);
});

test('repeated readings behind one another are parted, the unit from the last, and read by the library alone', () => {
  assert.deepEqual(readingsIn('11.90 11.92; 11.91 mm'), ['11.90 mm', '11.92 mm', '11.91 mm']);
  assert.deepEqual(readingsIn('15/32 in; 0.47"'), ['15/32 in', '0.47"']);
  assert.deepEqual(readingsIn('.470 .471 in'), ['.470 in', '.471 in']);
  assert.deepEqual(readingsIn('11.9 12.0'), ['11.9', '12.0']);
  assert.deepEqual(readingsIn('11.9 mm 12.0 mm'), ['11.9 mm', '12.0 mm']);
  assert.deepEqual(readingsIn('1 15/32 in'), ['1 15/32 in']);
  assert.deepEqual(readingsIn('1 15/32 1-1/2 2 in'), ['1 15/32 in', '1-1/2 in', '2 in']);
  assert.deepEqual(readingsIn(''), []);
  // What is no reading stays as it was typed, for the library to refuse.
  for (const [text, last] of [
    ['11.90 12,3x', '12,3x'],
    ['11.90 1e3 mm', '1e3 mm'],
    ['11.90,11.92 mm', '11.90,11.92 mm'],
  ]) {
    assert.equal(readingsIn(text).at(-1), last);
    assert.match(readingsIn(text)[0], /^11\.90(?:,11\.92)? (?:mm|x)$/);
  }
  assert.deepEqual(readingsIn('11.90 -12 mm'), ['11.90 -12 mm']);
});

test('a built set is the project’s file, and leaves out what one reading tells', () => {
  const built = {
    name: 'Ours',
    profiles: [
      { name: 'Small & red', readings: { bore: '5.1 5.2 mm', 'tip length': '16 mm' } },
      { name: 'Nothing', readings: {} },
    ],
  };
  assert.equal(isUsable(built), true);
  assert.equal(isUsable({}), false);
  const { set, profiles } = setFile(built);
  assert.equal(set, 'Ours');
  assert.equal(profiles.length, 1);
  assert.deepEqual(profiles[0].dimensions, { bore: { readings: ['5.1 mm', '5.2 mm'] } });
  assert.equal(profiles[0].id, 'small-red');
  assert.equal(profiles[0].from, 'measured');
  assert.equal(profiles[0].pieces, 2);
  const uneven = { profiles: [{ readings: { bore: '5.1 5.2 5.3 mm', 'tip length': '16 16.1 mm' } }] };
  assert.equal(setFile(uneven).profiles[0].pieces, 2);
  assert.equal(isTypedInto({}), false);
  assert.equal(isTypedInto({ profiles: [{ name: 'x' }] }), true);
});

test('an id is the one that is typed, or made of the name, and no two are made alike', () => {
  const named = (...names) => names.map((name) => ({ name, readings: { bore: '5.1 5.2 mm' } }));
  const ids = (profiles) => setFile({ profiles }).profiles.map(({ id }) => id);
  assert.deepEqual(ids(named('Red', 'Red', '', 'Red 2')), ['red', 'red-2', 'profile-3', 'red-2-4']);
  assert.deepEqual(ids([{ ...named('Ours')[0], id: ' gannet ' }]), ['gannet']);
});

test('a refusal of a set that is built here finds its field', () => {
  const readings = { bore: '5.1 5,2 mm' };
  const built = { profiles: [{ name: 'none yet' }, { name: 'Ours', readings }] };
  assert.equal(builtField('profiles[1].dimensions.bore.readings[2]', built), 'built.profiles.1.readings.bore');
  assert.equal(builtField('profiles[1].dimensions.tip diameter', built), 'built.profiles.1.readings.tip diameter');
  assert.equal(builtField('profiles[1].id', built), 'built.profiles.1.id');
  assert.equal(builtField('profiles[1].pieces', built), 'built.profiles.1.name');
  assert.equal(builtField('set', built), 'built.name');
});

const SHOP = {
  catalogue: 'Shop',
  profiles: [
    { id: 'a', name: 'Auk' },
    { id: 'b', name: 'Booby' },
  ],
  parts: [
    { kind: 'hose', id: 'H' },
    { kind: 'plug', id: 'P', profile: 'a' },
    { kind: 'socket', id: 'S', takes: ['a', 'c'] },
    { kind: 'socket', id: 'T', takes: ['b'] },
  ],
  accessories: [
    { kind: 'drain', id: 'D' },
    { kind: 'end cap', id: 'E', profile: 'b' },
  ],
};
const ownSet = (...ids) => ({ name: 'own.json', text: 'x', profiles: ids.map((id) => ({ id })), sockets: 0 });

test('a set and a stock with profiles of its own count both, where no id stands in both', () => {
  const { set, stock, how, ...rest } = compared(SHOP, ownSet('c'), '');
  assert.equal(how, 'both');
  assert.equal(set, null);
  assert.deepEqual(
    stock.profiles.map(({ id }) => id),
    ['c', 'a', 'b'],
  );
  assert.equal(stock.parts, SHOP.parts);
  assert.match(comparedInWords({ how, ...rest }), /no id stands in the set and in the stock/);
  assert.equal(SHOP.profiles.length, 2);
  assert.match(comparedInWords(compared(SHOP, { ...ownSet('c'), sockets: 1 }, '')), /universal sockets do not count/);
});

test('where an id stands in both the set counts alone until one says otherwise, without parts it cannot know', () => {
  const alone = compared(SHOP, ownSet('a'), '');
  assert.equal(alone.how, 'set');
  assert.equal(alone.set.name, 'own.json');
  assert.deepEqual(
    alone.stock.parts.map(({ id, takes }) => [id, takes]),
    [
      ['H', undefined],
      ['P', undefined],
      ['S', ['a']],
    ],
  );
  assert.deepEqual(
    alone.stock.accessories.map(({ id }) => id),
    ['D'],
  );
  assert.equal(alone.leftOut, 2);
  assert.match(comparedInWords(alone), /In both stands Auk: say which is meant\. 2 parts of the stock are left out/);
  const both = compared(SHOP, ownSet('a'), 'both');
  assert.deepEqual(both.stock.profiles, [{ id: 'a' }, SHOP.profiles[1]]);
  assert.match(comparedInWords(both), /In both stands Auk; of these the set’s sizes count/);
  const stock = compared(SHOP, ownSet('a'), 'stock');
  assert.deepEqual([stock.set, stock.stock], [null, SHOP]);
});

test('without one of the two there is nothing to choose', () => {
  assert.equal(compared(SHOP, null, 'set').how, null);
  assert.equal(compared({ ...SHOP, profiles: [] }, ownSet('a'), 'both').how, null);
  assert.equal(compared(null, ownSet('a'), '').set.name, 'own.json');
  assert.equal(comparedInWords(compared(SHOP, null, '')), '');
});

test('what is put together is put together once', () => {
  const set = ownSet('c');
  assert.equal(compared(SHOP, set, '').stock, compared(SHOP, set, '').stock);
  assert.equal(compared(SHOP, set, 'set').stock, compared(SHOP, set, 'set').stock);
});

test('a saved job names the set that it was judged with, and another set is warned of', () => {
  const set = { title: 'Ours', name: 'own.json', text: '{"set": "Ours"}' };
  const words = setInWords(set, false);
  assert.equal(setInWords({ ...set, text: '{\n  "set": "Ours"\n}\n' }, false), words);
  assert.notEqual(setInWords({ ...set, text: '{"set": "Ours."}' }, false), words);
  assert.notEqual(setInWords(set, true), words);
  const job = withJudged({ airfitJob: 2 }, words, true);
  assert.deepEqual(job, { airfitJob: 2, '// judged with': words });
  assert.equal(otherSet(job, words), '');
  assert.match(otherSet(job, ''), /was judged with another set: Ours \(own\.json\), mark [0-9a-f]{8}\. That set/);
  assert.match(otherSet(job, setInWords(set, true)), /Now it is compared with Ours \(own\.json, with the profiles/);
  assert.deepEqual(withJudged(job, '', true), { airfitJob: 2 });
  assert.equal(withJudged(job, '', false), job);
  assert.deepEqual(withJudged({ a: 1 }, '', false), { a: 1 });
});

test('a set of any name stands beside stock and job', () => {
  for (const name of ['stock.json', 'job.json']) {
    const files = filesFor(freshJob(), { catalogue: 'Shop', parts: [] }, { name, text: 'record,id' });
    assert.equal(JSON.parse(files['stock.json']).profileSet, `set-${name}`);
    assert.equal(files[`set-${name}`], 'record,id');
    assert.equal(JSON.parse(files['job.json']).airfitJob, 2);
  }
});

test('a screen has the scale of what was held to it, within reason', () => {
  assert.equal(scaleOf(85.6 * 4, 85.6), 4);
  assert.equal(scaleOf(1, 85.6), UNMEASURED);
  assert.equal(scaleOf(1e6, 85.6), UNMEASURED);
});

test('stock from a file and from a service answers through one interface', async () => {
  const content = { catalogue: 'Shop', profileSet: 'sets/own set.csv', parts: [{ id: 'H' }] };
  const asked = [];
  const service = new ServiceStock('stock/a.json', async (address) => {
    asked.push(address);
    return new Response(address.endsWith('.json') ? JSON.stringify(content) : 'record,id');
  });
  for (const stock of [new FileStock('a.json', content), service]) {
    assert.deepEqual(await stock.file(), content);
    assert.equal(stock.name(), 'a.json');
    assert.equal(stock.title(), 'Shop');
  }
  assert.deepEqual(await service.beside(), { 'own set.csv': 'record,id' });
  assert.deepEqual(asked, ['stock/a.json', 'stock/own%20set.csv']);
});

test('what a service answers is bounded, and a fault of it is one line', async () => {
  const endless = new ReadableStream({
    pull(controller) {
      controller.enqueue(new Uint8Array(1e6));
    },
  });
  const never = Object.assign(new Error('x'), { name: 'TimeoutError' });
  for (const [answer, said] of [
    [() => new Response('down', { status: 503 }), /^a\.json: the service answered 503; nothing was taken/],
    [() => new Response('{"parts": ['), /^a\.json: is no JSON/],
    [() => new Response('{"airfitJob": 2}'), /^a\.json: the service answered, but not with a catalogue/],
    [() => new Response(endless), /^a\.json: holds 1\d\.\d MB; up to 10 MB are read$/],
    [() => Promise.reject(new TypeError('failed')), /^a\.json: the service cannot be reached/],
    [() => Promise.reject(never), /^a\.json: the service did not answer in 20 seconds/],
  ]) {
    await assert.rejects(new ServiceStock('a.json', async () => answer()).file(), (e) => {
      assert.equal(e.name, 'WrongFile');
      assert.match(e.message, said);
      assert.doesNotMatch(e.message, /\n/);
      return true;
    });
  }
});

test('numbers and truth values are typed as the job file has them', () => {
  assert.equal(typed(' 5 ', 'number'), 5);
  assert.equal(typed('17.5', 'number'), 17.5);
  // A comma is refused by the library, as in every other field.
  assert.equal(typed('17,5', 'number'), '17,5');
  assert.equal(typed('4 elbows', 'number'), '4 elbows');
  assert.equal(typed('false', 'truth'), false);
  assert.equal(typed('  ', 'number'), undefined);
  assert.equal(typed('90 psig'), '90 psig');
  assert.deepEqual(typed('11.92 mm; 11.94 mm', 'repeats'), ['11.92 mm', '11.94 mm']);
  assert.equal(typed('1 1/2 in', 'repeats'), '1 1/2 in');
  assert.equal(shownAs(['11.92 mm', '11.94 mm'], 'repeats'), '11.92 mm; 11.94 mm');
});

test('a file is named after its job', () => {
  assert.equal(fileName({ job: 'Grinder at the gate, Ümlaut/..' }), 'grinder-at-the-gate-u-mlaut.json');
  assert.equal(fileName({}), 'job.json');
});
