// Files that are opened and saved, and the example.
import { $, download, say, whenOpened } from './page.mjs';
import { WrongFile, recognised, requireSmall } from './bounds.mjs';
import { judgedNow } from './counted.mjs';
import { exampleJob, exampleSet, exampleStock } from './examples.mjs';
import { fileName, freshJob, jobFile } from './job.mjs';
import { showStock } from './sections.mjs';
import { SERVICE } from './service.mjs';
import { isTypedInto, setFile } from './set.mjs';
import { ServiceStock } from './stock.mjs';
import { store } from './store.mjs';

whenOpened(openFiles);
$('stock-open').addEventListener('click', () => (SERVICE ? askService() : $('files').click()));
$('set-open').addEventListener('click', () => $('files').click());

async function openFiles(files) {
  const told = [];
  let next = {};
  for (const file of files) {
    try {
      requireSmall(file.name, file.size);
      const text = await file.text();
      next = { ...next, ...taken(file.name, text, { ...store.now, ...next }) };
      told.push(`${file.name} is open.`);
    } catch (e) {
      told.push(e instanceof WrongFile ? e.message : `${file.name}: cannot be read`);
    }
  }
  if (Object.keys(next).length > 0) {
    store.change(next);
  }
  say(told.join(' '));
}

/** Asks the service for its stock, in the served page. */
export async function askService() {
  const service = new ServiceStock(SERVICE);
  $('stock-state').textContent = 'The service is asked for its stock …';
  try {
    const content = await service.file();
    const others = { ...store.now.others, ...(await service.beside()) };
    store.change({ stock: { name: service.name(), content }, others });
    say(`${service.title()} is here, from the service.`);
  } catch (e) {
    if (!(e instanceof WrongFile)) {
      throw e;
    }
    showStock(store.now.stock, e.message);
    say(e.message);
  }
}

/** What a file changes. */
function taken(name, text, state) {
  const { kind, content } = recognised(name, text);
  if (kind === 'job') {
    if (content.airfitJob !== 2) {
      throw new WrongFile(name, 'is a job of another form; "airfitJob": 2 is read');
    }
    store.saved(content);
    return { job: content };
  }
  if (kind === 'stock') {
    return { stock: { name, content } };
  }
  if (kind === 'set') {
    return { set: { name, text, title: content?.set ? String(content.set) : 'A reference set' }, compare: '' };
  }
  if (kind === 'letterhead') {
    return { letterhead: { name, text, title: String(content.name) } };
  }
  return { others: { ...state.others, [name]: text } };
}

$('save').addEventListener('click', () => {
  const { stock } = store.now;
  const job = judgedNow(store.job);
  download(fileName(job), jobFile(job, stock?.name ?? 'catalogue.json'), 'application/json');
  store.rewrite(job);
  store.saved(job);
  const own = store.set ? ' The set is a file of its own: it names the set that it was judged with.' : '';
  say(`Saved as ${fileName(job)}.${own}`);
});
$('example').addEventListener('click', () => {
  const job = exampleJob();
  store.saved(job);
  // A set that is being built here stays, and is put aside.
  store.change({ job, stock: exampleStock(), set: null, compare: isTypedInto(store.now.built) ? 'stock' : '' });
  say('An invented job at an invented boatyard. Change anything, or press Undo to have your own back.');
});
$('stock-example').addEventListener('click', () => store.change({ stock: exampleStock() }));
$('set-example').addEventListener('click', () =>
  store.change({
    set: { name: 'workshop.csv', text: exampleSet(), title: 'An invented set, of no real plug' },
    compare: '',
  }),
);
$('stock-away').addEventListener('click', () => store.change({ stock: null }));
$('letterhead-away').addEventListener('click', () => store.change({ letterhead: null }));
$('letterhead-open').addEventListener('click', () => $('files').click());
$('set-away').addEventListener('click', () => store.change({ set: null }));
$('fresh').addEventListener('click', () => {
  store.change({ job: freshJob() });
  say('A new job. Undo brings the other one back; stock and set stay.');
});

/** Saves the set that was built here. */
export function saveSet() {
  const file = setFile(store.now.built);
  download('reference-set.json', `${JSON.stringify(file, null, 2)}\n`, 'application/json');
  store.saved(store.now.built);
  say('Saved as reference-set.json.');
}
