// A mistake on the command line or in what it names: thrown from anywhere, told in one sentence, exit status 2.

export type MisuseCode =
  | "command-unknown"
  | "argument-missing"
  | "argument-extra"
  | "argument-bad"
  | "option-unknown"
  | "folder-missing"
  | "folder-taken"
  | "file-missing"
  | "file-bad"
  | "machine-unknown"
  | "name-unknown"
  | "name-ambiguous"
  | "answer-bad"
  | "port-taken"
  | "page-missing"
  | "not-written";

export class Misuse extends Error {
  readonly code: MisuseCode;
  /** What would have been understood. */
  readonly among: readonly string[];

  constructor(code: MisuseCode, says: string, among: readonly string[] = []) {
    super(says);
    this.code = code;
    this.among = among;
  }
}
