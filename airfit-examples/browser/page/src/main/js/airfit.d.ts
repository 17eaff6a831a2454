/**
 * airfit for a web shop or a counter's own system: plain objects in and out, quantities as the texts people type, such
 * as "11.2 mm", "90 psig", "34 scfm". Every text of an answer is ready to be shown; it is plain text, no markup, but for
 * pictures (SVG), pages (HTML) and what is said to be one. Show plain text as text, never as markup.
 *
 * All calls can throw a {@link Refusal}.
 */

/** In which units an answer is told; left out, those in which most of what was asked is typed. */
export type Units = "SI" | "US";

/** Texts of files by name, such as { "job.json": "{…}", "catalogue.json": "{…}" }; folders in paths are passed over. */
export type Files = Record<string, string>;

/** What is thrown where something that was given cannot be used: an Error with what a form needs to point at it. */
export interface Refusal extends Error {
  /** "WrongField": what was asked. "WrongFile": a file that was given. */
  name: "WrongField" | "WrongFile";
  /** One line: the field or the file and its field, what was found there, what is accepted. */
  message: string;
  /** The file, for "WrongFile"; else "". */
  file: string;
  /** The path of the field, such as "readings.tip diameter" or "elements[2].bore"; "" for all of it. */
  field: string;
  /** What is accepted there; "" where the message alone says it. */
  accepted: string;
}

/** What must be heeded; to be shown with every answer that carries it. */
export interface Caution {
  title: string;
  text: string;
  /** What it rests on. */
  source: string;
}

/** A drawing: one SVG element, and the same told in words for those who do not see it (it is its label, too). */
export interface Picture {
  svg: string;
  alt: string;
}

/** A picture for a wide page and one for a telephone; `pictureStyle()` has the style of both. */
export interface Chart {
  wide: string;
  narrow: string;
  alt: string;
}

/** A pressure above the atmosphere, as it is told and as a number. */
export interface Pressure {
  text: string;
  bar: number;
}

// ---------------------------------------------------------------------------------------------------- identify

/** What lies on the counter, and the plugs it is compared with. */
export interface Hand {
  /**
   * A reference set: the text of a set file (JSON or CSV), or what JSON.parse made of it; a catalogue with profiles
   * does as well. Without one no plug can be named; it may be left out where only a thread was read, or only a socket is
   * at hand.
   */
  set?: string | object;
  /** Size and reading; several readings of one size are repeats of it. `choices().sizes` has the sizes. */
  readings?: Record<string, string | string[]>;
  /** One of `choices().calipers`; left out, "digital caliper 0.01 mm". */
  caliper?: string;
  /** "as new", or the most that wear can have taken off, such as "0.1 mm"; left out, what is usual. */
  worn?: string;
  /** Whether no near copies of the profiles are about. */
  noNearCopies?: boolean;
  /** The readings of its thread, as the field `thread` of a job file has them. */
  thread?: object;
  /** Whether only a socket is at hand, which has no outside that tells its profile. */
  socketOnly?: boolean;
  /** With `socketOnly`: the ids of the profiles in use in the shop. */
  profilesInUse?: string[];
  units?: Units;
  /** Whether to add the working. */
  working?: boolean;
}

export interface Candidate {
  /** The id of the profile in its set. */
  profile: string;
  name: string;
  /** Such as "> 99.9 %". */
  chance: string;
  probability: number;
  /** Whether the readings agree with it. */
  fits: boolean;
  /** How each reading lies, a sentence each. */
  why: string[];
}

export interface Next {
  size: string;
  /** What to do and what to expect of it. */
  text: string;
  /** How it is measured. */
  how: string;
  /** How much doubt it takes away on average [bit]. */
  bits: number;
}

export interface Identified {
  /**
   * "candidate": one stands out, and something is still open. "socketOnly": a socket alone tells nothing. "threadOnly":
   * nothing but the thread was read, and no set was given.
   */
  kind:
    | "identified"
    | "candidate"
    | "ambiguous"
    | "noMatch"
    | "insufficientData"
    | "socketOnly"
    | "threadOnly";
  /** The answer in a sentence, as the sheet to hand over tells it. */
  headline: string;
  /** What is still open, sentence by sentence. */
  open: string[];
  /** The profile that stands out, of "identified" and "candidate". */
  profile?: { id: string; name: string };
  /** The likeliest first, twelve at most. */
  candidates: Candidate[];
  /** All that it may be, slips, near copies and "none of these" among it; together 100 %. */
  chances: { what: string; chance: string; probability: number }[];
  /** The readings still worth taking, the best first. */
  next: Next[];
  /** Slips that would explain the readings, such as inches typed as millimetres. */
  slips: string[];
  /** Of a socket alone: how to go on. */
  waysOut: string[];
  /** What was taken for granted of wear, near copies and the caliper. */
  takenForGranted: string[];
  /** What thread it carries, where that was read. */
  thread?: { sentence: string; read: string };
  cautions: Caution[];
  /** The set, where one was given: its name and where its sizes come from. */
  set?: { name: string; provenance: string; canIdentify: boolean };
  /** The readings laid over the likeliest profiles; once something was read that the set knows. */
  picture?: Picture;
  /** As text, where it was asked for. */
  working?: string;
}

/** What the plug is. */
export function identify(hand: Hand): Identified;

// --------------------------------------------------------------------------------------------------- willItGo

export interface Goes {
  /** How the two ends go together, without anything between. */
  kind:
    | "sealsWithSealant"
    | "sealsDry"
    | "sealsOnFace"
    | "holdsWithClamp"
    | "holdsInGrip"
    | "locksOnClaws"
    | "notJudged"
    | "notToBeReliedOn"
    | "startsAndJams"
    | "doesNotFit";
  /** Whether they may be joined as they are. */
  sound: boolean;
  /** Whether they can be joined at all: as they are, through adapters, or not. */
  joined: "direct" | "throughAdapters" | "notJoined";
  sentence: string;
  /** How each end was read, where it may be meant otherwise. */
  remarks: string[];
  /** What goes between, in the order the air goes; empty where nothing has to. */
  between: string[];
  /** The joints with it: one where they go together as they are. */
  joints: { sentence: string; sealing?: string }[];
  /** What must be asked of what goes between. */
  toAsk: string[];
  /** What is bought for the joints beside the parts; "nothing" too. "" where they cannot be joined. */
  toBuy: string;
  /** How to put it together; "" where there is nothing to say. */
  assembly: string;
  cautions: Caution[];
  sources: string[];
}

/** Whether two ends go together, such as { one: "1/4 NPT male", other: "G 1/4 female" }. */
export function willItGo(ends: { one: string; other: string }): Goes;

// --------------------------------------------------------------------------------------------------------- run

export interface RunAsked {
  /** Such as "90 psig", or an object as the field `supply` of a job file has it. */
  supply: string | object;
  /** Such as "1.013 bar(a)"; left out, that by the sea, which `remarks` tells. */
  atmosphere?: string;
  /** What the air goes through, each as an item of `now` in a job file, such as { name, bore, length } or
   * { name, capacity }; `part`, the id of a part, where a catalogue is given. */
  elements: object[];
  /** The free air that flows, such as "34 scfm" or "16 L/s ANR". */
  flow: string;
  /** The pressure the tool needs, such as "90 psig"; left out, the answer does not say whether it is enough. */
  needed?: string;
  /** The text of a catalogue, or what JSON.parse made of it. */
  catalogue?: string | object;
  units?: Units;
  working?: boolean;
}

export interface Loss {
  name: string;
  /** What is lost, such as "0.31 bar". */
  loss: string;
  /** Of all that is lost, such as "42 %"; "" of the regulator at the supply, whose loss is not among them. */
  share: string;
  fraction: number;
  /** What is gained at the tool without it; "" of the regulator at the supply. */
  gain: string;
  inlet: Pressure;
  outlet: Pressure;
  notes: string[];
}

export interface Ran {
  /** "enough" and "tooLittle" only where `needed` was told; "depends" where what is not known decides. */
  kind: "delivered" | "enough" | "tooLittle" | "depends" | "starved";
  sentence: string;
  /** What the supply stands at, as the run is judged. */
  atSupply: Pressure;
  /** Empty where the flow does not get through. */
  atTool?: Pressure;
  losses: Loss[];
  /** What loses most; of "starved" what lets too little through. */
  biggest: string;
  /** What the run carries at the pressure needed; "" without one. */
  carries: string;
  /** What would help: wider hoses, tried one by one. */
  helps: string[];
  /** How values were read that may be meant otherwise, and what was assumed. */
  remarks: string[];
  cautions: Caution[];
  /** The pressure from the supply to the tool. */
  picture: Chart;
  working?: string;
}

/** What arrives at the end of a run. */
export function run(asked: RunAsked): Ran;

// ------------------------------------------------------------------------------------------------------ select

export interface SelectAsked {
  /** A job file: its text, what JSON.parse made of it, or its name among the files. */
  job: string | object;
  /** The files that the job names: the catalogue, its set, rules of the works. */
  files?: Files;
  /** So many proposals are told; left out, 3; 20 are the most. */
  most?: number;
  working?: boolean;
}

export interface PartLine {
  kind: string;
  quantity: number;
  /** What the catalogue calls it; left out where it lacks it. */
  id?: string;
  name: string;
  /** Whether it is there already and need not be bought. */
  existing: boolean;
  priceEach?: string;
  price?: string;
  /** What it loses, of a part that air goes through. */
  loss?: string;
  /** Why it is on the list. */
  reason: string;
}

export interface Ruled {
  rule: string;
  outcome: "met" | "metWhileRegulated" | "unmet" | "open" | "doesNotApply";
  /** The outcome in words, as it is said. */
  said: string;
  sentence: string;
  source: string;
}

export interface Proposed {
  parts: PartLine[];
  /** What all of it sums to, in a sentence; "" where no price is known. */
  price: string;
  /** What arrives at the tool, against what it needs. */
  atTool: string;
  /** What is still to be asked before it meets every rule, and for its bill. */
  open: string[];
  rules: Ruled[];
  /** The pressure from the supply to the tool, or to each tool. */
  ways: { to: string; losses: Loss[]; picture: Chart }[];
  cautions: Caution[];
}

export interface Told {
  what: string;
  text: string;
}

export interface Selected {
  /** "refused": not for anything but compressed air. "profileNotKnown": the plug must be named first. */
  kind: "fits" | "nothingFits" | "profileNotKnown" | "refused";
  headline: string;
  title: string;
  customer: string;
  units: Units;
  /** What was found, line by line, as the sheet to hand over tells it. */
  found: Told[];
  /** Of "fits" the proposals, the best first; of "nothingFits" the nearest misses, no recommendation. */
  proposals: Proposed[];
  /** Of "nothingFits": what would have to change. */
  toGive: string[];
  /** What must be asked, measured or tried before all is settled. */
  questions: string[];
  /** What a rule forbids or the parts do not meet. */
  wrong: string[];
  /** How values were read that may be meant otherwise, and what was assumed. */
  remarks: Told[];
  /** What else can be offered, where the job tells the figures of a year. */
  offers: string[];
  /** All cautions of the job: to depressurise first, the one that defers to codes and makers last. */
  cautions: Caution[];
  /** The air now, where the job tells what is connected today. */
  now?: { sentence: string; carries: string; losses: Loss[]; picture: Chart; helps: string[] };
  /** The plug at hand, as `identify` tells it. */
  plug?: Identified;
  working?: string;
}

/** Which parts of a catalogue do a job. */
export function select(asked: SelectAsked): Selected;

// ------------------------------------------------------------------------------------------------------- sheet

/** A job sheet. */
export interface Sheet {
  /** As plain text, about a hundred characters wide. */
  text: string;
  /** As a page to hand over: a whole document, one side of paper for up to twelve parts. */
  page: string;
  /** What it rests on: every rule, every figure, the working. */
  reasons: string;
}

export interface SheetOptions {
  /** The name of a letterhead file among the files; left out, the head has no shop. */
  letterhead?: string;
  /** The date of a sheet whose job tells none, such as "2026-11-28"; left out, a line to fill in. */
  today?: string;
  /** Which of the three are wanted, such as ["page"]; the others are "" then, which spares their time. */
  only?: ("text" | "page" | "reasons")[];
}

/**
 * Answers a job file of form 2 (docs/job-file.md), as the program jobsheet does.
 *
 * @param name the name of the job file among the files
 */
export function sheet(name: string, files: Files, options?: SheetOptions): Sheet;

// ------------------------------------------------------------------------- for a counter of one's own: more calls

export interface Size {
  /** What it is called in `readings` and in set files, such as "tip diameter". */
  size: string;
  /** Its symbol, such as "D_t"; what follows the line is set low. */
  symbol: string;
  definition: string;
  how: string;
  decides: string;
}

/** The words that fields accept. */
export interface Choices {
  sizes: Size[];
  calipers: string[];
  /** The kinds of items of a line in a job file. */
  places: string[];
}

export function choices(): Choices;

/**
 * Where the caliper goes. A plug with a `<g data-size="tip diameter" …>` around each size, to tap on; of the size that
 * is asked for, the jaws of the caliper stand there. The plug drawn is invented, and not to scale.
 */
export function measuring(size?: string): Picture & { size?: Size };

/**
 * The outline of a plug, 1:1: its width and height are told in millimetres. Give the id of a profile of a set, or
 * readings of the plug at hand. Its ruler is told of in words for a screen; the page of `referenceSet` is for paper.
 */
export function outline(asked: {
  set?: string | object;
  profile?: string;
  readings?: Record<string, string | string[]>;
}): {
  /** Left out where sizes are missing. */
  picture?: Picture;
  /** Millimetres. */
  width?: number;
  height?: number;
  /** The sizes that are missing for it. */
  missing: string[];
};

export interface SetAsked {
  /** The text of a set file (CSV or JSON), repeated readings of known plugs among it, or what JSON.parse made of it. */
  set: string | object;
  /** For a page with the outlines to true scale; left out, no page. */
  paper?: "A4" | "Letter";
  /** The name that complaints have for it; left out, "set.csv" or "set.json". */
  name?: string;
}

export interface SetRead {
  kind: "set";
  name: string;
  provenance: string;
  /** Whether a plug can be called identified by it. */
  canIdentify: boolean;
  profiles: { id: string; name: string; letters: string[]; provenance: string; sizes: string[]; missing: string[] }[];
  sockets: { name: string; takes: string[] }[];
  /** What the pieces show: those that stand out, and from where on one more would. */
  findings: string[];
  /** Which pairs can be told apart, the hardest first. */
  pairs: string[];
  /** All of it as the program `set` prints it. */
  text: string;
  /** The set as a file, in both forms; readings are written as count, mean and deviation. */
  csv: string;
  json: string;
  /** A whole document. */
  page?: string;
}

/** What a reference set is worth, and the set as a file. */
export function referenceSet(asked: SetAsked): SetRead;

/** What a stock file holds; refused where it cannot be used. */
export function stock(asked: { catalogue: string; files: Files }): {
  kind: "stock";
  name: string;
  parts: number;
  accessories: number;
  profiles: { id: string; name: string }[];
  remarks: string[];
};

/** A job as the text of a job file, its fields in the order of docs/job-file.md. */
export function jobFile(fields: object): string;

/** The style of charts, as CSS for a style sheet: colours by custom properties that a page may set otherwise. */
export function pictureStyle(): string;
