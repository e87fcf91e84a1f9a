/**
 * Who flips: a register decided once under the protocols in force, then compared with a draft as often as its numbers are
 * moved. Someone flips if their verdict on the date asked about, or the first or last day of their window, would be another.
 */
import type { Day } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { readiness, verdictOn } from '../readiness/ask.ts';
import type { DecisionContext } from '../readiness/context.ts';
import type { Verdict } from '../readiness/verdict.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

export type PersonAsked = {
  readonly record: SubjectRecord;
  /** What is in force at their unit. */
  readonly context: DecisionContext;
  readonly today: Day;
  /** Their booked place: the date asked about where it lies ahead, else today is. */
  readonly place: Day | undefined;
};

/** What one protocol says of a person. */
export type Answer = {
  readonly verdict: Verdict;
  /** Undefined: no date can be told. Its last day undefined: runs past the horizon. */
  readonly window: { readonly first: Day; readonly last: Day | undefined } | undefined;
  /** "not ready: vitamin D; cannot say: bloods" */
  readonly headline: () => string;
};

export type Flip = {
  readonly subject: string;
  /** The date the verdicts are of. */
  readonly on: Day;
  readonly from: Answer;
  readonly to: Answer;
  readonly verdictChanges: boolean;
  readonly windowChanges: boolean;
};

export type ComparedRegister = {
  readonly size: number;
  /** Everyone who would flip if the draft were in force on every date, in the order they were given. */
  readonly flips: (draft: Protocol) => Flip[];
  /** The same a person at a time (undefined: does not flip), so that a server can answer others in between, or stop. */
  readonly eachFlip: (draft: Protocol) => Generator<Flip | undefined, void>;
};

export function registerCompared(people: readonly PersonAsked[]): ComparedRegister {
  const asked = people.map((person) => ({ person, now: answerOf(person, person.context) }));
  function* eachFlip(draft: Protocol): Generator<Flip | undefined, void> {
    for (const { person, now } of asked) {
      const then = answerOf(person, { ...person.context, protocols: [{ from: 0, protocol: draft }] });
      yield flipOf(person, now, then);
    }
  }
  return {
    size: people.length,
    eachFlip,
    flips: (draft) => [...eachFlip(draft)].filter((flip) => flip !== undefined),
  };
}

const dateAsked = ({ place, today }: PersonAsked): Day => (place !== undefined && place > today ? place : today);

function answerOf(person: PersonAsked, context: DecisionContext): Answer {
  const asked = readiness(person.record, context, person.today);
  const { verdict, headline } = verdictOn(asked, dateAsked(person));
  const { window } = asked;
  return {
    verdict,
    window: window === undefined ? undefined : { first: window.first, last: window.last },
    headline: () => headline,
  };
}

function flipOf(person: PersonAsked, from: Answer, to: Answer): Flip | undefined {
  const verdictChanges = from.verdict !== to.verdict;
  const windowChanges = from.window?.first !== to.window?.first || from.window?.last !== to.window?.last;
  if (!verdictChanges && !windowChanges) return undefined;
  return { subject: person.record.subject, on: dateAsked(person), from, to, verdictChanges, windowChanges };
}
