/**
 * Tries at a password, counted by name and by address. A try counts from the moment it begins, so that a hundred at once are
 * not free; one that succeeds no longer counts. Kept in memory: after a restart the count begins anew.
 */
import { steadyMilliseconds } from '../clock.ts';

export type Attempts = {
  /** Begins a try, or says how many seconds to wait. */
  readonly begin: (
    username: string,
    address: string,
  ) => { readonly succeeded: () => void } | { readonly waitSeconds: number };
};

const windowMilliseconds = 60_000;
/** Five tries a minute for one name from one address. */
const triesOfOneName = 5;
/** A shared workstation signs many people in; more wrong passwords than this from one address are not people. */
const triesOfOneAddress = 40;

export function countedAttempts(now: () => number = steadyMilliseconds): Attempts {
  const begun = new Map<string, number[]>();

  function recent(key: string, at: number): number[] {
    const kept = (begun.get(key) ?? []).filter((time) => time > at - windowMilliseconds);
    if (kept.length === 0) begun.delete(key);
    else begun.set(key, kept);
    return kept;
  }

  return {
    begin: (username, address) => {
      const at = now();
      if (begun.size > 10_000) for (const key of begun.keys()) recent(key, at);
      const limits = [
        { key: `name ${username.toLowerCase()} ${address}`, most: triesOfOneName },
        { key: `address ${address}`, most: triesOfOneAddress },
      ];
      for (const { key, most } of limits) {
        const times = recent(key, at);
        if (times.length >= most)
          return { waitSeconds: Math.ceil(((times[0] ?? at) + windowMilliseconds - at) / 1000) };
      }
      for (const { key } of limits) begun.set(key, [...recent(key, at), at]);
      return {
        succeeded: () => {
          for (const { key } of limits) {
            const times = begun.get(key) ?? [];
            const index = times.indexOf(at);
            if (index >= 0) begun.set(key, times.toSpliced(index, 1));
          }
        },
      };
    },
  };
}
