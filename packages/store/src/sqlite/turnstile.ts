/**
 * Lets one party at the database's writing end at a time. The sign-in library keeps a transaction open across waits; a
 * group commit that began meanwhile would block the whole process, the library's own answer included.
 */
export type Turnstile = {
  readonly taken: () => boolean;
  /** Waits for its turn; the caller must `release`. */
  readonly take: () => Promise<void>;
  readonly release: () => void;
  /** Called once, before the next in line is let in. */
  readonly onceFree: (then: () => void) => void;
};

export function turnstile(): Turnstile {
  let taken = false;
  const line: (() => void)[] = [];
  let first: (() => void) | undefined;
  return {
    taken: () => taken,
    take: () =>
      new Promise((enter) => {
        if (taken) line.push(enter);
        else {
          taken = true;
          enter();
        }
      }),
    release: () => {
      const then = first;
      first = undefined;
      taken = false;
      then?.();
      const next = line.shift();
      if (next !== undefined) {
        taken = true;
        next();
      }
    },
    onceFree: (then) => {
      first = then;
    },
  };
}
