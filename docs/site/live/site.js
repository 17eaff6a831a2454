'use strict';
// The script of every page: the search, a button that copies a program, and the list beside the text on a wide screen.
// A page without it reads as well.
(() => {
  const up = document.body.dataset.up;

  /** How many places are shown. */
  const MOST = 12;

  /** Letters around the first word that was found. */
  const BEFORE = 60;
  const AFTER = 150;

  /** Long lists of numbers and of sources stand behind what explains. */
  const LISTS = /^(verification\/|sources)/;

  function normal(text) {
    return text
      .toLowerCase()
      .normalize('NFD')
      .replace(/\p{M}/gu, '')
      .replace(/[‐-―−]/g, '-');
  }

  /** Words as people type them: 1/4, -6, dm³/(s·bar) and java names stay whole enough. */
  function terms(text) {
    const words = normal(text).match(/[\p{L}\p{N}%°][\p{L}\p{N}%°/.,'_-]*/gu) ?? [];
    return words.map((word) => word.replace(/[.,'-]+$/, ''));
  }

  /** The project's name stands on every page. Who types no more of it than "air" means air. */
  const NAME = 'airfit';
  const NOT_NAME = 'air';

  /** Where the text has the term at the beginning of a word; -1 if nowhere. */
  function begins(text, term, isWhole = false) {
    for (let at = text.indexOf(term); at >= 0; at = text.indexOf(term, at + 1)) {
      const isBegun = at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]);
      const isEnded = !isWhole || !/[\p{L}\p{N}]/u.test(text[at + term.length] ?? ' ');
      const isName = NOT_NAME.startsWith(term) && text.startsWith(NAME, at);
      if (isBegun && isEnded && !isName) {
        return at;
      }
    }
    return -1;
  }

  /** A word that stands there whole counts twice as much as one that only begins so. */
  function weight(text, word) {
    return begins(text, word) < 0 ? 0 : begins(text, word, true) < 0 ? 1 : 2;
  }

  /** The question, and the same with our words in place of those of the trade. */
  function meant(question, synonyms) {
    const asked = ` ${normal(question).trim()} `;
    const others = synonyms
      .filter(([trade]) => asked.includes(` ${trade} `))
      .map(([trade, ours]) => asked.replace(` ${trade} `, ` ${ours} `));
    return [asked, ...others].map(terms).filter((words) => words.length > 0);
  }

  function score({ title, text, whole }, words) {
    let sum = 0;
    for (const word of words) {
      const inTitle = weight(title, word);
      const inText = weight(text, word);
      if (inTitle === 0 && inText === 0) {
        return 0;
      }
      sum += inTitle > 0 ? 3 * inTitle : 0.5 * inText;
    }
    const phrase = words.join(' ');
    return sum + (begins(title, phrase) >= 0 ? 8 : 0) + (begins(text, phrase) >= 0 ? 4 : 0) + (whole ? 2 : 0);
  }

  /** The best places for a question: each {page, chapter, at, title, text, words, score}. */
  function found(question, { pages, synonyms, places }) {
    const asked = meant(question, synonyms);
    return places
      .map(([page, at, title, text]) => {
        const place = { title: normal(title), text: normal(text), whole: at === '' };
        const best = asked
          .map((words) => ({ words, score: score(place, words) }))
          .reduce((a, b) => (b.score > a.score ? b : a), { score: 0 });
        const [path, chapter] = pages[page];
        const behind = LISTS.test(path) ? 0.5 : 1;
        return { page: path, chapter, at, title, text, words: best.words, score: best.score * behind };
      })
      .filter((one) => one.score > 0)
      .sort((a, b) => b.score - a.score)
      .slice(0, MOST);
  }

  /** The text around the first word, that word marked. */
  function excerpt({ text, words }) {
    const plain = normal(text);
    const places = words.map((word) => [begins(plain, word), word]).filter(([at]) => at >= 0);
    const box = document.createElement('span');
    box.className = 'quiet';
    if (places.length === 0 || plain.length !== text.length) {
      box.textContent = text.slice(0, AFTER);
      return box;
    }
    const [at, word] = places.reduce((a, b) => (b[0] < a[0] ? b : a));
    const from = text.lastIndexOf(' ', Math.max(0, at - BEFORE)) + 1;
    const mark = document.createElement('mark');
    mark.textContent = text.slice(at, at + word.length);
    box.append(
      (from > 0 ? '… ' : '') + text.slice(from, at),
      mark,
      text.slice(at + word.length, at + AFTER) + (at + AFTER < text.length ? ' …' : ''),
    );
    return box;
  }

  let bringing;
  /** The index is read when somebody begins to search. */
  function places() {
    bringing ??= new Promise((resolve, reject) => {
      const script = document.createElement('script');
      script.src = `${up}search-index.js`;
      script.onload = () => resolve(globalThis.airfitPlaces);
      script.onerror = reject;
      document.head.append(script);
    });
    return bringing;
  }

  function search() {
    const form = document.createElement('form');
    form.className = 'search';
    form.setAttribute('role', 'search');
    form.innerHTML = `<label for="search">Search</label>
<input id="search" type="search" autocomplete="off" spellcheck="false">
<div class="found" hidden><p role="status"></p><ol></ol></div>`;
    document.querySelector('header .name').after(form);
    const [field, box] = [form.querySelector('input'), form.querySelector('.found')];
    const [status, list] = [box.querySelector('p'), box.querySelector('ol')];
    const close = () => {
      box.hidden = true;
    };
    const show = async () => {
      const question = field.value;
      if (terms(question).length === 0) {
        close();
        return;
      }
      const all = await places();
      if (question !== field.value) {
        return;
      }
      const best = found(question, all);
      const first = best.length === MOST ? 'The first ' : '';
      status.textContent = best.length === 0 ? 'Nothing found.' : `${first}${best.length} found`;
      list.replaceChildren(
        ...best.map((one) => {
          const item = document.createElement('li');
          const link = document.createElement('a');
          link.href = `${up}${one.page}${one.at ? `#${one.at}` : ''}`;
          link.textContent = one.title;
          const chapter = document.createElement('span');
          chapter.className = 'quiet';
          chapter.textContent = one.chapter === one.title ? '' : ` · ${one.chapter}`;
          item.append(link, chapter, document.createElement('br'), excerpt(one));
          return item;
        }),
      );
      box.hidden = false;
    };
    field.addEventListener('focus', () => places(), { once: true });
    field.addEventListener('input', show);
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      list.querySelector('a')?.click();
    });
    form.addEventListener('keydown', (event) => {
      const links = [...list.querySelectorAll('a')];
      const at = links.indexOf(document.activeElement);
      if (event.key === 'Escape') {
        close();
        field.focus();
      } else if (event.key === 'ArrowDown' && links.length > 0) {
        event.preventDefault();
        links[Math.min(at + 1, links.length - 1)].focus();
      } else if (event.key === 'ArrowUp' && at >= 0) {
        event.preventDefault();
        (links[at - 1] ?? field).focus();
      }
    });
    list.addEventListener('click', close);
    document.addEventListener('click', (event) => {
      if (!form.contains(event.target)) {
        close();
      }
    });
  }

  /** A program is copied whole, imports and all. */
  function copying() {
    if (!navigator.clipboard) {
      return;
    }
    for (const code of document.querySelectorAll('.code')) {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'copy';
      button.textContent = 'Copy';
      button.addEventListener('click', async () => {
        await navigator.clipboard.writeText(`${code.querySelector('code').textContent}\n`);
        button.textContent = 'Copied';
        setTimeout(() => {
          button.textContent = 'Copy';
        }, 2000);
      });
      code.append(button);
    }
  }

  function beside() {
    const details = document.querySelector('nav.beside details');
    if (details) {
      const wide = matchMedia('(min-width: 75rem)');
      const follow = () => {
        details.open = wide.matches;
      };
      wide.addEventListener('change', follow);
      follow();
    }
  }

  globalThis.airfitSearch = { found, terms };
  search();
  copying();
  beside();
})();
