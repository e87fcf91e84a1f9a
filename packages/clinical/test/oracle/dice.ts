/** Chance from a seed: the same ledger from the same seed on every machine. */
export type Dice = {
  readonly chance: (share: number) => boolean;
  readonly whole: (least: number, most: number) => number;
  readonly oneOf: <Item>(items: readonly Item[]) => Item;
};

/** A 32-bit generator (mulberry32): the same ledger from the same seed on every machine. */
export function diceOf(seed: number): Dice {
  let state = (seed * 2654435761) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    chance: (share) => next() < share,
    whole,
    oneOf: (items) => items[whole(0, items.length - 1)] as (typeof items)[number],
  };
}
