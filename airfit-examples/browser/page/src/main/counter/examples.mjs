// What stands in the page to try it with; all of it is invented.
import { $ } from './page.mjs';

export function exampleJob() {
  return JSON.parse($('example-job').textContent);
}

export function exampleStock() {
  return { name: 'catalogue.json', content: JSON.parse($('example-stock').textContent) };
}

/** A set as the text of its file. */
export function exampleSet() {
  return $('example-set').textContent.trim();
}
