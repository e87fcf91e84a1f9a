/**
 * Who flips: a register decided once under the protocols in force, then compared with a draft as often as its numbers are
 * moved. Someone flips if their verdict on the date asked about, or the first or last day of their window, would be another.
 *
 * Each person keeps what each requirement said and which numbers it read to say so (numbers-read.ts). A draft asks again only
 * the requirements that read a number it moves, with the judges everything else uses; a window only if it rests on one.
 */
import type { Day } from '../calendar/day.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import { readiness, verdictOn } from '../readiness/ask.ts';
import { type BriefAnswer, verdictAt, windowDates } from '../readiness/brief.ts';
import type { DecisionContext } from '../readiness/context.ts';
import { type Verdict, together, worse } from '../readiness/verdict.ts';
import { type World, judgeOn, worldOf } from '../readiness/world.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { type Evidence, evidenceOf } from '../requirements/evidence.ts';
import type { Path } from '../requirements/requirement.ts';
import { NumbersRead, numbersMoved, readingAs, setsOnce, watched, watchedJudge } from './numbers-read.ts';

export type PersonAsked = {
  readonly record: SubjectRecord;
  /** What is in force at their unit. */
  readonly context: DecisionContext;
  readonly today: Day;
  /** Their booked place: the date asked about where it lies ahead, else today is. */
  readonly place: Day | undefined;
};

/** What one protocol says of a person. */
export type Answer = BriefAnswer & {
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
  const theOne = setsOnce();
  function* eachFlip(draft: Protocol): Generator<Flip | undefined, void> {
    const compare = comparingWith(draft);
    for (const [index, person] of people.entries()) yield compare((known[index] ??= decided(person, theOne)));
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
  readonly evidence: Evidence;
  /** Under the prescribed regimen; undefined where none or more than one version decides. */
  readonly protocol: Protocol | undefined;
  /** In order of gravity. */
  readonly requirements: readonly Told[];
  /** Every number the window rests on. */
  readonly windowRead: NumbersRead;
  readonly now: Answer;
};

/** What one requirement said on the date asked about, and of which numbers. */
type Told = {
  readonly requirement: RequirementId;
  readonly verdict: Verdict;
  /** On every day: nothing but a person can settle it, so there is no window; or it holds, and the window does not rest on it. */
  readonly always: 'blocks' | 'holds' | undefined;
  readonly read: NumbersRead;
};

const dateAsked = ({ place, today }: PersonAsked): Day => (place !== undefined && place > today ? place : today);

function decided(person: PersonAsked, theOne: ReturnType<typeof setsOnce>): Decided {
  const { record, context, today } = person;
  const on = dateAsked(person);
  const evidence = evidenceOf(record, today);
  const protocols = context.protocols.map(({ from, protocol }) => ({ from, protocol: watched(protocol) }));
  const ofWindow = new NumbersRead();
  const world = worldOf(evidence, { ...context, protocols }, undefined, watchedJudge);
  const requirements = world.order.map((requirement): Told => {
    const read = new NumbersRead();
    const told = readingAs(read, () => {
      const judge = judgeOn(world, requirement, on);
      return {
        requirement,
        verdict: judge.on(on).verdict,
        always: judge.changes.length > 0 ? undefined : alwaysBy(judge.path(today)),
      };
    });
    ofWindow.addEach(read);
    return { ...told, read: theOne(read) };
  });
  const window = readingAs(ofWindow, () => windowDates(world));
  const verdict = together(requirements.map(({ verdict: one }) => one));
  return {
    person,
    evidence,
    protocol: world.reigns.length === 1 ? world.reigns[0]?.protocol : undefined,
    requirements,
    windowRead: theOne(ofWindow),
    now: answerOf(person, context, { verdict, window }),
  };
}

const alwaysBy = ({ is }: Path): Told['always'] => (is === 'blocked' ? 'blocks' : is === 'ready' ? 'holds' : undefined);

function answerOf(person: PersonAsked, context: DecisionContext, { verdict, window }: BriefAnswer): Answer {
  return {
    verdict,
    window,
    headline: () => verdictOn(readiness(person.record, context, person.today), dateAsked(person)).headline,
  };
}

/** Compares people with one draft. What differs between two protocols is looked for once for each pair that meets. */
function comparingWith(draft: Protocol): (one: Decided) => Flip | undefined {
  const protocols = [{ from: 0, protocol: draft }];
  const pairs = new Map<Protocol, Map<Protocol, NumbersRead | undefined>>();
  function movedBetween(now: Protocol, then: Protocol): NumbersRead | undefined {
    let ofNow = pairs.get(now);
    if (ofNow === undefined) pairs.set(now, (ofNow = new Map()));
    if (!ofNow.has(then)) ofNow.set(then, numbersMoved(now, then));
    return ofNow.get(then);
  }
  return (one) => {
    const { person, evidence, protocol } = one;
    const then = underRegimen(draft, evidence.prescription?.body.regimen);
    const moved = protocol === undefined ? undefined : movedBetween(protocol, then);
    const context = { ...person.context, protocols };
    const world = worldOf(evidence, context);
    if (moved === undefined)
      return flipOf(one, { verdict: verdictAt(world, dateAsked(person)), window: windowDates(world) }, context);
    const verdict = verdictUnder(world, one, moved);
    return flipOf(one, { verdict, window: windowUnder(world, one, moved) }, context);
  };
}

/** What read no number that was moved stands; the rest is asked again, unless what stands is not ready already. */
function verdictUnder(world: World, { person, requirements: told }: Decided, moved: NumbersRead): Verdict {
  let verdict: Verdict = 'does not apply';
  let asksAgain = false;
  for (const one of told) {
    if (one.read.meets(moved)) asksAgain = true;
    else verdict = worse(verdict, one.verdict);
  }
  if (!asksAgain || verdict === 'not ready') return verdict;
  const on = dateAsked(person);
  for (const { requirement, read } of told)
    if (read.meets(moved)) verdict = worse(verdict, judgeOn(world, requirement, on).on(on).verdict);
  return verdict;
}

/** It stands unless it rests on a number that was moved. What holds always, and read none of them, it does not rest on. */
function windowUnder(
  world: World,
  { requirements: told, windowRead, now }: Decided,
  moved: NumbersRead,
): Answer['window'] {
  if (!windowRead.meets(moved)) return now.window;
  const order: RequirementId[] = [];
  for (const { requirement, always, read } of told) {
    if (always === undefined || read.meets(moved)) order.push(requirement);
    else if (always === 'blocks') return now.window;
  }
  return windowDates({ ...world, order });
}

function flipOf({ person, now: from }: Decided, found: BriefAnswer, context: DecisionContext): Flip | undefined {
  const verdictChanges = from.verdict !== found.verdict;
  const windowChanges = from.window?.first !== found.window?.first || from.window?.last !== found.window?.last;
  if (!verdictChanges && !windowChanges) return undefined;
  const to = answerOf(person, context, found);
  return { subject: person.record.subject, on: dateAsked(person), from, to, verdictChanges, windowChanges };
}
