// Puts what follows beside what was told.
import { $, many } from './page.mjs';
import {
  cautionsPart,
  faultPart,
  likeliest,
  otherSetPart,
  plugPart,
  refusal,
  selectedParts,
  setPart,
  threadPart,
  wantedPart,
  wrongPart,
} from './answers.mjs';
import { el } from './elements.mjs';
import { inPageWords, labelOf, showWrong } from './fields.mjs';
import { goTo } from './hand.mjs';
import { hasPlug, isFresh } from './job.mjs';

/**
 * Shows what was answered: {wrong, faults, plug, selected}, what is still wanted, whether there is a set, and whether
 * the job was judged with another.
 */
export function show(told, wanted, isKnown, job, otherSet) {
  const wrong = told.wrong
    .filter(({ field }, i) => told.wrong.findIndex((other) => other.field === field) === i)
    .map(({ field, words }) => ({ field, words: inPageWords(words) }));
  const placedAt = showWrong(document, wrong);
  const faults = [
    ...new Set([
      ...told.faults.map(inPageWords),
      ...wrong
        .filter((_, i) => !placedAt[i])
        .map(({ field, words }) => `The job file, which cannot be changed here in this: ${field}: ${words}`),
    ]),
  ];
  const plug = told.plug && plugInWordsOfThePage(told.plug);
  const selected = told.selected && inWordsOfThePage(told.selected);
  const go = { goTo, takeNext: (size) => goTo(`atHand.readings.${size}`) };
  const open = new Set([...$('shown').querySelectorAll('details[open]')].map((each) => each.dataset.fold));
  const nodes =
    selected?.kind === 'refused'
      ? [refusal(selected.headline)]
      : [
          otherSetPart(otherSet, go),
          faultPart(faults),
          wrongPart(
            wrong.filter((_, i) => placedAt[i]).map(({ field }) => ({ field, what: labelOf(field) })),
            go,
          ),
          setPart(isKnown, hasPlug(job), go),
          plug && isKnown && (hasPlug(job) || isFresh(job)) && plugPart(plug, hasPlug(job), selected !== null, go),
          threadPart(plug?.thread),
          ...(selected ? selectedParts(selected) : []),
          selected || isFresh(job) ? null : wantedPart(wanted, go),
          !selected && plug && isKnown && hasPlug(job) ? cautionsPart(plug.cautions) : null,
        ].flat();
  const shown = nodes.filter(Boolean);
  if (shown.length === 0) {
    shown.push(el('p', { class: 'empty' }, 'Nothing yet. Begin anywhere: with the plug, the thread, the tool or the run. '
      + 'Or try the example.'));
  }
  replaceBy($('shown'), shown);
  $('shown')
    .querySelectorAll('details')
    .forEach((each) => {
      each.open = open.has(each.dataset.fold);
    });
  const summary = summed(told, job, wrong.length + faults.length, isKnown, wanted);
  if ($('said').textContent !== summary) {
    $('said').textContent = summary;
    $('jump').textContent = summary || 'What follows from it';
  }
}

/** What was found of the plug, where it speaks of fields of the job file. */
function plugInWordsOfThePage(plug) {
  const lists = ['open', 'slips', 'waysOut', 'takenForGranted'].filter((name) => Array.isArray(plug[name]));
  return { ...plug, ...Object.fromEntries(lists.map((name) => [name, plug[name].map(inPageWords)])) };
}

/** What was found and chosen, likewise. */
function inWordsOfThePage(selected) {
  return {
    ...selected,
    questions: selected.questions.map(inPageWords),
    wrong: selected.wrong.map(inPageWords),
    remarks: selected.remarks.map(({ what, text }) => ({ what: inPageWords(what), text: inPageWords(text) })),
  };
}

/** Puts elements in a place; those that stand there already stay, with what was unfolded or scrolled in them. */
function replaceBy(place, elements) {
  const wanted = new Set(elements);
  [...place.children].filter((each) => !wanted.has(each)).forEach((each) => each.remove());
  elements.forEach((each, i) => {
    if (place.children[i] !== each) {
      place.insertBefore(each, place.children[i] ?? null);
    }
  });
}

/** All of it in a line or two, for those who listen, and for the foot of a telephone. */
function summed({ selected, plug }, job, wrong, isKnown, wanted) {
  if (selected?.kind === 'refused') {
    return `Refused: ${selected.headline.split('. ', 1)[0]}.`.replace('..', '.');
  }
  const said = [];
  if (wrong > 0) {
    said.push(wrong === 1 ? 'One entry cannot be used.' : `${wrong} entries cannot be used.`);
  }
  const first = plug && hasPlug(job) ? likeliest(plug.chances)[0] : undefined;
  if (first) {
    said.push(`${first.what} ${first.chance}.`);
  } else if (hasPlug(job) && !isKnown) {
    said.push('Without a reference set no plug can be named.');
  }
  if (plug?.thread && !selected) {
    said.push(`Thread: ${plug.thread.sentence.split(/[;.](?: |$)/, 1)[0]}.`);
  }
  if (selected) {
    const best = selected.kind === 'fits' ? selected.proposals[0] : null;
    said.push(
      best
        ? `${many(best.parts.length, 'part')} recommended.`
        : selected.kind === 'nothingFits'
          ? 'Nothing in stock fits.'
          : 'No parts chosen yet.',
    );
    if (selected.questions.length > 0) {
      said.push(`${many(selected.questions.length, 'question')} open.`);
    }
  } else if (!isFresh(job) && wanted.length > 0) {
    said.push(`${many(wanted.length, 'thing')} still to be told.`);
  }
  return said.join(' ');
}
