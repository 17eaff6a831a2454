// What airfit-desk.mjs exports: the calls of the desk page. Quantities are texts with their unit, such as "90 psig".

/** Texts of files by name. Of a path in a file the last part counts: "sets/workshop.csv" is "workshop.csv". */
export type Files = Record<string, string>;

export interface FileAsked {
  /** The text of the file, what JSON.parse made of it, or its name among the files. A table is given as text. */
  file: string | object;
  /** The files that it names, and perhaps itself. */
  files?: Files;
  /** `[]` leaves the page out, which is faster. */
  only?: "page"[];
}

export interface Caution {
  title: string;
  text: string;
  source: string;
}

/** The answer to a file. Show the limits beside it, and the cautions. */
export interface FileAnswer {
  /** "refused": it is for another medium than compressed air. */
  kind: "answered" | "refused";
  /** The main line of the answer, or why there is none. */
  headline: string;
  title: string;
  customer: string;
  inShort: { what: string; text: string }[];
  /** What the numbers rest on, and where they end. */
  limits: string[];
  cautions: Caution[];
  /** Empty here: the program and the service write the sheet as text, with the working. */
  text: string;
  /** The sheet as a whole HTML document; empty where it is not wanted. */
  page: string;
}

/** What the air of a plant does over a day, docs/day-file.md. */
export function day(asked: FileAsked): FileAnswer;

/** What is wrong in a run by its gauges, docs/diagnosis-file.md. */
export function diagnosis(asked: FileAsked): FileAnswer;

/** Water and purity, docs/water-file.md. */
export function water(asked: FileAsked): FileAnswer;

/** What the leaks of a ledger cost, docs/leak-ledger-file.md; the file is a table. */
export function leaks(asked: FileAsked): FileAnswer;

/** Which coupling profile to keep, docs/inventory-file.md; it names a catalogue. */
export function inventory(asked: FileAsked): FileAnswer;

/** The faults and gaps of a price list, docs/price-list-file.md; it names the list. */
export function priceList(asked: FileAsked): FileAnswer;

/** The answers of a job as pencil cards, docs/pencil-card.md; it names a catalogue. */
export function cards(asked: FileAsked): FileAnswer;

export interface CondensateAsked {
  /** Of the air taken in, such as "25 °C"; a range such as "15 to 30 °C" is taken at its worst. */
  temperature: string;
  /** Relative humidity of the air taken in, "70 %" or 0.7. */
  humidity: string | number;
  /** Gauge pressure behind the compressor. */
  pressure: string;
  /** Free air, such as "50 L/s ANR" or "100 scfm". */
  air: string;
  /** The temperature that the compressed air is cooled to. */
  cooled: string;
  /** The time for which water is counted, such as "8 h". */
  time: string;
  /** Absolute; 1.013 bar(a) where nobody says. */
  atmosphere?: string;
  units?: "US" | "SI";
  /** What the line carries; anything but compressed air is refused. */
  medium?: string;
  only?: "page"[];
}

/** How much water falls out where compressed air is cooled, and its dew points. */
export function condensate(asked: CondensateAsked): FileAnswer;

export interface LeakAsked {
  /** Its diameter, such as "2 mm" or "1/16 to 1/8 in". */
  hole: string;
  /** Such as "sharp edge"; where nobody says, all discharge coefficients that are published. */
  edge?: string;
  /** Gauge pressure at the leak. */
  pressure: string;
  /** Electric power while the compressor delivers. */
  loadedPower: string;
  /** Electric power while it does not, such as "8 to 10 kW"; "0 kW" where it stops. */
  unloadedPower: string;
  /** What it delivers while loaded, as free air. */
  delivery: string;
  /** Hours in the year under pressure. */
  hours: string | number;
  /** The price of a kWh, such as "0.15 USD". */
  electricity: string;
  /** What the repair costs, in the same currency. */
  repairCost?: string;
  /** Absolute; 1.013 bar(a) where nobody says. */
  atmosphere?: string;
  /** Of the air; 20 °C where nobody says. */
  temperature?: string;
  units?: "US" | "SI";
  medium?: string;
  only?: "page"[];
}

/** What one leak costs by its hole, and when its repair is paid back. */
export function leak(asked: LeakAsked): FileAnswer;
