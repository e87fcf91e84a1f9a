/** The shape of a rule of style. Rules look at text only; what they are shown is chosen by the test that runs them. */

/** A file of the project: its path from the root, with forward slashes, and its text. */
export type SourceFile = { readonly path: string; readonly text: string };

/** One thing to put right. `says` tells what to do instead, not only what is wrong. */
export type Complaint = { readonly path: string; readonly line: number; readonly says: string };

export type Rule = {
  /** The rule as a sentence; it is the name of its test. */
  readonly name: string;
  readonly check: (files: readonly SourceFile[]) => Complaint[];
  /** A tree in which the rule must find something: the proof that it can fail. */
  readonly bad: readonly SourceFile[];
  /** A tree that comes close and is in order. */
  readonly good: readonly SourceFile[];
};

/** A complaint for every match of `pattern` (a global expression) in `text`. */
export function complaintsAbout(
  path: string,
  text: string,
  pattern: RegExp,
  says: (match: RegExpExecArray) => string,
): Complaint[] {
  return [...text.matchAll(pattern)].map((match) => ({
    path,
    line: text.slice(0, match.index).split('\n').length,
    says: says(match),
  }));
}

export const show = (complaint: Complaint): string => `${complaint.path}:${complaint.line}  ${complaint.says}`;
