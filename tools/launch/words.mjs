/** How the launcher speaks: one line a thing, so that a person and a log both see what is going on and how long it took. */

export function say(line) {
  console.log(`twelvemonth: ${line}`);
}

/** Something expected that stops the launcher; its message tells a person what to do. */
export class Refused extends Error {}

export function seconds(sinceMilliseconds) {
  return `${((performance.now() - sinceMilliseconds) / 1000).toFixed(1)} s`;
}
