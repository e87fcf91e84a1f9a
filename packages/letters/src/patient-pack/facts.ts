/** What a pack says of this person: only what is known, each with what is said where it is not. */
import type { Day } from '@twelvemonth/clinical';

export type PackLanguage = 'en-GB' | 'en-US';
export type PackPartName = 'getting ready' | 'the day' | 'afterwards' | 'next year';
export const packParts: readonly PackPartName[] = ['getting ready', 'the day', 'afterwards', 'next year'];

/** Why no amount of paracetamol is printed. */
export type NoAmount = 'not asked' | 'liver' | 'weight not known' | 'weight too old' | 'below the table' | 'no table';

export type PackParacetamol =
  | {
      readonly told: true;
      readonly tabletsADose: readonly [least: number, most: number];
      readonly timesADay: number;
      readonly mostTabletsADay: number;
      readonly hoursBetween: number;
      readonly weightKg: string;
      readonly weighedOn: Day;
    }
  | { readonly told: false; readonly because: NoAmount };

export type PackFacts = {
  readonly language: PackLanguage;
  readonly demo: boolean;
  readonly unit: { readonly name: string; readonly telephone: string };
  readonly person: { readonly name: string; readonly born: string; readonly number: string };
  readonly today: Day;
  readonly protocolVersion: string;
  /** No dose of the medicine ever. */
  readonly firstTimer: boolean;
  readonly visit: { readonly on: Day; readonly arriveAt: string } | undefined;
  readonly minutes: { readonly drip: number; readonly watch: number };
  readonly bloods: { readonly from: Day; readonly until: Day } | undefined;
  /** A course somebody takes, until its last dose; or one a prescriber has yet to start. */
  readonly vitaminDCourse:
    | { readonly is: 'taken'; readonly endsOn: Day }
    | { readonly is: 'to be started' }
    | undefined;
  /** Why no drip lies ahead that could be got ready for. */
  readonly noneAhead: string | undefined;
  /** Medicines in the notes that someone has to ask about. */
  readonly askAbout: readonly string[];
  readonly paracetamol: PackParacetamol;
  readonly given: { readonly on: Day; readonly number: number; readonly batch: string | undefined } | undefined;
  readonly next:
    | {
        readonly is: 'dose';
        readonly due: Day;
        readonly calledFrom: Day;
        /** If nobody has called by then, the person calls. */
        readonly worryOn: Day;
        readonly bloods: { readonly from: Day; readonly until: Day } | undefined;
      }
    | { readonly is: 'review'; readonly worryOn: Day }
    | undefined;
};
