/** What `decide` may look at beside the act: handed in, never fetched. */
import type { Day } from '../calendar/day.ts';
import type { Author, Entry, Instant, LocalMoment } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import type { Draft } from '../ledger/entry.ts';
import type { DecisionContext } from '../readiness/context.ts';
import type { GroupDirection } from '../unit/group-direction.ts';
import type { Formulary } from '../unit/formulary.ts';
import type { Refusal } from './refusal.ts';

/** The server's clocks: which boot of the machine, how long it has been up, the wall. */
export type ClockReading = { readonly boot: string; readonly uptimeMilliseconds: number; readonly wall: Instant };

export type Surroundings = {
  readonly ledgers: ReadonlyMap<Subject, readonly Entry[]>;
  /** Protocol and calendar of the unit concerned; undefined when none is in force. */
  readonly context: DecisionContext | undefined;
  /** The packs the unit concerned keeps. */
  readonly formulary: Formulary;
  /** The group directions of the unit concerned; absent: none, and nothing is given under one. */
  readonly directions?: readonly GroupDirection[] | undefined;
  readonly by: Author;
  /** The unit's local date and moment now, and its zone. */
  readonly today: Day;
  readonly moment: LocalMoment;
  readonly zone: string;
  readonly clock: ClockReading;
  /** The device it is written at, where that is known; whether it takes a dose over, and whether it waited for the network. */
  readonly device?:
    | { readonly id: string; readonly name: string; readonly takesOver: boolean; readonly waited: boolean }
    | undefined;
  /** Patients of the register that look like the one whose identity is written, found by the shell: who, and what is alike. */
  readonly lookAlikes?: readonly { readonly patient: string; readonly says: string; readonly why: string }[];
};

export type Decided = { readonly drafts: readonly Draft[] } | { readonly refusals: readonly [Refusal, ...Refusal[]] };
