// The sheet that is handed over, as the library's own page: one renderer for the printer, the job-sheet program and
// this page.

/** The page in parts: what it is called, its style, its elements. Nothing of it runs: it is parsed, not loaded. */
export function takenApart(page) {
  const styles = [];
  // A style inside would be held against this page's policy while it is parsed.
  const bare = page.replace(/<style>([\s\S]*?)<\/style>/g, (_, style) => {
    styles.push(style);
    return '';
  });
  const parsed = new DOMParser().parseFromString(bare, 'text/html');
  return {
    title: parsed.querySelector('title')?.textContent ?? 'Job sheet',
    style: styles.join('\n'),
    body: [...parsed.body.children],
  };
}

/** A drawing of the library as an element that only shows. */
export function drawn(svg) {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  return parsed.localName === 'svg' ? parsed : null;
}
