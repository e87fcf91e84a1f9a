/**
 * Who flips: a register decided once under the protocols in force, then compared with a draft as often as its numbers are
 * moved. Someone flips if their verdict on the date asked about, or the first or last day of their window, would be another.
 *
 * Each person keeps what was found and which numbers it was found with (numbers-read.ts). A draft asks again only those whose
 * answer read a number it moves, and of them only the requirements that read it; the judges are the ones everything else uses.
 */
import type { Day } from '../calendar/day.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { readiness, verdictOn } from '../readiness/ask.ts';
import type { DecisionContext } from '../readiness/context.ts';
import { firstPlan } from '../readiness/plan.ts';
import { type Verdict, worse } from '../readiness/verdict.ts';
import { datesOf } from '../readiness/window.ts';
import { type World, judgeOn, worldOf } from '../readiness/world.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { evidenceOf } from '../requirements/evidence.ts';
import { NumbersRead, numbersMoved, numbersReadBy, readingAs, watched, watchedJudge } from './numbers-read.ts';

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
  /**
   * The same a person at a time (undefined: does not flip), so that a server can answer others in between, or stop. The first
   * time through everyone is decided under what is in force; later drafts are compared with that.
   */
  readonly eachFlip: (draft: Protocol) => Generator<Flip | undefined, void>;
};

export function registerCompared(people: readonly PersonAsked[]): ComparedRegister {
  const known: (Decided | undefined)[] = [];
  function* eachFlip(draft: Protocol): Generator<Flip | undefined, void> {
    const compare = comparingWith(draft);
    for (const [index, person] of people.entries()) yield compare((known[index] ??= decided(person)));
  }
  return {
    size: people.length,
    eachFlip,
    flips: (draft) => [...eachFlip(draft)].filter((flip) => flip !== undefined),
  };
}

/** A person as decided under what is in force. */
type Decided = {
  readonly person: PersonAsked;
  readonly world: World;
  /** Every number the answer rests on. */
  readonly read: NumbersRead;
  readonly now: Answer;
};

const dateAsked = ({ place, today }: PersonAsked): Day => (place !== undefined && place > today ? place : today);

function decided(person: PersonAsked): Decided {
  const { record, context, today } = person;
  const read = new NumbersRead();
  const protocols = context.protocols.map(({ from, protocol }) => ({ from, protocol: watched(protocol) }));
  const world = worldOf(
    evidenceOf(record, today),
    { ...context, protocols },
    undefined,
    (requirement, evidence, protocol) => watchedJudge(requirement, evidence, protocol, read),
  );
  const found = readingAs([read], () => foundIn(world, dateAsked(person)));
  return { person, world, read, now: answerOf(person, context, found) };
}

type Found = Pick<Answer, 'verdict' | 'window'>;

function foundIn(world: World, on: Day): Found {
  let verdict: Verdict = 'does not apply';
  for (const id of world.order) verdict = worse(verdict, judgeOn(world, id, on).on(on).verdict);
  const plan = firstPlan(world);
  return { verdict, window: plan === undefined ? undefined : datesOf(world, plan) };
}

function answerOf(person: PersonAsked, context: DecisionContext, { verdict, window }: Found): Answer {
  return {
    verdict,
    window: window === undefined ? undefined : { first: window.first, last: window.last },
    headline: () => verdictOn(readiness(person.record, context, person.today), dateAsked(person)).headline,
  };
}

/** Compares people with one draft. What differs between two protocols is looked for once for each pair that meets. */
function comparingWith(draft: Protocol): (one: Decided) => Flip | undefined {
  const pairs = new Map<Protocol, Map<Protocol, NumbersRead | undefined>>();
  function movedFor({ world }: Decided): NumbersRead | undefined {
    const [reign, other] = world.reigns;
    const now = reign?.protocol;
    // Where more than one version decides, one draft is not compared with one protocol.
    if (now === undefined || other !== undefined) return undefined;
    const then = underRegimen(draft, world.evidence.prescription?.body.regimen);
    let ofNow = pairs.get(now);
    if (ofNow === undefined) pairs.set(now, (ofNow = new Map()));
    if (!ofNow.has(then)) ofNow.set(then, numbersMoved(now, then));
    return ofNow.get(then);
  }
  return (one) => {
    const moved = movedFor(one);
    if (moved !== undefined && !one.read.meets(moved)) return undefined;
    return flipOf(one, foundUnder(one, draft, moved), draft);
  };
}

/** What is found under a draft: with the judges that read nothing it moves, and with new ones for the rest. */
function foundUnder({ person, world }: Decided, draft: Protocol, moved: NumbersRead | undefined): Found {
  const under = (): World => worldOf(world.evidence, { ...world.context, protocols: [{ from: 0, protocol: draft }] });
  const on = dateAsked(person);
  const then = under();
  const [before, after] = [world.reigns[0], then.reigns[0]];
  if (moved === undefined || before === undefined || after === undefined) return foundIn(then, on);
  const kept: NumbersRead[] = [];
  for (const id of world.order) {
    const judge = before.judges[id];
    const read = judge === undefined ? undefined : numbersReadBy(judge);
    if (judge === undefined || read === undefined || read.meets(moved)) continue;
    after.judges[id] = judge;
    kept.push(read);
  }
  const found = foundIn(then, on);
  // Asked about other days than before, a judge may have read a number it had not: then it was no judge for this draft.
  return kept.some((read) => read.meets(moved)) ? foundIn(under(), on) : found;
}

function flipOf({ person, now: from }: Decided, found: Found, draft: Protocol): Flip | undefined {
  const verdictChanges = from.verdict !== found.verdict;
  const windowChanges = from.window?.first !== found.window?.first || from.window?.last !== found.window?.last;
  if (!verdictChanges && !windowChanges) return undefined;
  const to = answerOf(person, { ...person.context, protocols: [{ from: 0, protocol: draft }] }, found);
  return { subject: person.record.subject, on: dateAsked(person), from, to, verdictChanges, windowChanges };
}
