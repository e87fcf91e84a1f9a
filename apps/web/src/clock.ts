/** The only file of the screens that reads the device's clocks. Nothing clinical is ever reckoned from them. */

/** Milliseconds that pass evenly, whatever happens to the wall clock: for countdowns between two answers of the server. */
export const steadyMilliseconds = (): number => performance.now();

/** The device's own wall clock: how long ago something was kept, and the untrusted third time of an act. */
export const deviceMilliseconds = (): number => Date.now();

/** The device's own wall clock, for "printed at" lines. */
export const deviceTimeInWords = (): string =>
  new Date().toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
