import type { BodyOfKind } from '../kinds/index.ts';

/** ", T -2.5, Z -0.7" as the report printed them; empty where it printed none. */
export const scoresText = ({ tScore, zScore }: BodyOfKind<'bone-density'>): string =>
  `${tScore === undefined ? '' : `, T ${tScore}`}${zScore === undefined ? '' : `, Z ${zScore}`}`;
