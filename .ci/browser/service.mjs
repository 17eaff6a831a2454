// The counter page as the counter service serves it, over a stock in a database: node --test service.mjs
// Wants "mvn package": airfit-served.html, and the class path of airfit-examples/counter.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { openedIn, type, untilTold, WAIT } from './driving.mjs';
import { browser } from './faults.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const counter = join(root, 'airfit-examples/counter');
const catalogue = join(root, 'airfit-examples/jobs/boatyard/catalogue.json');
const served = join(root, 'airfit-examples/browser/page/target/airfit-served.html');
const work = mkdtempSync(join(tmpdir(), 'service-'));
const TOKEN = 'a-token-of-this-test';
let chromium;
const services = [];

before(async () => {
  chromium = await browser();
});
after(async () => {
  await chromium?.close();
  services.forEach((service) => service.kill());
  rmSync(work, { recursive: true });
});

/** A service over the boatyard's stock on a free port; load stores a table of articles while it serves. */
async function shop(environment = {}) {
  const folder = join(work, `stock-${services.length}`);
  const classes = [
    join(counter, 'target/test-classes'),
    join(counter, 'target/classes'),
    readFileSync(join(counter, 'target/class-path.txt'), 'utf8').trim(),
  ].join(':');
  const java = process.env.JAVA_HOME ? join(process.env.JAVA_HOME, 'bin/java') : 'java';
  const service = spawn(
    java,
    [
      '-Dslf4j.provider=org.slf4j.nop.NOPServiceProvider',
      '-cp',
      classes,
      'org.airfit.counter.ServedShop',
      folder,
      catalogue,
      served,
    ],
    { stdio: ['pipe', 'pipe', 'pipe'], env: { ...process.env, ...environment } },
  );
  services.push(service);
  const logged = [];
  createInterface({ input: service.stderr }).on('line', (line) => logged.push(line));
  const lines = createInterface({ input: service.stdout })[Symbol.asyncIterator]();
  const { value: address } = await lines.next();
  assert.match(address ?? '', /^http:\/\/127\.0\.0\.1:\d+\/$/, logged.join('\n'));
  return {
    address,
    load: async (name, table) => {
      writeFileSync(join(work, name), table);
      service.stdin.write(`${join(work, name)}\n`);
      return (await lines.next()).value;
    },
    close: async () => {
      const ended = new Promise((done) => service.once('exit', done));
      service.stdin.end();
      await ended;
    },
  };
}

const JOB = {
  'Tip diameter': '11.92 mm',
  'Tip length': '16.27 mm',
  'Groove width': '5.16 mm',
  'Pressure, cut-in to cut-out': '100 to 125 psig',
  'What it is': 'Angle grinder',
  'Thread at the tool': '1/4 NPT female',
  'Air it takes': '11 scfm',
  'Pressure it needs': '80 psig',
  'How far it must reach': '10 m',
};

test('the page of the service does a job over the stock of the database, and sees what is changed there', async () => {
  const house = await shop();
  // What the policy of the page keeps it from is an error of the console, and so a fault.
  const { window, faults } = await openedIn(chromium, house.address);
  await untilTold(window, '#stock-state', /\d+ parts, from/);
  const parts = Number(/(\d+) parts, from/.exec(await window.textContent('#stock-state'))[1]);
  assert.equal(parts, JSON.parse(readFileSync(catalogue, 'utf8')).parts.length);

  await type(window, JOB);
  await window.locator('#card-0-end').fill('1/2 NPT female');
  await window.waitForSelector('#shown .parts', WAIT);
  await untilTold(window, '#shown', /Gannet/);
  assert.match(await window.textContent('#shown .parts'), /Hose/);
  assert.ok((await window.locator('#shown .care li').count()) > 2);

  // One article more in the database: seen when it is asked again, without a restart.
  const told = await house.load(
    'more.csv',
    'kind,id,name,price,quantity,end,otherEnd,bore,length,wall,rated\n' +
      'adapter,N-1,Nipple of today,1.10,5,1/4 NPT male,3/8 NPT male,8 mm,40 mm,drawn copper or brass,16 bar(g)\n',
  );
  assert.match(told, /1/);
  await window.getByRole('button', { name: 'Ask the service again' }).click();
  await untilTold(window, '#stock-state', new RegExp(`${parts + 1} parts, from`));
  await house.load('again.csv', 'kind,id,name\ndrain,DR-7,Drain of today\n');
  const seen = await (await fetch(`${house.address}stock/catalogue.json`)).json();
  assert.ok(seen.accessories.some((each) => each.id === 'DR-7'));
  await window.context().close();
  assert.deepEqual(faults, []);

  // A window that is opened now has it from the start.
  const later = await openedIn(chromium, house.address);
  await untilTold(later.window, '#stock-state', new RegExp(`${parts + 1} parts, from`));
  await later.window.context().close();
  assert.deepEqual(later.faults, []);
  await house.close();
});

test('where a token is wanted, the page has no stock unless a proxy shows it', async () => {
  const house = await shop({ AIRFIT_TOKEN: TOKEN });
  const without = await openedIn(chromium, house.address);
  await untilTold(without.window, '#notice', /^catalogue\.json: the service answered 401/);
  await without.window.context().close();
  // As a proxy in front does for those whom it knows.
  const { window, faults } = await openedIn(chromium, house.address, {
    extraHTTPHeaders: { Authorization: `Bearer ${TOKEN}` },
  });
  await untilTold(window, '#stock-state', /\d+ parts, from/);
  await window.context().close();
  assert.deepEqual(faults, []);
  await house.close();
});
