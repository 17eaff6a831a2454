// What the library's own pages hold, taken apart: the sheet to hand over, and what it rests on. One renderer makes them
// for the printer, the job-sheet program and this page.

/** The sheet and its reasons as parts to show. Nothing of them runs: they are parsed, not loaded. */
export function takenApart({ page, reasons }) {
  const sheet = parsed(page);
  const why = parsed(reasons ?? '');
  const sections = new Map([...sheet.querySelectorAll('main > section')].map((each) => [heading(each), each]));
  const behind = sectionsOf(why);
  const refused = [...sheet.querySelectorAll('main > h2')].find((each) => each.textContent === 'Refused');
  return {
    title: sheet.querySelector('h1')?.textContent ?? '',
    style: [...sheet.querySelectorAll('style')].map((each) => each.textContent).join('\n'),
    body: [...sheet.body.children],
    refused: refused ? [...sheet.querySelectorAll('main > p')] : null,
    facts: sections.get('What was found') ?? null,
    parts: sections.get('Recommended parts') ?? null,
    open: sections.get('Still open') ?? null,
    care: sheet.querySelector('section.care'),
    behind,
  };
}

/** What stands under each heading of a page. */
function sectionsOf(page) {
  const sections = new Map();
  let at = null;
  for (const element of page.querySelectorAll('main > *, main > section > *')) {
    if (element.localName === 'h2') {
      at = [];
      sections.set(element.textContent, at);
    } else if (at && element.localName !== 'section') {
      at.push(element);
    }
  }
  return sections;
}

function heading(section) {
  return section.querySelector('h2')?.textContent ?? '';
}

function parsed(text) {
  return new DOMParser().parseFromString(text, 'text/html');
}

/** The first drawing of the pressure under a heading: for a wide and for a narrow screen. */
export function chartUnder(behind, name) {
  return (behind.get(name) ?? []).find((each) => each.matches('figure.chart')) ?? null;
}

/** Why a part was chosen, by its id. */
export function reasonsOf(behind) {
  const found = new Map();
  for (const row of (behind.get('Why these parts') ?? []).flatMap((each) => [...each.querySelectorAll('tbody tr')])) {
    const id = row.querySelector('td.id')?.textContent;
    const why = row.lastElementChild?.textContent;
    if (id && why) {
      found.set(id, why);
    }
  }
  return found;
}
