/** Why a store cannot be opened, copied or put back: a name for code, a sentence for the person at the keyboard. */
export type StoreProblemName =
  | 'in-use'
  | 'no-such-store'
  | 'newer-software'
  | 'commits-missing'
  | 'anchor-missing'
  | 'anchor-damaged'
  | 'other-history'
  | 'damaged'
  | 'already-there'
  | 'unsuitable-database'
  | 'use-database-tools';

export class StoreProblem extends Error {
  readonly problem: StoreProblemName;
  constructor(problem: StoreProblemName, says: string) {
    super(says);
    this.name = 'StoreProblem';
    this.problem = problem;
  }
}
