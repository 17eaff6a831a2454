// Whether every link of the site leads somewhere.

/** The names of the places of a page. */
export function places(html) {
  return new Set([...html.matchAll(/\bid="([^"]*)"/g)].map(([, id]) => id));
}

/**
 * The links that lead nowhere, each "PAGE: TARGET".
 *
 * @param pages the HTML of each page, by its path in the site
 * @param files the paths of the other files of the site
 */
export function dead(pages, files) {
  const ids = new Map([...pages].map(([path, html]) => [path, places(html)]));
  const found = [];
  for (const [path, html] of pages) {
    for (const [, target] of html.matchAll(/\b(?:href|src)="([^"]*)"/g)) {
      if (!leads(path, target, ids, files)) {
        found.push(`${path}: ${target}`);
      }
    }
  }
  return [...new Set(found)];
}

function leads(path, target, ids, files) {
  if (target.startsWith('data:')) {
    return true;
  }
  const [file, place] = target.split('#');
  const to = file === '' ? path : resolved(path, file);
  if (to === undefined || !(ids.has(to) || files.has(to))) {
    return false;
  }
  return place === undefined || (ids.get(to)?.has(decodeURIComponent(place)) ?? false);
}

/** The path of a target that stands on a page; undefined if it lies outside of the site, or has a host. */
export function resolved(path, target) {
  if (/^[a-z]+:|^\//i.test(target)) {
    return undefined;
  }
  const parts = path.split('/').slice(0, -1);
  for (const part of decodeURIComponent(target).split('/')) {
    if (part === '..') {
      if (parts.length === 0) {
        return undefined;
      }
      parts.pop();
    } else if (part !== '.' && part !== '') {
      parts.push(part);
    }
  }
  return parts.join('/');
}
