// Which file is answered by which call: node --test kinds.test.mjs
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { ANSWERED, kindOf } from '../../main/desk/kinds.mjs';

const examples = join(dirname(fileURLToPath(import.meta.url)), '../../../../..');
const text = (path) => readFileSync(join(examples, path), 'utf8');

test('each example is seen for what it is', () => {
  for (const [path, call] of Object.entries({
    'days/lock-street/smithy.json': 'day',
    'diagnoses/saddler-lane/slow-grinder.json': 'diagnosis',
    'treatments/kiln-row/paint-shop.json': 'water',
    'jobs/joinery/leaks.csv': 'leaks',
    'shops/weir-street/inventory.json': 'inventory',
    'shops/canal-row/check.json': 'priceList',
    'jobs/boatyard/weak-sander.json': 'cards',
  })) {
    assert.equal(kindOf(text(path))?.call, call, path);
  }
});

test('what other files name is no file to answer', () => {
  for (const path of [
    'shops/weir-street/catalogue.json',
    'shops/canal-row/price-list.json',
    'shops/canal-row/profiles.csv',
    'sets/workshop.csv',
    'days/mill-lane/spray-booth.csv',
    'networks/header-leak.csv',
  ]) {
    assert.equal(kindOf(text(path)), undefined, path);
  }
  assert.equal(kindOf(''), undefined);
  assert.equal(kindOf('null'), undefined);
  assert.equal(kindOf('{}'), undefined);
});

test('a mark in front, semicolons and a slip of JSON hide no kind', () => {
  assert.equal(kindOf('\ufeff{"airfitDay": 1}').call, 'day');
  assert.equal(kindOf('\n;;\n"record";"Tag"\n').call, 'leaks');
  assert.equal(kindOf('{"airfitWater": 1, }').call, 'water');
});

test('each kind has a name, an answer and an example that is its own', () => {
  for (const { what, answers, example } of ANSWERED) {
    assert.ok(what && answers && example.length > 0);
  }
  assert.equal(new Set(ANSWERED.map(({ call }) => call)).size, ANSWERED.length);
});
