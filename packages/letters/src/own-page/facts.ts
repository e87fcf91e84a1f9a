/** What a person's own page says: their dates and whom to ring. No drug, no diagnosis. */
import type { Day } from '@twelvemonth/clinical';
import type { Language } from '../speaker.ts';

export type OwnPageUnit = {
  readonly name: string;
  readonly telephone: string;
  readonly address: string | undefined;
};

export type OwnPageFacts = {
  readonly language: Language;
  readonly demo: boolean;
  readonly unit: OwnPageUnit;
  readonly visit: { readonly on: Day; readonly arriveAt: string } | undefined;
  readonly bloods: { readonly from: Day; readonly until: Day } | undefined;
  /** Sheets for getting ready can be opened. */
  readonly pack: boolean;
  /** The dose after which they are asked how they feel; undefined: nobody asks. */
  readonly dosedOn: Day | undefined;
  /** When they last answered. */
  readonly toldOn: Day | undefined;
};
