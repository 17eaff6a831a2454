/** airfit for a web shop or a counter's own system: plain objects in and out, quantities as the texts people type. */

/** Texts of files by name, such as { "job.json": "{…}", "catalogue.json": "{…}" }; folders in paths are passed over. */
export type Files = Record<string, string>;

/** A job sheet. */
export interface Sheet {
  /** As plain text, about a hundred characters wide. */
  text: string;
  /** As a page to hand over: a whole document, one side of paper for up to twelve parts. */
  page: string;
  /** What it rests on: every rule, every figure, the working. */
  reasons: string;
}

/**
 * Answers a job file of form 2 (docs/job-file.md).
 *
 * @throws an Error named "WrongFile" whose message is one line: file, field, value and what is accepted
 */
export function sheet(name: string, files: Files): Sheet;
