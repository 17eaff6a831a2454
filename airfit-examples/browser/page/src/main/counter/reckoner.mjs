// Asks the library, which works in a worker of its own so that no key waits for it. Of questions that come while one is
// worked on only the newest is asked; one that takes long is given up for a newer.

const PATIENCE_MS = 2500;

export class Reckoner {
  #source;
  #worker;
  #asked = null;
  #waiting = null;
  #count = 0;
  #impatient = 0;
  /** What the library can be asked. */
  calls = null;

  constructor(text) {
    this.#source = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
    this.#begin();
  }

  #begin() {
    this.#worker = new Worker(this.#source);
    this.#worker.onmessage = ({ data }) => this.#told(data);
    this.#worker.onerror = (e) => this.#failed(e.message || 'the library did not start');
  }

  /** Asks calls, [{call, args}]; resolves to their answers, or to null if a newer question came in between. */
  ask(calls) {
    return new Promise((resolve, reject) => {
      this.#waiting?.resolve(null);
      this.#waiting = { id: ++this.#count, calls, resolve, reject };
      if (!this.#asked) {
        this.#send();
      } else if (!this.#impatient) {
        const left = PATIENCE_MS - (performance.now() - this.#asked.since);
        this.#impatient = setTimeout(() => this.#giveUp(), Math.max(0, left));
      }
    });
  }

  #send() {
    clearTimeout(this.#impatient);
    this.#impatient = 0;
    this.#asked = this.#waiting;
    this.#waiting = null;
    if (this.#asked) {
      this.#asked.since = performance.now();
      this.#worker.postMessage({ id: this.#asked.id, calls: this.#asked.calls });
    }
  }

  #told({ id, ready, answers, ms }) {
    if (ready) {
      this.calls = ready;
      return;
    }
    if (this.#asked?.id === id) {
      this.#asked.resolve(this.#waiting ? null : { answers, ms });
      this.#send();
    }
  }

  #giveUp() {
    this.#worker.terminate();
    this.#asked?.resolve(null);
    this.#begin();
    this.#send();
  }

  #failed(message) {
    this.#asked?.reject(new Error(message));
    this.#asked = null;
    this.#send();
  }
}
