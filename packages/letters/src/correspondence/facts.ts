/** What a letter says of this person: only what is known. Each letter has facts of its own. */
import type { Day, LetterReader, LetterSheet, LetterSubject, PutOffReason, ReviewChoice } from '@twelvemonth/clinical';

type Sort = { readonly to: LetterReader; readonly about: LetterSubject };

/** Every letter there is beside the one after a visit: to whom, about what. */
export const letterSorts = {
  invitation: { to: 'patient', about: 'invitation' },
  'bloods needed': { to: 'patient', about: 'bloods needed' },
  'put off': { to: 'patient', about: 'put off' },
  'no answer': { to: 'patient', about: 'no answer' },
  'no answer, to the family doctor': { to: 'family doctor', about: 'no answer' },
  'review outcome': { to: 'patient', about: 'review' },
  transfer: { to: 'other service', about: 'transfer' },
  closing: { to: 'patient', about: 'closing' },
  'request to the family doctor': { to: 'family doctor', about: 'request' },
  'request to the dentist': { to: 'dentist', about: 'request' },
} as const satisfies Readonly<Record<string, Sort>>;
export type LetterName = keyof typeof letterSorts;
export const letterNames = Object.keys(letterSorts) as LetterName[];

export type LetterLanguage = LetterSheet['language'];

/** What a family doctor can be asked for. */
export const familyDoctorRequests = ['bloods', 'medicines', 'vitamin D course', 'weight'] as const;
export type FamilyDoctorRequest = (typeof familyDoctorRequests)[number];

type Between = { readonly from: Day; readonly until: Day };

/** A dose as another service needs to know it. */
type DoseTold = { readonly on: Day; readonly medicine: string; readonly batch: string | undefined };

export type LetterMatter =
  | {
      readonly name: 'invitation';
      readonly on: Day;
      readonly arriveAt: string;
      readonly bloods: Between | undefined;
    }
  | { readonly name: 'bloods needed'; readonly between: Between; readonly tests: readonly string[] }
  | {
      readonly name: 'put off';
      readonly on: Day;
      readonly reason: PutOffReason;
      /** What the nurse wrote for the person to know. */
      readonly nextStep: string | undefined;
      readonly worryOn: Day | undefined;
    }
  | { readonly name: 'no answer'; readonly due: Day | undefined; readonly answerBy: Day }
  | {
      readonly name: 'no answer, to the family doctor';
      readonly due: Day | undefined;
      readonly lastDose: DoseTold | undefined;
      readonly tried: string;
      readonly answerBy: Day;
    }
  | { readonly name: 'review outcome'; readonly on: Day; readonly decided: ReviewChoice }
  | {
      readonly name: 'transfer';
      readonly treatment: string;
      readonly doses: readonly DoseTold[];
      readonly due: Day | undefined;
      /** Of this course. */
      readonly given: number;
      readonly planned: number | undefined;
      readonly allergies: string;
      readonly reactions: readonly string[];
      readonly results: readonly (readonly [what: string, value: string])[];
      readonly answerBy: Day;
    }
  | { readonly name: 'closing' }
  | {
      readonly name: 'request to the family doctor';
      readonly wanted: readonly FamilyDoctorRequest[];
      /** A next dose is planned. */
      readonly doseAhead: boolean;
      readonly bloods: Between | undefined;
      readonly due: Day | undefined;
      readonly answerBy: Day;
    }
  | {
      readonly name: 'request to the dentist';
      readonly due: Day | undefined;
      readonly dosesGiven: number;
      readonly answerBy: Day;
    };

/** What the person is treated with, and what they call it. */
export type TreatmentTold = { readonly medicine: string; readonly by: 'drip' | 'injection' };

export type LetterFacts = {
  readonly language: LetterLanguage;
  readonly today: Day;
  readonly demo: boolean;
  readonly treatment: TreatmentTold;
  readonly unit: { readonly name: string; readonly telephone: string; readonly postalAddress: string | undefined };
  readonly person: {
    readonly name: string;
    readonly born: string;
    readonly number: string;
    readonly address: string | undefined;
  };
  /** The name, and the address where one is known, of a reader who is not the person. */
  readonly reader: { readonly name: string | undefined; readonly address: string | undefined };
  readonly signedBy: { readonly name: string; readonly role: string };
  /** A sentence or two of the writer's own, at the end. */
  readonly ownWords: string | undefined;
  readonly matter: LetterMatter;
};
