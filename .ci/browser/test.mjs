// Plants each kind of fault into a sound page and wants it found, by its element: node --test test.mjs
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { browser, faults } from './faults.mjs';

let chromium;
let folder;
before(async () => {
  chromium = await browser();
  folder = mkdtempSync(join(tmpdir(), 'planted-'));
});
after(async () => {
  await chromium.close();
  rmSync(folder, { recursive: true });
});

const STYLE =
  'body{font:16px/1.5 sans-serif;margin:0 auto;max-width:40rem;padding:0 1rem;color:#111;background:#fff}' +
  'h2{break-after:avoid}@page{margin:15mm}@media print{body{padding:0}}';
const CHART =
  '<svg role="img" aria-label="a chart" width="300" height="60" viewBox="0 0 300 60">' +
  '<text x="5" y="30" font-size="13">flow</text></svg>';

function html(main, style = '') {
  return (
    `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
    `<title>Planted</title><style>${STYLE}${style}</style></head><body><main><h1>Planted</h1><p>A line.</p>${main}` +
    '</main></body></html>'
  );
}

async function look(name, content) {
  const file = join(folder, `${name}.html`);
  writeFileSync(file, content);
  return faults(chromium, file);
}

function finds(name, content, where, fault, element) {
  test(`finds ${name}`, async () => {
    const found = await look(name.replaceAll(' ', '-'), content);
    assert.ok(
      found.some((one) => one.where.startsWith(where) && fault.test(one.fault) && element.test(one.element)),
      `wanted "${fault}" of ${element} at ${where}, found ${JSON.stringify(found, null, 1)}`,
    );
  });
}

const LINE = '<p>A line of text that fills the side of the paper.</p>';
const down = (mm) => `<div style="height:${mm}mm"></div>`;

test('finds nothing in a sound page', async () => {
  const found = await look(
    'sound',
    html(`${CHART}<h2>Part</h2>${LINE}
    <details class="code"><summary>Show the code</summary><pre tabindex="0">x = 1</pre></details>
    <pre class="said">1</pre>
    <div style="overflow-x:auto" tabindex="0" role="group" aria-label="table"><table><tr>
    <th scope="row">${'wide '.repeat(6)}</th><td>1</td></tr></table></div>`),
  );
  assert.deepEqual(found, []);
});

finds(
  'a wide element on a telephone',
  html('<div id="wide" style="width:500px">wide</div>'),
  '390 px',
  /reaches from/,
  /div#wide/,
);
finds(
  'a wide element behind a fold',
  html('<details><summary>More</summary><div id="wide" style="width:500px">w</div></details>'),
  '390 px, all unfolded',
  /reaches from/,
  /div#wide/,
);
finds('small text in a chart', html(CHART.replace('width="300"', 'width="200"')), '390 px', /is 8\.7 px/, /flow/);
finds(
  'small text in a picture',
  html(
    `<img alt="a chart" style="width:100%" src="data:image/svg+xml;base64,${Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg" width="680" height="60" viewBox="0 0 680 60">' +
        '<text y="30" font-size="13">flow</text></svg>',
    ).toString('base64')}">`,
  ),
  '390 px',
  /is 6\.\d px/,
  /flow/,
);
finds(
  'text over the edge of a chart',
  html(CHART.replace('x="5"', 'x="290"')),
  '390 px',
  /cut off at the edge/,
  /flow/,
);
finds(
  'a picture without words',
  html('<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=" width="9" height="9">'),
  '1280 px',
  /axe: image-alt/,
  /img/,
);
finds('a jump of headings', html('<h4>Deep</h4><p>x</p>'), '1280 px', /axe: heading-order/, /h4/);
finds(
  'pale text in the dark',
  html(
    '<p id="pale">pale</p>',
    '@media screen and (prefers-color-scheme:dark){body{background:#111;color:#eee}#pale{color:#444}}',
  ),
  '1280 px, dark',
  /axe: color-contrast/,
  /pale/,
);
test('finds pale text on a page of many, though each look is judged once', async () => {
  const looks = new Set();
  const page = (name, style) => {
    const file = join(folder, `${name}.html`);
    writeFileSync(file, html('<p class="note">a note</p>', style));
    return faults(chromium, file, looks);
  };
  const pale = (found) =>
    found.filter(({ where, fault }) => where === '1280 px' && /axe: color-contrast/.test(fault));
  assert.equal(pale(await page('first', '')).length, 0);
  assert.equal(pale(await page('pale', '.note{color:#bbb}')).length, 1);
  assert.equal(pale(await page('on-grey', '.note{background:#333}')).length, 1);
  assert.equal(pale(await page('beside', '')).length, 0);
});
finds(
  'a heading alone at the foot of a side',
  html(
    `${down(205)}<h2 id="alone">Alone</h2><div style="height:60mm;break-inside:avoid"><p>x</p></div>`,
    'h2{break-after:auto}',
  ),
  'a4',
  /heading alone/,
  /h2#alone/,
);
finds(
  'code parted from what it shows',
  html(`${down(215)}<details class="code"><summary>Show the code</summary>
  <pre tabindex="0">x = 1</pre></details><pre class="said" style="break-before:page">1</pre>`),
  'letter paper, all unfolded',
  /code parted/,
  /x = 1/,
);
finds(
  'a formula with a glyph that the page lacks',
  html('<mjx-container><svg aria-hidden="true" width="20" height="20"><use href="#X"></use></svg></mjx-container>'),
  '1280 px',
  /is not in the page/,
  /#X/,
);
finds(
  'fine print',
  html('<table><tbody><tr><td>D<sub id="fine">t</sub> of a tip</td></tr></tbody></table>', 'table{font-size:7.5pt}'),
  'letter',
  /is 6\.\d pt, less than 7/,
  /sub "t" in "D/,
);
finds(
  'what paper cuts off',
  html('<div id="cut" style="overflow:hidden;width:100%"><div style="width:900px">far</div></div>'),
  'letter',
  /cuts off|reaches/,
  /div#cut|div/,
);
finds(
  'a table that only scrolls on a screen',
  html(
    '<div id="s" tabindex="0" role="group" aria-label="t" style="overflow-x:auto">' +
      '<div style="width:900px">far</div></div>',
  ),
  'a4',
  /cuts off/,
  /div#s/,
);
finds(
  'a drawing higher than paper',
  html('<svg id="tall" role="img" aria-label="tall" width="100" height="1200"></svg>'),
  'letter',
  /more than a side/,
  /tall/,
);
finds(
  'a page that asks the network',
  html('<p>x</p><img alt="x" src="http://127.0.0.1:9/x.png" width="9" height="9">'),
  'network',
  /asks the network/,
  /127/,
);
finds(
  'a sheet to hand over that takes two sides',
  html(`<table class="parts"><thead><tr><th>part</th></tr></thead><tbody><tr><td>hose</td></tr></tbody></table>
    ${down(200)}${down(100)}<p>x</p>`),
  'letter',
  /takes 2 sides/,
  /table/,
);
finds(
  'a caution broken across sides',
  html(`${down(216)}<section class="care"><p id="torn" style="orphans:1;widows:1">${'Shut off. '.repeat(60)}</p></section>`),
  'a4',
  /broken across two sides/,
  /p#torn/,
);
finds(
  'a row broken across sides',
  html(`${down(216)}<table><tr><td id="torn">${'Row. '.repeat(120)}</td></tr></table>`, 'tr{break-inside:auto}'),
  'a4',
  /broken across two sides/,
  /tr "Row/,
);
finds(
  'a network that takes two sides',
  html(`<table><tbody><tr><td>a drop</td></tr></tbody></table>${down(200)}${down(100)}<p>x</p>`).replace(
    '<title>Planted',
    '<title>Network: planted',
  ),
  'letter',
  /takes 2 sides/,
  /table/,
);
