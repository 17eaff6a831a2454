// The desk page: files and two forms in, a sheet out.
import { $, download, say, whenOpened } from './page.mjs';
import { WrongFile, requireSmall } from './bounds.mjs';
import { el } from './elements.mjs';
import { fieldAt, showWrong } from './fields.mjs';
import { ANSWERED, kindOf } from './kinds.mjs';
import { takenApart } from './pages.mjs';
import { layOut, takeAway } from './paper.mjs';
import { Reckoner } from './reckoner.mjs';
import { showSheet } from './sheet.mjs';

/** Numbers to try the forms with; invented. */
const TRIED = {
  condensate: {
    temperature: '28 °C',
    humidity: '65 %',
    pressure: '7.5 bar(g)',
    air: '60 L/s ANR',
    cooled: '30 °C',
    time: '8 h',
    atmosphere: '',
  },
  leak: {
    hole: '1.5 to 2 mm',
    edge: '',
    pressure: '6.8 bar(g)',
    repairCost: '35 EUR',
    loadedPower: '22 kW',
    unloadedPower: '6 to 7 kW',
    delivery: '55 L/s ANR',
    hours: '3800',
    electricity: '0.21 EUR',
    atmosphere: '',
  },
};

const reckoner = new Reckoner($('library').textContent);
/** Texts of the open files by name. */
const texts = new Map();
/** The name of the file that is answered; empty where none is. */
let shown = '';
/** The answer that stands at the right, and the name of its file. */
let answered = null;
let asks = 0;

/** Asks the library; `refuse` is told what cannot be used. */
async function ask(call, asked, name, refuse) {
  const mine = ++asks;
  document.body.classList.add('working');
  $('said').textContent = 'Working it out';
  let got = null;
  try {
    got = await reckoner.ask([{ call, args: [{ ...asked, only: ['page'] }] }]);
  } catch (e) {
    say(`The library did not answer: ${e.message}`);
  }
  if (mine !== asks) {
    return;
  }
  document.body.classList.remove('working');
  const { answer, refused } = got?.answers[0] ?? {};
  if (answer) {
    show(answer, name);
  } else {
    show(null);
    if (refused) {
      refuse(refused);
    }
  }
}

/** As much of a line as the foot of a telephone has room for. */
function shortened(line) {
  return line.length > 90 ? `${line.slice(0, line.lastIndexOf(' ', 88))} …` : line;
}

/** Shows a sheet; none where there is none. */
function show(answer, name = '') {
  answered = answer && { page: answer.page, name };
  document.body.classList.toggle('ready', Boolean(answer));
  $('sheet').classList.toggle('full', Boolean(answer));
  $('take').hidden = !answer;
  $('empty').hidden = Boolean(answer);
  $('said').textContent = answer ? answer.headline : '';
  $('jump').textContent = answer ? shortened(answer.headline) : 'The sheet';
  document.title = answer?.title ? `${answer.title} – airfit` : 'airfit: the desk page';
  if (answer) {
    showSheet($('sheet'), answer.page);
  }
}

/** Answers one of the open files. */
function answerFile(name) {
  shown = name;
  showOpened();
  clearWrong();
  const kind = kindOf(texts.get(name));
  const files = Object.fromEntries(texts);
  return ask(kind.call, { file: name, files }, name.replace(/\.[^.]*$/, ''), ({ message }) => {
    $('file-wrong').textContent = message;
  });
}

function clearWrong() {
  $('file-wrong').textContent = '';
  document.querySelectorAll('form .warn').forEach((line) => (line.textContent = ''));
  showWrong(document, []);
}

/** Lists the open files, each with what it is. */
function showOpened() {
  $('opened').replaceChildren(
    ...[...texts].map(([name, text]) => {
      const kind = kindOf(text);
      const isNow = name === shown;
      return el(
        'li',
        { class: isNow ? 'now' : undefined },
        el('span', { class: 'name' }, name, el('small', {}, kind ? kind.what : 'named by another file, or unknown')),
        kind && !isNow && el('button', { type: 'button', 'aria-label': `Answer it: ${name}`, onclick: () => answerFile(name) }, 'Answer it'),
        el(
          'button',
          {
            type: 'button',
            class: 'link',
            'aria-label': `Put it away: ${name}`,
            onclick: () => {
              texts.delete(name);
              if (isNow) {
                shown = '';
                clearWrong();
                show(null);
              }
              showOpened();
              $('open').focus();
            },
          },
          'Put it away',
        ),
      );
    }),
  );
}

/** Takes files, [name, text], and answers the one among them that can be; or the one before, whose file may be here now. */
function take(files) {
  for (const [name, text] of files) {
    texts.set(name, text);
  }
  const newest = files.map(([name]) => name).filter((name) => kindOf(texts.get(name))).at(-1);
  const name = newest ?? shown;
  if (name) {
    return answerFile(name);
  }
  showOpened();
  $('file-wrong').textContent =
    files.length > 0
      ? `${files.at(-1)[0]}: is no file that is answered here by itself; see which files are answered.`
      : '';
  return undefined;
}

async function openFiles(files) {
  const read = [];
  const told = [];
  for (const file of files) {
    try {
      requireSmall(file.name, file.size);
      read.push([file.name, await file.text()]);
      told.push(`${file.name} is open.`);
    } catch (e) {
      told.push(e instanceof WrongFile ? e.message : `${file.name}: cannot be read`);
    }
  }
  say(told.join(' '));
  if (read.length > 0) {
    await take(read);
  }
}

whenOpened(openFiles);
$('paste').addEventListener('click', () => {
  const text = $('pasted').value;
  const kind = kindOf(text);
  if (!kind) {
    clearWrong();
    $('file-wrong').textContent = 'This text is no file that is answered here; see which files are answered.';
    return;
  }
  take([[kind.field ? `pasted.json` : 'pasted.csv', text]]);
});

for (const kind of ANSWERED) {
  $('invented').append(el('option', { value: kind.call }, kind.what));
  $('kinds').append(
    el('dt', {}, kind.what),
    el('dd', {}, `${kind.answers}${kind.field ? `; JSON with ${kind.field}` : ''}.`),
  );
}
$('invented').addEventListener('change', ({ target }) => {
  const kind = ANSWERED.find(({ call }) => call === target.value);
  if (kind) {
    texts.clear();
    // A job names its catalogue by that name; another example has a catalogue too.
    const files = kind.example.map((name) => [
      name === 'parts.json' ? 'catalogue.json' : name,
      $(name).textContent.trim() + '\n',
    ]);
    say('An invented example. Open a file of your own in its place.');
    take(files);
  }
});

/** What is typed into a form. */
function typedIn(form) {
  const asked = {};
  for (const field of form.querySelectorAll('[data-field]')) {
    if (field.value.trim() !== '') {
      asked[field.dataset.field] = field.value.trim();
    }
  }
  return asked;
}

for (const form of document.querySelectorAll('form')) {
  form.addEventListener('submit', (e) => {
    e.preventDefault();
    shown = '';
    showOpened();
    clearWrong();
    ask(form.id, typedIn(form), form.id, ({ field, message }) => {
      const place = field ? fieldAt(form, field) : null;
      const words = place ? message.replace(`${field}: `, '') : message;
      if (place) {
        showWrong(form, [{ field, words }]);
        place.focus();
      } else {
        form.querySelector('.warn').textContent = words;
      }
      $('said').textContent = 'One entry cannot be used.';
    });
  });
  form.querySelector('[data-try]').addEventListener('click', () => {
    for (const [field, value] of Object.entries(TRIED[form.id])) {
      form.querySelector(`[data-field="${field}"]`).value = value;
    }
    form.requestSubmit();
  });
}

$('print').addEventListener('click', () => window.print());
$('sheet-save').addEventListener('click', () => download(`${answered.name}.html`, answered.page, 'text/html'));
// Laid out only then, as the counter page does.
let titled = '';
window.addEventListener('beforeprint', () => {
  if (answered) {
    const sheet = takenApart(answered.page);
    titled = document.title;
    document.title = sheet.title;
    layOut($('paper'), sheet);
  }
});
window.addEventListener('afterprint', () => {
  if (answered) {
    takeAway($('paper'));
    document.title = titled;
  }
});
