// Where parts come from. The page asks one interface: name(), title(), file(), beside(). In the file that people keep a
// catalogue that they opened answers; in the served page a service answers, in the very same words.
import { WrongFile, recognised, requireSmall } from './bounds.mjs';

/** Stock from a catalogue file. */
export class FileStock {
  #name;
  #content;

  constructor(name, content) {
    this.#name = name;
    this.#content = content;
  }

  /** The name of the file. */
  name() {
    return this.#name;
  }

  /** How the shop calls its stock. */
  title() {
    return String(this.#content.catalogue ?? this.#name);
  }

  /** The catalogue as the project's file, an object. */
  async file() {
    return this.#content;
  }

  /** Texts of files that the catalogue names, such as its set, by name; here people open them. */
  async beside() {
    return {};
  }
}

const SERVICE_PATIENCE_MS = 20000;

/** Stock from a service: GET of an address beside the page, which answers a catalogue file. */
export class ServiceStock {
  #address;
  #fetch;
  #content = null;

  constructor(address, fetcher = (...asked) => fetch(...asked)) {
    this.#address = address;
    this.#fetch = fetcher;
  }

  name() {
    return nameOf(this.#address);
  }

  title() {
    return String(this.#content?.catalogue ?? this.name());
  }

  async file() {
    const { kind, content } = recognised(`${this.name()}`, await this.#text(this.#address));
    if (kind !== 'stock') {
      throw new WrongFile(this.name(), 'the service answered, but not with a catalogue of parts');
    }
    this.#content = content;
    return content;
  }

  /** The set that the catalogue names as "profileSet": GET of its name beside the catalogue. */
  async beside() {
    const set = this.#content?.profileSet;
    if (typeof set !== 'string') {
      return {};
    }
    const name = nameOf(set);
    const folder = this.#address.slice(0, this.#address.lastIndexOf('/') + 1);
    return { [name]: await this.#text(folder + encodeURIComponent(name)) };
  }

  /** The text at an address, read no further than a file may be large. */
  async #text(address) {
    const name = nameOf(decodeURIComponent(address));
    let answer;
    const given = { cache: 'no-cache', credentials: 'same-origin', signal: AbortSignal.timeout(SERVICE_PATIENCE_MS) };
    try {
      answer = await this.#fetch(address, given);
    } catch (e) {
      throw new WrongFile(name, unreached(e));
    }
    if (!answer.ok) {
      await answer.body?.cancel();
      throw new WrongFile(name, `the service answered ${answer.status}; nothing was taken from it, ask again later`);
    }
    try {
      return await bounded(name, answer);
    } catch (e) {
      throw e instanceof WrongFile ? e : new WrongFile(name, unreached(e));
    }
  }
}

function unreached(e) {
  return e.name === 'TimeoutError'
    ? `the service did not answer in ${SERVICE_PATIENCE_MS / 1000} seconds; ask again later`
    : 'the service cannot be reached; see whether this device has a connection, and ask again';
}

function nameOf(path) {
  return path.slice(path.lastIndexOf('/') + 1);
}

async function bounded(name, answer) {
  requireSmall(name, Number(answer.headers.get('content-length') ?? 0));
  const reader = answer.body.getReader();
  const decoder = new TextDecoder();
  let text = '';
  for (let bytes = 0; ; ) {
    const { done, value } = await reader.read();
    if (done) {
      return text + decoder.decode();
    }
    bytes += value.length;
    try {
      requireSmall(name, bytes);
    } catch (e) {
      await reader.cancel();
      throw e;
    }
    text += decoder.decode(value, { stream: true });
  }
}
