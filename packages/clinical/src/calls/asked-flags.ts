/** What is asked first when somebody rings: every red flag of the rules, or that none of them is there. */
import { type RedFlag, type RedFlagName, redFlagNamed, redFlagNames } from '../aftercare/danger-signs.ts';

/** It says that a number of the protocol is missing: nobody asks for it on the telephone. */
const notAsked = 'fever, and nobody has said how much is too much';
type FlagToAsk = Exclude<RedFlagName, typeof notAsked>;

export const flagsToAsk = redFlagNames.filter((name): name is FlagToAsk => name !== notAsked);
/** Asked, and the answer to each was no. */
export const noRedFlag = 'none of these' as const;
export type AskedFlag = FlagToAsk | typeof noRedFlag;

export const flagsIn = (asked: readonly AskedFlag[]): readonly RedFlag[] =>
  asked.filter((flag): flag is FlagToAsk => flag !== noRedFlag).map(redFlagNamed);
