/** A4 of docs/readiness.md: what no step moves, and from when there would be a window if it were settled today. */
import { course } from './course.ts';
import type { PlainDate, RequirementId } from '@twelvemonth/clinical';
import { calciumOf, calciumValue } from './calcium.ts';
import { hasRisen, heightMissing, isLowAndOpen, kidneyFunction, kidneyOf, repeatWouldRise } from './kidneys.ts';
import { askFacts } from './assumptions.ts';
import { dateText, monthsLater } from './dates.ts';
import type { OracleFact } from './facts.ts';
import {
  hipRepair,
  identity,
  pregnancy,
  prescription,
  hypersensitivity,
  illness,
  consent,
  isCleared,
  medicineUnknown,
  severeUndecided,
  undecidedFractures,
  mineralMetabolism,
  bonesAtHome,
  otherBoneMedicines,
  secondaryCauses,
  symptoms,
  teethAndJaw,
  undecidedPart,
} from './others.ts';
import { holds } from './requirements.ts';
import { type Ledger, type View, viewOf, withFacts } from './view.ts';
import { HORIZON, type OracleWindow, question, windowOf } from './window.ts';
import type { World } from './world.ts';

/** 'in favour': A4 says how it is settled. 'by no one': A4 says there is no such window. 'not said': the page is silent. */
export type Blocker = { readonly requirement: RequirementId; readonly settles: 'in favour' | 'by no one' | 'not said' };

const never = (holdsOn: (day: number) => boolean, today: number): boolean => {
  for (let day = today; day <= today + HORIZON; day += 1) if (holdsOn(day)) return false;
  return true;
};

function kidneyBlocker(view: Ledger, today: number): Blocker['settles'] | undefined {
  const kidney = kidneyOf(view, today);
  if (kidney.person === undefined || heightMissing(view)) return 'by no one';
  // The page does not say how a weight of nought, or one with a comparator, is settled; whatever the creatinine needs beside it.
  if (kidney.weight !== undefined && kidney.kilograms === undefined) return 'not said';
  if (kidney.state === 'voided') return 'in favour';
  if (kidney.creatinine !== undefined && kidney.micromoles === undefined) return 'not said';
  if (hasRisen(view, kidney)) return 'in favour';
  const { creatinine, weight } = kidney;
  if (creatinine === undefined || weight === undefined) return undefined;
  // As it is, only signed, only weighed: what no repeat is needed for.
  const weighed = { ...weight, ids: [], on: today, seq: 1e6, body: { ...weight.body, method: 'measured' as const } };
  const signed = { ...creatinine, signed: true, seq: creatinine.seq + 0.5 };
  const answers = [[signed], [signed, weighed]].map((more) => kidneyFunction(withFacts(view, more, today), today));
  if (answers.some(holds)) return undefined;
  // With a creatinine that needs no repeat it can only be the weights that disagree.
  if (kidney.state === 'out of date' && repeatWouldRise(view, kidney, today)) return 'in favour';
  const repeated = { ...creatinine, ids: [], on: today, seq: 1e6, signed: true };
  const again = withFacts(view, [repeated, weighed], today);
  const answer = kidneyFunction(again, today);
  if (answer.verdict === 'not ready' || isLowAndOpen(again, today)) return 'in favour';
  return answer.verdict === 'cannot say' ? 'not said' : undefined;
}

function calciumBlocker(view: View, today: number): Blocker['settles'] | undefined {
  const calcium = calciumOf(view, today);
  if (calcium.state === 'voided') return 'in favour';
  if (calcium.state === 'never measured' || calcium.state === 'albumin missing') return undefined;
  const { verdict } = calciumValue(view, calcium);
  return verdict === 'ready' ? undefined : verdict === 'not ready' ? 'in favour' : 'not said';
}

function blockersOf(view: Ledger, today: number): readonly Blocker[] {
  const found: Blocker[] = [];
  const add = (requirement: RequirementId, settles: Blocker['settles'] | undefined): void => {
    if (settles !== undefined && !view.regimen.leavesOut.includes(requirement)) found.push({ requirement, settles });
  };
  add('identity', holds(identity(view, today)) ? undefined : 'by no one');
  const open = severeUndecided(view).length > 0 || view.of('allergy').some(({ body }) => medicineUnknown(body));
  const against = hypersensitivity(view).verdict === 'not ready';
  add('hypersensitivity', against ? 'by no one' : open ? 'in favour' : undefined);
  add('pregnancy', pregnancy(view, today).verdict === 'not ready' ? 'by no one' : undefined);
  add('illness', holds(illness(view)) ? undefined : 'in favour');
  add('symptoms', never((day) => holds(symptoms(view, day)), today) ? 'in favour' : undefined);
  add('kidney-function', kidneyBlocker(view, today));
  add('calcium', calciumBlocker(view, today));
  add('mineral-metabolism', holds(mineralMetabolism(view)) ? undefined : 'in favour');
  add('hip-repair', never((day) => holds(hipRepair(view, day)), today) ? 'in favour' : undefined);
  add('interval', undecidedPart(view) ? 'in favour' : undefined);
  add('other-bone-medicines', never((day) => holds(otherBoneMedicines(view, day)), today) ? 'in favour' : undefined);
  add('course', never((day) => holds(course(view, day)), today) ? 'in favour' : undefined);
  add('prescription', never((day) => holds(prescription(view, day)), today) ? 'in favour' : undefined);
  const whenAsked = (day: number): View => withFacts(view, askFacts(view, today, day).facts, day);
  add('consent', never((day) => holds(consent(whenAsked(day), day)), today) ? 'in favour' : undefined);
  add('teeth-and-jaw', never((day) => holds(teethAndJaw(whenAsked(day), day)), today) ? 'in favour' : undefined);
  add('secondary-causes', holds(secondaryCauses(whenAsked(today))) ? undefined : 'in favour');
  return found;
}

const settledDose = (on: number, after: number): Omit<OracleFact<'dose'>, 'body'> => ({
  kind: 'dose',
  on,
  seq: 1e6 + after,
  firstSeq: 1e6 + after,
  ids: [],
  from: on,
});

/** What settling these today adds to the ledger. */
function settlingFacts(
  view: Ledger,
  today: number,
  is: (requirement: RequirementId) => boolean,
): readonly OracleFact[] {
  const facts: OracleFact[] = [];
  const add = (kind: OracleFact['kind'], body: unknown): void => {
    const seq = 1e6 + facts.length;
    facts.push({ kind, on: today, seq, firstSeq: seq, body, ids: [], from: today } as unknown as OracleFact);
  };
  if (is('illness')) add('well-since', {});
  if (is('hypersensitivity')) {
    for (const { ids } of severeUndecided(view))
      add('prescriber-decision', { question: 'severe reaction looked into', about: ids[0], reason: 'settled' });
  }
  if (is('consent')) {
    add('capacity', { answer: 'can decide this' });
    add('consent', { decision: 'given', how: 'spoken' });
  }
  if (is('symptoms')) {
    for (const { ids } of undecidedFractures(view))
      add('prescriber-decision', { question: 'thigh fracture not atypical', about: ids[0], reason: 'settled' });
    for (const fact of view.of('symptom'))
      if (fact.body.what !== 'back pain' && fact.body.what !== 'height loss' && !isCleared(view, fact))
        add('symptom-cleared', { entry: fact.ids[0], finding: 'looked into' });
    for (const { ids, body } of view.of('checklist'))
      for (const question of Object.keys(body.answers))
        add('symptom-cleared', { entry: ids[0], question, finding: 'looked into' });
  }
  if (is('other-bone-medicines')) {
    for (const { body } of bonesAtHome(view))
      if (body.stoppedOn === undefined) add('medicine', { ...body, stoppedOn: dateText(today) });
    for (const { body, on, ids } of view.of('dose')) {
      if (body.medicine === 'teriparatide' && body.until === undefined)
        facts.push({ ...settledDose(on, facts.length), body: { ...body, until: dateText(today) as PlainDate } });
      add('prescriber-decision', { question: 'switch agreed', about: ids[0], reason: 'settled' });
    }
  }
  if (is('mineral-metabolism')) {
    for (const { ids } of [...view.of('result'), ...view.of('condition')])
      add('prescriber-decision', { question: 'mineral metabolism looked into', about: ids[0], reason: 'settled' });
  }
  if (is('hip-repair')) {
    for (const { ids } of view.of('fracture'))
      add('prescriber-decision', { question: 'hip fracture looked into', about: ids[0], reason: 'settled' });
  }
  if (is('teeth-and-jaw')) add('dental', { answer: 'seen: nothing left to heal', checkedOn: dateText(today) });
  if (is('secondary-causes')) add('secondary-causes', { answer: 'found, dealt with' });
  if (is('prescription')) {
    const before = view.of('prescription').at(-1)?.body;
    const regimens = view.world.sheet.regimens;
    const regimen = regimens.find((candidate) => candidate.id === before?.regimen) ?? regimens[0];
    const until = dateText(monthsLater(today, 12)) as PlainDate;
    add('prescription', {
      ...before,
      regimen: regimen?.id ?? '',
      validFrom: dateText(today) as PlainDate,
      validUntil: until,
    });
  }
  if (is('interval')) {
    for (const dose of view.of('dose')) {
      if (dose.body.partMilliliters !== undefined)
        add('prescriber-decision', { question: 'part dose counts', about: dose.ids[0], reason: 'settled' });
    }
  }
  return facts;
}

/** An allergy corrected so that it says what it is to: nothing for bones. */
function medicineTold(fact: OracleFact): OracleFact {
  if (fact.kind !== 'allergy' || !medicineUnknown((fact as OracleFact<'allergy'>).body)) return fact;
  return { ...fact, body: { ...fact.body, medicine: 'medicine not for bones' } as OracleFact['body'] };
}

export type Unsettled = {
  /** Those that stand in the way by themselves, whatever else is settled. */
  readonly alone: readonly Blocker[];
  readonly blocked: readonly Blocker[];
  /** The window if all of these were settled today in the person's favour; 'not said' where the page does not say. */
  readonly ifSettled: OracleWindow | undefined | 'not said';
};

/**
 * What stands in the way for ever; then, with that settled, what stands in the way then (a part dose that counts may be the
 * last one planned), until nothing more is found. A prescription that ends too soon for everything else is one of them.
 */
export function unsettled(world: World, facts: readonly OracleFact[], today: number): Unsettled {
  const known = facts.filter((fact) => fact.on <= today);
  const ledger = viewOf(world, known, today);
  const alone = blockersOf(ledger, today);
  const blocked: Blocker[] = [...alone];
  for (;;) {
    const is = (requirement: RequirementId): boolean => blocked.some((blocker) => blocker.requirement === requirement);
    const told = is('hypersensitivity') ? known.map(medicineTold) : known;
    const settledFacts = [...told, ...settlingFacts(ledger, today, is)];
    const view = viewOf(world, settledFacts, today);
    const settled = { creatinine: is('illness') || is('kidney-function'), calcium: is('illness') || is('calcium') };
    const granted = new Set<RequirementId>(is('course') ? ['course'] : []);
    const more = blockersOf(view, today).filter(
      ({ requirement }) => !is(requirement) && !(is('illness') && ['kidney-function', 'calcium'].includes(requirement)),
    );
    if (more.length > 0) {
      blocked.push(...more);
      continue;
    }
    if (blocked.some((blocker) => blocker.settles === 'by no one')) return { alone, blocked, ifSettled: undefined };
    if (blocked.some((blocker) => blocker.settles === 'not said')) return { alone, blocked, ifSettled: 'not said' };
    const window = windowOf(question(world, settledFacts, today, settled, granted));
    if (window !== undefined || blocked.length === 0)
      return { alone, blocked, ifSettled: blocked.length === 0 ? 'not said' : window };
    if (is('prescription') || view.of('prescription').length === 0) return { alone, blocked, ifSettled: window };
    blocked.push({ requirement: 'prescription', settles: 'in favour' });
  }
}
