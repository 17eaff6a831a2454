// The sheet on paper, and the outline to true size: a second worker makes them while nothing is typed.
import { $, download, say } from './page.mjs';
import { adopted } from './elements.mjs';
import { screen } from './hand.mjs';
import { fileName, hasPlug } from './job.mjs';
import { drawn, takenApart } from './pages.mjs';
import { layOut, takeAway } from './paper.mjs';
import { Reckoner } from './reckoner.mjs';
import { store } from './store.mjs';

const IDLE_MS = 500;
let printer = null;
let idle = 0;

let answer = null;
let isBehind = () => false;

/** Takes back what could be printed: something else was told. */
export function withdraw() {
  clearTimeout(idle);
  answer = null;
  document.body.classList.remove('ready');
}

/** Makes ready what can be printed of an answer; `due` tells whether a newer one is on its way. */
export function prepare({ selected, plug }, files, hand, due) {
  isBehind = due;
  withdraw();
  $('take').hidden = !selected;
  for (const id of ['print', 'sheet-save', 'reasons-save']) {
    $(id).disabled = !selected;
  }
  const first = plug && hasPlug(store.job) ? plug.candidates[0]?.profile : undefined;
  if (selected || first) {
    const calls = [
      selected && sheetCall(files, 'page'),
      first && $('true-size').open && { call: 'outline', args: [{ set: hand.set, profile: first }] },
    ].filter(Boolean);
    answer = { calls, files, name: plug?.candidates?.[0]?.name, got: null };
    idle = setTimeout(() => made(), IDLE_MS);
  } else {
    screen.outline(null, '');
  }
}

/** Asks for a page of the sheet, "page" or "reasons", with today's date and the head of the shop, if one was opened. */
function sheetCall(files, page) {
  const head = store.now.letterhead;
  const day = new Date();
  const today = [day.getFullYear(), day.getMonth() + 1, day.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  return {
    call: 'sheet',
    args: head
      ? ['job.json', { ...files, 'letterhead.json': head.text }, { only: [page], today, letterhead: 'letterhead.json' }]
      : ['job.json', files, { only: [page], today }],
  };
}

/** The sheet, made now if it was not yet; null where there is none. */
async function made() {
  clearTimeout(idle);
  const mine = answer;
  if (!mine || mine.calls.length === 0) {
    return null;
  }
  printer ??= new Reckoner($('library').textContent);
  mine.got ??= printer.ask(mine.calls);
  const got = await mine.got;
  if (!got || mine !== answer) {
    return null;
  }
  let sheet = null;
  got.answers.forEach(({ answer: said }, i) => {
    if (said && mine.calls[i].call === 'sheet') {
      sheet = said;
      mine.sheet = said;
      document.body.classList.add('ready');
    } else if (mine.calls[i].call === 'outline') {
      const drawing = said?.picture ? drawn(said.picture.svg) : null;
      screen.outline(
        drawing && adopted(drawing),
        drawing
          ? `${mine.name}. Once the card or the rule above matches, it is as large as the plug: lay that on it.`
          : '',
      );
    }
  });
  return sheet;
}

/** The sheet of all that was told, once it is answered. */
async function settled() {
  for (;;) {
    while (isBehind()) {
      await new Promise((resolve) => setTimeout(resolve, 40));
    }
    const mine = answer;
    const sheet = await made();
    if (sheet || (mine === answer && !isBehind())) {
      return sheet;
    }
  }
}

/** Calls the page by its job. */
export function titled() {
  const { job } = store.job;
  document.title = job ? `${job} – airfit` : 'airfit: the counter page';
}

$('print').addEventListener('click', async () => {
  if (await settled()) {
    window.print();
  } else {
    say('There is no sheet to print yet.');
  }
});
// Laid out only then: it is the printer's, and a key need not wait for it.
window.addEventListener('beforeprint', () => {
  if (answer?.sheet) {
    const sheet = takenApart(answer.sheet.page);
    document.title = sheet.title;
    layOut($('paper'), sheet);
  }
});
window.addEventListener('afterprint', () => {
  takeAway($('paper'));
  titled();
});
$('sheet-save').addEventListener('click', async () => {
  const sheet = await settled();
  if (sheet) {
    download(fileName(store.job, '.html'), sheet.page, 'text/html');
  }
});
$('reasons-save').addEventListener('click', async () => {
  if (await settled()) {
    // The working takes long, so it is made only when it is wanted.
    const got = await printer.ask([sheetCall(answer.files, 'reasons')]);
    const { answer: sheet, refused } = got?.answers[0] ?? {};
    if (sheet?.reasons) {
      download(fileName(store.job, '-reasons.html'), sheet.reasons, 'text/html');
    } else {
      say(refused?.message ?? 'What it rests on was not made; press again.');
    }
  }
});
