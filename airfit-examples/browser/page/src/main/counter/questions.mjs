// Questions about the plug and its thread, and what the answers tell, whatever else of the job is known.
import { at } from './paths.mjs';
import { asked } from './job.mjs';

/** What is asked about the plug: nothing where the library cannot be asked. */
export function plugAsked(calls, job, files) {
  if (!calls?.includes('identify')) {
    return [];
  }
  const hand = asked(job).atHand ?? {};
  return [{ call: 'identify', args: [{ ...hand, catalogue: 'stock.json', files, units: at(job, 'units') }] }];
}

export function plugAnswered(got) {
  return got;
}

export function threadAsked() {
  return [];
}

export function threadAnswered(got) {
  return got;
}
