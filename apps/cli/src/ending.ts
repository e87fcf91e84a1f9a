/** How a command ends. The code tells the truth to whoever runs it from a script. */
export const exitCodes = {
  /** Done, and nothing is wrong. */
  done: 0,
  /** It was answered, and the answer is no: not ready, refused, found damaged, a row that waits. */
  no: 1,
  /** The command line cannot be meant. */
  usage: 2,
  /** The notes, a file or a server cannot be opened. */
  cannotOpen: 3,
  /** Stopped with Ctrl-C before there was an answer: what a shell says of a program that ends by it. */
  stopped: 130,
} as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

/** Expected trouble: a sentence for the person at the keyboard, and the code to end with. */
export class Ending extends Error {
  readonly code: ExitCode;
  constructor(code: ExitCode, says: string) {
    super(says);
    this.name = 'Ending';
    this.code = code;
  }
}

export const misused = (says: string): Ending => new Ending(exitCodes.usage, `${says} See --help.`);
export const cannotOpen = (says: string): Ending => new Ending(exitCodes.cannotOpen, says);
export const stopped = (says: string): Ending => new Ending(exitCodes.stopped, says);
export const answeredNo = (says: string): Ending => new Ending(exitCodes.no, says);
