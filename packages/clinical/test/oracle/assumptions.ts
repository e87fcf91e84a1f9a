/**
 * A2 of docs/readiness.md: the steps that may be assumed, as the facts they would add. Whether they help is not reasoned
 * about here: it is tried, day by day (window.ts).
 */
import type { KindName, PlainDate, RequirementId } from '@twelvemonth/clinical';
import { exceptionHolds } from './answer.ts';
import { calciumOf, calciumValue } from './calcium.ts';
import { hasRisen, heightMissing, kidneyOf, repeatWouldRise } from './kidneys.ts';
import { floorDay, isSigned } from './samples.ts';
import { hipRepairUnanswered, levelValue, maintenanceMayBeAsked, loadingsOf, vitaminDLevel } from './vitamin-d.ts';
import { dateText } from './dates.ts';
import type { OracleFact } from './facts.ts';
import { cannotDecide, saidNo, secondaryCauses } from './others.ts';
import type { View } from './view.ts';
import { usableFrom } from './world.ts';

export type Test = 'creatinine' | 'calcium' | 'vitamin D';
/** What is settled today in the person's favour (A4); nothing, when the window itself is looked for. */
export type Settled = { readonly creatinine: boolean; readonly calcium: boolean };
export const nothingSettled: Settled = { creatinine: false, calcium: false };

const AFTER_EVERYTHING = 1_000_000;
const fact = (kind: KindName, on: number, body: unknown, more: object = {}): OracleFact =>
  ({
    kind,
    on,
    seq: AFTER_EVERYTHING,
    firstSeq: AFTER_EVERYTHING,
    body,
    ids: [],
    from: on,
    ...more,
  }) as unknown as OracleFact;

const anyNumber = { comparator: '', value: '1', unit: 'kg' };

/** Creatinine may be signed unless its newest value was voided, has risen, or has no usable number. */
export function creatinineMayBeSigned(view: View, day: number, settled: Settled): boolean {
  if (settled.creatinine) return true;
  const kidney = kidneyOf(view, day);
  if (kidney.person === undefined || kidney.state === 'voided' || heightMissing(view)) return false;
  return kidney.creatinine === undefined || (kidney.micromoles !== undefined && !hasRisen(view, kidney));
}

/** It may be repeated if, besides, the same value had again would not have risen. */
export const creatinineMayBeRepeated = (view: View, today: number, day: number, settled: Settled): boolean =>
  creatinineMayBeSigned(view, day, settled) &&
  (settled.creatinine || !repeatWouldRise(view, kidneyOf(view, day), today));

/** Calcium may be repeated if it was never measured, or if its newest value passes and was not voided. */
export function calciumMayBeRepeated(view: View, day: number, settled: Settled): boolean {
  if (settled.calcium) return true;
  const calcium = calciumOf(view, day);
  if (calcium.state === 'never measured' || calcium.state === 'albumin missing') return true;
  return calcium.state !== 'voided' && calciumValue(view, calcium).verdict === 'ready';
}

type LevelCase = 'may be drawn' | 'may be signed' | 'must be loaded' | 'loading runs' | 'may be asked';

/** What vitamin D needs where it is not ready on `day`. */
export function levelCase(view: View, day: number): LevelCase {
  const loading = loadingsOf(view).at(-1);
  if (hipRepairUnanswered(view, day))
    return loading !== undefined && !loading.stopped && loading.finishedOn === undefined
      ? 'loading runs'
      : 'must be loaded';
  const level = vitaminDLevel(view);
  const value = level === undefined ? undefined : levelValue(view, level).verdict;
  const inDate = level !== undefined && levelWouldBeInDate(view, level.on, day);
  const maySign = level !== undefined && value === 'ready' && inDate && !isSigned(view, level);
  if (loading !== undefined) {
    const ended = loading.finishedOn ?? loading.stoppedOn;
    if (ended === undefined) return 'loading runs';
    if (loading.finishedOn !== undefined && maintenanceMayBeAsked(view, loading.finishedOn, day)) return 'may be asked';
    // A loading that no longer stands, or was stopped, is had again, unless a newer level is to be signed or judged. After
    // a stop the level decides (R4), so a passing one that only waits for its signature is signed, whatever its date.
    const newer = level !== undefined && level.on > ended;
    if (!newer && !(loading.stopped && maySign)) return 'must be loaded';
  }
  if (maySign) return 'may be signed';
  if (value === 'not ready') return 'must be loaded';
  if (level === undefined)
    return view.world.sheet.vitaminDPolicy === 'await the level' ? 'may be drawn' : 'must be loaded';
  return 'may be drawn';
}

const levelWouldBeInDate = (view: View, on: number, day: number): boolean =>
  day <= on + view.world.count('vitaminDValidDays');

/**
 * The days of the doses still to take on account of `day`: of the loading under way; or of a new one, from the day of asking
 * or, where that one would no longer stand on `day`, from the earliest day from which it does.
 */
export function loadingDays(
  view: View,
  today: number,
  day: number,
): { readonly days: readonly number[]; readonly isNew: boolean } {
  const loading = loadingsOf(view).at(-1);
  const days: number[] = [];
  if (loading === undefined || loading.stopped || loading.finishedOn !== undefined) {
    const doses = view.world.count('loadingDoses');
    const every = view.world.count('loadingEveryDays');
    const begins = Math.max(today, day - view.world.count('maintenanceConfirmDays') - (doses - 1) * every);
    for (let dose = 0; dose < doses; dose += 1) days.push(begins + dose * every);
    return { days, isNew: true };
  }
  const { everyDays, doses, startOn } = loading.fact.body;
  let previous = loading.lastTaken;
  for (let dose = loading.taken + 1; dose <= doses; dose += 1) {
    const day = Math.max(
      view.day(startOn) + everyDays * (dose - 1),
      today,
      previous === undefined ? -Infinity : previous + everyDays,
    );
    days.push(day);
    previous = day;
  }
  return { days, isNew: false };
}

export function loadingFacts(view: View, today: number, day: number): readonly OracleFact[] {
  const { days, isNew } = loadingDays(view, today, day);
  const taken = days.map((day) => fact('vitamin-d-taken', day, { doses: 1, source: 'told us' }));
  if (!isNew) {
    const ends = days.at(-1) ?? today;
    return maintenanceMayBeAsked(view, ends, day) ? [...taken, maintenanceFact(view, today, ends, day)] : taken;
  }
  const begins = days[0] ?? today;
  const startOn = dateText(begins) as PlainDate;
  // A dose of the old loading taken on the very day is not one of the new: it ends when its own last dose is taken (A2).
  const already = view.of('vitamin-d-taken').filter((dose) => dose.on >= begins);
  const doses = already.reduce((sum, dose) => sum + dose.body.doses, days.length);
  const body = { doses, everyDays: view.world.count('loadingEveryDays'), unitsPerDose: 50000, startOn };
  return [fact('vitamin-d-loading', begins, body), ...taken];
}

/** That the daily vitamin D is taken, asked for about a loading ended on C as soon as it counts on `day`. */
export const maintenanceFact = (view: View, today: number, finishedOn: number, day: number): OracleFact =>
  fact('vitamin-d-maintenance', Math.max(today, finishedOn + 1, day - view.world.count('maintenanceConfirmDays')), {
    taken: true,
  });

/** What a draw on a day adds: the newest values once more, signed and usable after the laboratory's days; and a weight. */
export function drawFacts(view: View, drawn: number, tests: readonly Test[], settled: Settled): readonly OracleFact[] {
  const usable = { signed: true, from: usableFrom(view.world, drawn) };
  const facts: OracleFact[] = [weighFact(view, drawn)];
  if (tests.includes('creatinine')) {
    const { creatinine } = kidneyOf(view, drawn);
    const good = settled.creatinine || creatinine === undefined;
    facts.push(
      fact('result', drawn, good ? { analyte: 'creatinine', quantity: anyNumber } : creatinine.body, {
        ...usable,
        good,
      }),
    );
  }
  if (tests.includes('calcium')) {
    const calcium = calciumOf(view, drawn);
    const good = settled.calcium || calcium.state === 'never measured' || calcium.state === 'albumin missing';
    if (good)
      facts.push(fact('result', drawn, { analyte: 'adjusted calcium', quantity: anyNumber }, { ...usable, good }));
    else for (const result of calcium.results) facts.push(fact('result', drawn, result.body, usable));
  }
  if (tests.includes('vitamin D')) {
    const level = vitaminDLevel(view);
    const good = level === undefined || levelValue(view, level).verdict === 'cannot say';
    facts.push(
      fact('result', drawn, good ? { analyte: 'vitamin D', quantity: anyNumber } : level.body, { ...usable, good }),
    );
  }
  return facts;
}

/** The newest weight once more, measured; assumed good if there never was one. */
export function weighFact(view: View, on: number): OracleFact {
  const weight = view.of('weight').at(-1);
  const good = weight === undefined || weight.good === true;
  return fact('weight', on, { quantity: weight?.body.quantity ?? anyNumber, method: 'measured' }, { good });
}

export const signFact = (results: readonly OracleFact[], today: number): OracleFact =>
  fact('results-signed', today, { results: results.flatMap((result) => result.ids) });

/** Answers that may be asked for, on the earliest day from which they count on `day`. */
export function askFacts(
  view: View,
  today: number,
  day: number,
): { readonly facts: readonly OracleFact[]; readonly asked: readonly string[] } {
  const facts: OracleFact[] = [];
  const asked: string[] = [];
  const ask = (requirement: RequirementId, kind: KindName, on: number, body: unknown): void => {
    if (view.regimen.leavesOut.includes(requirement)) return;
    facts.push(fact(kind, on, body));
    asked.push(requirement);
  };
  const consent = view.of('consent').at(-1);
  const stands = view.world.count('consentValidDays');
  const mayAsk = consent === undefined || (consent.body.decision === 'given' && day > consent.on + stands);
  if (mayAsk && !cannotDecide(view) && !saidNo(view))
    ask('consent', 'consent', Math.max(today, day - stands), { decision: 'given', how: 'spoken' });
  if (view.of('allergy').length === 0) ask('hypersensitivity', 'allergy', today, { answer: 'none known' });
  const pregnancy = view.of('pregnancy').at(-1);
  const valid = view.world.count('pregnancyAnswerDays');
  if (pregnancy === undefined || (pregnancy.body.answer === 'no' && day > pregnancy.on + valid))
    ask('pregnancy', 'pregnancy', Math.max(today, day - valid), { answer: 'no' });
  const told = view.world.count('teethAnswerDays');
  const newest = view.of('dental').at(-1);
  if (!exceptionHolds(view, 'teeth and jaw', day) && (newest === undefined || day > newest.on + told))
    ask('teeth-and-jaw', 'dental', Math.max(today, day - told), { answer: 'nothing pending' });
  if (view.of('secondary-causes').length === 0 && secondaryCauses(view).verdict !== 'ready')
    ask('secondary-causes', 'secondary-causes', today, { answer: 'none found' });
  return { facts, asked };
}

export const drawFloor = (view: View): number => floorDay(view) ?? Infinity;
