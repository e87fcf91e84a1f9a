/** What a day sheet is made of: the people of a session in order, as far as is known when it is made. */
import type { Day, VisitStepName } from '@twelvemonth/clinical';
import type { Language } from '../speaker.ts';

export type DaySheetPerson = {
  /** HH:MM on the unit's wall. */
  readonly arriveAt: string;
  readonly name: string;
  readonly born: string;
  readonly number: string;
  readonly dose: string;
  readonly firstTimer: boolean;
  readonly allergies: string;
  readonly armToAvoid: string | undefined;
  readonly needs: readonly string[];
  /** Others on the list whose names are near to this one. */
  readonly nearNames: readonly string[];
  /** The verdict for the day of the session, in words; once that is decided, what came of it. */
  readonly readiness: string;
  /** Where they sit, once they have arrived. */
  readonly chair: number | undefined;
  /** Who looks after them. */
  readonly nurse: string | undefined;
  /** Has gone home: nothing is left to write on a card. */
  readonly gone: boolean;
  /** What is ordered, or that nothing is. */
  readonly order: string;
  /** Shortest running time of a whole dose; undefined: no protocol. */
  readonly leastMinutes: number | undefined;
  /** The questions of the day as the protocol words them. */
  readonly questions: readonly string[];
  /** Minutes the person is watched afterwards; undefined: no protocol. */
  readonly watchMinutes: number | undefined;
  /** Steps that are in the notes already, with when and by whom: not done again from the paper. */
  readonly recorded: Readonly<Partial<Record<VisitStepName, string>>>;
  /** The infusion runs as the sheet is made: since when. */
  readonly running: string | undefined;
};

export type DaySheetFacts = {
  /** How the unit writes: which degrees its thermometers read, which units its scales. */
  readonly language: Language;
  readonly unit: { readonly name: string; readonly telephone: string; readonly demo: boolean };
  readonly on: Day;
  /** "Wed 25 Nov 2026, 08:40", on the unit's wall. */
  readonly printedAt: string;
  /** Last commit of the notes this sheet was made from. */
  readonly commit: number;
  readonly protocolVersion: string | undefined;
  readonly people: readonly DaySheetPerson[];
};
