// What every script in JavaScript answers before it does anything: --help, which is the comment at its head, --version,
// and words that it cannot use.
import { readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** Ends a script whose words cannot be used, with one line on the error output. */
export function refused(url, complaint) {
  console.error(`${relative(root, fileURLToPath(url))}: ${complaint}; --help tells how it is called`);
  process.exit(2);
}

/** The words of a call; ends it where they ask for help or the version, are an option, or are too few or too many. */
export function asked(url, least, most) {
  const words = process.argv.slice(2);
  if (words.includes('--help') || words.includes('-h')) {
    const lines = readFileSync(fileURLToPath(url), 'utf8').split('\n').slice(1);
    const head = lines.slice(0, lines.findIndex((line) => !line.startsWith('//')));
    head.forEach((line) => console.log(line.replace(/^\/\/ ?/, '')));
    console.log('--help or -h prints this, --version the version.');
    process.exit(0);
  }
  if (words.length === 1 && words[0] === '--version') {
    const version = readFileSync(join(root, 'pom.xml'), 'utf8').match(/^ {2}<version>(.*)<\/version>$/m)[1];
    console.log(`${relative(root, fileURLToPath(url))} ${version}`);
    process.exit(0);
  }
  const option = words.find((word) => word.startsWith('-'));
  if (option) {
    refused(url, `${option} is no option`);
  }
  if (words.length < least || words.length > most) {
    refused(url, `too ${words.length < least ? 'few' : 'many'} words, ${words.length}`);
  }
  return words;
}
