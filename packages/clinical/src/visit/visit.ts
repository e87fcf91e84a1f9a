/**
 * One attendance, read from the entries of its day: which steps are done, which is running, whose turn it is. A visit that
 * was put off, or that is over, has no steps to come.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import { plural } from '../kinds-texts/words.ts';
import { lineNotOnPaper } from '../kinds/infusion-started.ts';
import type { KindName } from '../kinds/index.ts';
import { type PackProduct, dripProduct, injectionOf } from '../kinds/products.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { isVisitLetter } from '../letters/letters-out.ts';
import type { ClockMark } from './running-time.ts';
import { type Resite, resiteOf } from './resite.ts';
import { type StepState, type VisitStepName, visitSteps } from './steps.ts';

export type VisitStep = {
  readonly step: VisitStepName;
  readonly state: StepState;
  /** The entry that did it, or that began it. */
  readonly fact: Fact | undefined;
  readonly says: string | undefined;
};

export type Infusion = {
  readonly started: Fact<'infusion-started'>;
  readonly finished: Fact<'infusion-finished'> | undefined;
  readonly paused: Fact<'infusion-paused'> | undefined;
  /** The newest look at the site since it started. */
  readonly siteCheck: Fact<'site-check'> | undefined;
  /** The site was found well since it last began to run. */
  readonly siteWell: boolean;
  /** Start, pauses and resumptions in the order written. */
  readonly marks: readonly ClockMark[];
};

export type Visit = {
  readonly on: Day;
  readonly arrived: Fact<'arrived'>;
  readonly observationsBefore: Fact<'observations'> | undefined;
  /** Those after the dose, oldest first: told, and never taken for those before. */
  readonly observationsAfter: readonly Fact<'observations'>[];
  readonly checklist: Fact<'checklist'> | undefined;
  /** The newest decision of the visit. */
  readonly decision: Fact<'go-decision'> | undefined;
  /** The newest cannula that was placed; failed tries are in `cannulaTries`. */
  readonly cannula: Fact<'cannula'> | undefined;
  readonly cannulaTries: number;
  /** The newest flush before the medicine, after the newest cannula. */
  readonly flush: Fact<'flush'> | undefined;
  readonly preparation: Fact<'preparation'> | undefined;
  /** The newest check of that preparation. */
  readonly check: Fact<'second-check'> | undefined;
  readonly infusion: Infusion | undefined;
  /** The infusion stands still and goes on only through another cannula. */
  readonly resite: Resite | undefined;
  /** Seen at the chair on that day: those that say what became of the infusion. */
  readonly reactions: readonly Fact<'reaction'>[];
  readonly dose: Fact<'dose'> | undefined;
  /** What the go is for, where it is injected: prepared, checked and given step by step. */
  readonly injection: Fact<'go-decision'>['body']['injection'];
  /** Given without a drip, as an injection: what the drip needs is no step of this visit. */
  readonly injected: boolean;
  readonly removed: Fact<'cannula-removed'> | undefined;
  readonly observed: Fact<'observed'> | undefined;
  readonly left: Fact<'left'> | undefined;
  readonly letter: Fact<'letter'> | undefined;
  /** True once the person has gone home. */
  readonly over: boolean;
  readonly putOff: boolean;
  readonly steps: readonly VisitStep[];
};

/** The visit of a day; undefined if nobody arrived. */
export function visitOn(record: SubjectRecord, on: Day): Visit | undefined {
  const newest = <Kind extends KindName>(kind: Kind, holds: (fact: Fact<Kind>) => boolean = () => true) => {
    let found: Fact<Kind> | undefined;
    for (const fact of factsOf(record, kind)) {
      if (fact.on === on && holds(fact) && (found === undefined || fact.seq > found.seq)) found = fact;
    }
    return found;
  };
  const arrived = newest('arrived');
  if (arrived === undefined) return undefined;
  const cannula = newest('cannula', ({ body }) => body.placed);
  const preparation = newest('preparation');
  const started = newest('infusion-started');
  const infusion = started === undefined ? undefined : infusionFrom(record, started);
  const facts = {
    arrived,
    observationsBefore: newest('observations', ({ body }) => body.when === 'before'),
    observationsAfter: factsOf(record, 'observations').filter((fact) => fact.on === on && fact.body.when === 'after'),
    checklist: newest('checklist'),
    decision: newest('go-decision'),
    cannula,
    cannulaTries: factsOf(record, 'cannula').reduce(
      (tries, fact) => (fact.on === on ? tries + fact.body.tries : tries),
      0,
    ),
    flush: newest('flush', (flush) => flush.body.when === 'before' && flush.seq > (cannula?.seq ?? Infinity)),
    preparation,
    check: newest('second-check', ({ body }) => preparation !== undefined && isAbout(body.preparation, preparation)),
    infusion,
    resite: infusion?.finished === undefined ? resiteOf(factsOf(record, 'site-check'), cannula) : undefined,
    reactions: factsOf(record, 'reaction').filter((fact) => fact.on === on && fact.body.infusion !== undefined),
    dose: newest('dose', ({ body }) => body.setting === 'this service'),
    removed: newest('cannula-removed', (removed) => removed.seq > (cannula?.seq ?? Infinity)),
    observed: newest('observed'),
    left: newest('left'),
    letter: newest('letter', ({ body }) => isVisitLetter(body)),
  };
  const putOff = facts.decision?.body.decision === 'put off';
  const injected =
    facts.dose !== undefined && facts.infusion === undefined && facts.dose.body.medicine !== 'zoledronic acid 5 mg';
  const injection = facts.decision?.body.decision === 'go' ? facts.decision.body.injection : undefined;
  const visit = { ...facts, on, over: facts.left !== undefined, putOff, injection, injected };
  return { ...visit, steps: stepsOf(visit) };
}

/** What the pack in the hand has to be. */
export const productOf = (visit: Visit | undefined): PackProduct =>
  visit?.injection === undefined ? dripProduct : (injectionOf(visit.injection.medicine)?.product ?? dripProduct);

/** The drip was ended before anything ran in: no dose, and somebody says what comes next. */
export const nothingGiven = ({ infusion, dose }: Pick<Visit, 'infusion' | 'dose'>): boolean =>
  infusion?.finished?.body.milliliters === 0 && dose === undefined;

/** Whether an id names a fact or the entry it amends. */
export const isAbout = (id: string, fact: Fact): boolean => id === fact.id || id === fact.first;

/** Who made the second check: its author or, typed in from the day sheet, whose signature stands there. */
export const checkerOf = ({ author, body }: Fact<'second-check'>): string => body.signedOnPaperBy ?? author.staff;

/** The visit of `day`, or the last one before it. */
export function visitToday(record: SubjectRecord, day: Day): Visit | undefined {
  const arrivals = factsOf(record, 'arrived').filter((arrived) => arrived.on <= day);
  const last = arrivals[arrivals.length - 1];
  return last === undefined ? undefined : visitOn(record, last.on);
}

function infusionFrom(record: SubjectRecord, started: Fact<'infusion-started'>): Infusion {
  const later = <Kind extends KindName>(kind: Kind) =>
    factsOf(record, kind).filter((fact) => fact.on === started.on && fact.seq > started.seq);
  const paused = later('infusion-paused');
  const resumed = later('infusion-resumed');
  const turns = [...paused, ...resumed].toSorted((a, b) => a.seq - b.seq);
  const lastPause = paused[paused.length - 1];
  const lastLook = later('site-check').at(-1);
  const runsSince = resumed.at(-1) ?? started;
  const open = lastPause !== undefined && !resumed.some((fact) => fact.seq > lastPause.seq);
  return {
    started,
    finished: later('infusion-finished')[0],
    paused: open ? lastPause : undefined,
    siteCheck: lastLook,
    siteWell: lastLook?.body.looks === 'well' && lastLook.seq > runsSince.seq,
    marks: [
      { what: 'started', clock: started.body.clock },
      ...turns.map((fact): ClockMark => ({
        what: fact.kind === 'infusion-paused' ? 'paused' : 'resumed',
        clock: fact.body.clock,
      })),
    ],
  };
}

/** The way in is ready for the medicine: it ran freely, and nothing with calcium is in the line, which would fall out with it. */
export const isFlushed = (flush: Fact<'flush'> | undefined): boolean =>
  flush?.body.ranFreely === true && flush.body.calciumInLine !== true;

type Facts = Omit<Visit, 'steps'>;

/** That it stands still; and that nobody can say whether the line was looked along, which is not the same as safe. */
function saysOfInfusion(infusion: Infusion | undefined): string | undefined {
  if (infusion === undefined) return undefined;
  const { started, finished, paused } = infusion;
  const says = [
    ...(finished === undefined && paused !== undefined ? ['paused'] : []),
    ...(started.body.alongTheLine === lineNotOnPaper ? [`along the line: ${lineNotOnPaper}`] : []),
  ];
  return says.length === 0 ? undefined : says.join('; ');
}

/** What did a step, if anything has; `begun` marks a step that is under way. */
function factOf(
  step: VisitStepName,
  visit: Facts,
): { fact: Fact | undefined; begun?: Fact | undefined; says?: string | undefined } {
  switch (step) {
    case 'arrive':
      return { fact: visit.arrived, says: `${plural(visit.arrived.body.identifiers, 'and')} matched` };
    case 'observations':
      return { fact: visit.observationsBefore };
    case 'checklist':
      return { fact: visit.checklist };
    case 'decision': {
      const decision = visit.decision?.body.decision;
      return decision === 'ask a prescriber'
        ? { fact: undefined, begun: visit.decision, says: 'a prescriber is asked' }
        : { fact: visit.decision, says: decision };
    }
    case 'cannula':
      if (visit.infusion?.paused !== undefined && visit.resite !== undefined)
        return { fact: undefined, says: `another one: ${visit.resite.says}` };
      return { fact: visit.cannula, says: visit.cannula?.body.site };
    case 'flush':
      return { fact: isFlushed(visit.flush) ? visit.flush : undefined };
    case 'preparation':
      return { fact: visit.preparation };
    case 'second check':
      return visit.check?.body.agrees === false
        ? {
            fact: undefined,
            begun: visit.check,
            says: `the readings differ: ${plural(visit.check.body.differs, 'and')}`,
          }
        : { fact: visit.check };
    case 'injection':
      return { fact: visit.dose, says: visit.dose?.body.injectedInto };
    case 'infusion':
      return {
        fact: visit.infusion?.finished,
        begun: visit.infusion?.started,
        says: saysOfInfusion(visit.infusion),
      };
    case 'removal':
      // Taken out in a pause it is not the removal that ends the visit.
      return {
        fact: visit.infusion?.finished === undefined && visit.infusion !== undefined ? undefined : visit.removed,
      };
    case 'observe':
      return { fact: visit.observed };
    case 'leave':
      return { fact: visit.left };
  }
}

function stepsOf(visit: Facts): readonly VisitStep[] {
  let turnTaken = false;
  return visitSteps.flatMap((step): VisitStep[] => {
    if (isLeftOut(step, visit)) return [];
    const { fact, begun, says } = factOf(step, visit);
    if (fact !== undefined) return [{ step, state: 'done', fact, says }];
    // After a put-off or a going home nothing but what was done, and the leaving itself, is a step of this visit.
    if (visit.over || (visit.putOff && !neededAfterPutOff(step, visit))) return [];
    if (begun !== undefined) {
      turnTaken = true;
      return [{ step, state: 'running', fact: begun, says }];
    }
    if (turnTaken) return [{ step, state: 'to come', fact: undefined, says }];
    turnTaken = true;
    return [{ step, state: 'waiting', fact: undefined, says }];
  });
}

/** A drip has no injection; what is injected has no drip, and what was written by hand nothing that was prepared here. */
function isLeftOut(step: VisitStepName, { injection, injected, cannula, preparation, check }: Facts): boolean {
  if (step === 'injection') return injection === undefined;
  if (injection === undefined && !injected) return false;
  switch (step) {
    case 'cannula':
    case 'removal':
      return cannula === undefined;
    case 'flush':
    case 'infusion':
      return true;
    case 'preparation':
      return injection === undefined && preparation === undefined;
    case 'second check':
      return injection?.checkedByAnother !== true && check === undefined;
    default:
      return false;
  }
}
const neededAfterPutOff = (step: VisitStepName, visit: Facts): boolean =>
  step === 'leave' || (step === 'removal' && visit.cannula !== undefined);

/** "given", "part given", "put off" ... in a word, for lists. */
export function outcomeOf(
  visit: Visit | undefined,
): 'not here yet' | 'here' | 'given' | 'part given' | 'put off' | 'gone' {
  if (visit === undefined) return 'not here yet';
  if (visit.dose !== undefined) return visit.dose.body.partMilliliters === undefined ? 'given' : 'part given';
  if (visit.putOff) return 'put off';
  return visit.over ? 'gone' : 'here';
}

/** "visit of 28 Jan 2027" */
export const visitInWords = (visit: Visit): string => `visit of ${shortDate(visit.on)}`;
