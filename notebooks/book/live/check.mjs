// Exercises that check an answer in the page.
import { rows } from './follow.mjs';
import { escaped, signs } from './text.mjs';

/** Puts a field and a button in place of the line to write on. */
export function exercises(library) {
  for (const line of document.querySelectorAll('p.blank[data-exercise]')) {
    const id = line.dataset.exercise;
    const form = document.createElement('form');
    form.className = 'check';
    form.setAttribute('aria-label', `answer ${id}`);
    form.innerHTML = `<label for="a-${id}">Answer${line.dataset.unit ? ` [${escaped(line.dataset.unit)}]` : ''}</label>
<input id="a-${id}" type="text" autocomplete="off" spellcheck="false" aria-describedby="r-${id}">
<button>Check</button>
<p id="r-${id}" class="reply" role="status"></p>`;
    const [field, reply] = [form.querySelector('input'), form.querySelector('.reply')];
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      const [{ name, text }] = rows(library.check(id, field.value));
      reply.className = `reply ${name.replace(' ', '-')}`;
      reply.innerHTML = signs(escaped(text));
      field.setAttribute('aria-invalid', String(name !== 'right'));
    });
    line.after(form);
    line.classList.add('replaced');
  }
}
