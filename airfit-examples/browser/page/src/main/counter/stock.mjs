// Where parts come from. A page asks one interface: name(), file(), parts(). Here a file that the user opened answers;
// a served page would ask a service in the same words.

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

  /** All parts, each with kind, id and name. */
  async parts() {
    return Array.isArray(this.#content.parts) ? this.#content.parts : [];
  }

  /** Ids and names of the profiles that stand in the catalogue itself. */
  async profiles() {
    return Array.isArray(this.#content.profiles) ? this.#content.profiles : [];
  }
}
