/** What a command says to a person about a unit, in the words that unit writes; what --json gives stays as it is for every reader. */
import { type Unit, inAmerican } from '@twelvemonth/clinical';

export type UnitWords = (says: string) => string;

/** Undefined: no unit is meant, as with a file. */
export const wordsOf = (unit: Pick<Unit, 'letters'> | undefined): UnitWords =>
  unit?.letters?.language === 'en-US' ? inAmerican : (says) => says;
