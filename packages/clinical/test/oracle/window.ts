/**
 * F, S and L of docs/readiness.md (A3, A4), by trying: every day in turn; on each day no draw, then a draw on every blood
 * day in turn; with and without the loading; with and without a signature. Days on which something stands in the way that
 * no step moves are passed over; nothing else is left out.
 */
import type { RequirementId } from '@twelvemonth/clinical';
import {
  type Settled,
  type Test,
  askFacts,
  calciumMayBeRepeated,
  creatinineMayBeRepeated,
  creatinineMayBeSigned,
  drawFacts,
  drawFloor,
  levelCase,
  loadingDays,
  loadingFacts,
  maintenanceFact,
  nothingSettled,
  signFact,
  weighFact,
} from './assumptions.ts';
import { calciumOf } from './calcium.ts';
import { kidneyOf } from './kidneys.ts';
import { isSigned } from './samples.ts';
import { loadingsOf, vitaminDLevel } from './vitamin-d.ts';
import type { OracleFact } from './facts.ts';
import { holds, requirementNames, requirements } from './requirements.ts';
import { type Ledger, type View, viewOf, withFacts } from './view.ts';
import { type World, isBloodDay, usableFrom } from './world.ts';

export const HORIZON = 1200;

export type Plan = {
  readonly draw: { readonly on: number; readonly tests: readonly Test[] } | undefined;
  readonly weighOn: number | undefined;
  readonly loading: readonly number[] | undefined;
  readonly signs: boolean;
  readonly asked: readonly string[];
  readonly facts: readonly OracleFact[];
};

export type OracleWindow = {
  readonly first: number;
  readonly last: number | undefined;
  readonly certain: boolean;
  readonly plan: Plan;
};

type Question = {
  readonly world: World;
  readonly view: Ledger;
  readonly today: number;
  readonly settled: Settled;
  /** Requirements taken as held (A4: a review that says carry on). */
  readonly granted: ReadonlySet<RequirementId>;
};

const bloodRequirements = ['kidney-function', 'calcium', 'vitamin-d'] as const;
const askedRequirements = ['hypersensitivity', 'pregnancy', 'consent', 'teeth-and-jaw', 'secondary-causes'] as const;
const otherRequirements = requirementNames.filter(
  (name) => !([...bloodRequirements, ...askedRequirements] as readonly RequirementId[]).includes(name),
);

export function question(
  world: World,
  facts: readonly OracleFact[],
  today: number,
  settled: Settled = nothingSettled,
  granted: ReadonlySet<RequirementId> = new Set(),
): Question {
  const known = facts.filter((fact) => fact.on <= today);
  const view = viewOf(world, known, today);
  return { world: view.world, view, today, settled, granted };
}

/** What stands in the way on a day that no step moves, if anything. `first` is tried first: most days have yesterday's reason. */
function inTheWay(q: Question, day: number, first: RequirementId | undefined): RequirementId | undefined {
  const fails = (name: RequirementId): boolean => !q.granted.has(name) && !holds(requirements[name](q.view, day));
  if (first !== undefined && (otherRequirements as readonly string[]).includes(first) && fails(first)) return first;
  const other = otherRequirements.find(fails);
  if (other !== undefined) return other;
  const { facts } = askFacts(q.view, q.today, day);
  const asked = withFacts(q.view, facts, day);
  return askedRequirements.find((name) => !q.granted.has(name) && !holds(requirements[name](asked, day)));
}

type Trial = {
  readonly facts: readonly OracleFact[];
  readonly tests: readonly Test[];
  readonly weighOn: number | undefined;
  readonly signs: boolean;
  readonly asks: boolean;
};

/** The three requirements that bloods serve, with a draw on a day or without; undefined if it does not come out on `day`. */
function tryBloods(q: Question, day: number, drawOn: number | undefined, load: boolean): Trial | undefined {
  const base = load ? loadingFacts(q.view, q.today, day) : [];
  const facts: OracleFact[] = [...base];
  const tests: Test[] = [];
  let weighOn: number | undefined;
  let signs = false;
  let asks = false;
  if (drawOn !== undefined) facts.push(weighFact(q.view, drawOn));
  const seen = (more: readonly OracleFact[]): View => withFacts(q.view, [...facts, ...more], day);

  // Kidney function: as it is; signed; weighed; a draw.
  const kidney = kidneyOf(q.view, day);
  const maySign = creatinineMayBeSigned(q.view, day, q.settled);
  const mayDraw = creatinineMayBeRepeated(q.view, q.today, day, q.settled);
  const unsigned = kidney.creatinine !== undefined && maySign && !isSigned(q.view, kidney.creatinine);
  const signature = unsigned && kidney.creatinine !== undefined ? [signFact([kidney.creatinine], q.today)] : [];
  const weighed =
    drawOn === undefined ? [weighFact(q.view, Math.max(q.today, day - q.world.count('weightValidDays')))] : [];
  const kidneyTrials: { more: readonly OracleFact[]; needs: 'nothing' | 'sign' | 'weigh' | 'both' | 'draw' }[] = [
    { more: [], needs: 'nothing' },
  ];
  if (unsigned && !q.settled.creatinine) kidneyTrials.push({ more: signature, needs: 'sign' });
  if (weighed.length > 0 && maySign && !q.settled.creatinine) {
    kidneyTrials.push({ more: weighed, needs: 'weigh' });
    if (unsigned) kidneyTrials.push({ more: [...signature, ...weighed], needs: 'both' });
  }
  if (drawOn !== undefined && mayDraw)
    kidneyTrials.push({ more: drawFacts(q.view, drawOn, ['creatinine'], q.settled), needs: 'draw' });
  const kidneyHolds = kidneyTrials.find((trial) => holds(requirements['kidney-function'](seen(trial.more), day)));
  if (kidneyHolds === undefined) return undefined;
  facts.push(...kidneyHolds.more);
  if (kidneyHolds.needs === 'draw') tests.push('creatinine');
  if (kidneyHolds.needs === 'sign' || kidneyHolds.needs === 'both') signs = true;
  if (kidneyHolds.needs === 'weigh' || kidneyHolds.needs === 'both') weighOn = weighed[0]?.on;

  // Calcium: as it is; signed; a draw.
  const calcium = calciumOf(q.view, day);
  const mayRepeat = calciumMayBeRepeated(q.view, day, q.settled);
  const calciumTrials: { more: readonly OracleFact[]; needs: 'nothing' | 'sign' | 'draw' }[] = [
    { more: [], needs: 'nothing' },
  ];
  if (calcium.state === 'unsigned' && mayRepeat && !q.settled.calcium)
    calciumTrials.push({ more: [signFact(calcium.results, q.today)], needs: 'sign' });
  if (drawOn !== undefined && mayRepeat)
    calciumTrials.push({ more: drawFacts(q.view, drawOn, ['calcium'], q.settled), needs: 'draw' });
  const calciumHolds = calciumTrials.find((trial) => holds(requirements.calcium(seen(trial.more), day)));
  if (calciumHolds === undefined) return undefined;
  facts.push(...calciumHolds.more);
  if (calciumHolds.needs === 'draw') tests.push('calcium');
  if (calciumHolds.needs === 'sign') signs = true;

  // Vitamin D: as it is, or by what its case allows.
  if (!holds(requirements['vitamin-d'](seen([]), day))) {
    const needs = levelCase(q.view, day);
    const level = vitaminDLevel(q.view);
    if (load) return undefined;
    const more =
      needs === 'may be signed' && level !== undefined
        ? [signFact([level], q.today)]
        : needs === 'may be drawn' && drawOn !== undefined
          ? drawFacts(q.view, drawOn, ['vitamin D'], q.settled)
          : needs === 'may be asked'
            ? [maintenanceFact(q.view, q.today, loadingsOf(q.view).at(-1)?.finishedOn ?? q.today, day)]
            : [];
    if (!holds(requirements['vitamin-d'](seen(more), day))) return undefined;
    facts.push(...more);
    if (needs === 'may be drawn') tests.push('vitamin D');
    else if (needs === 'may be asked') asks = true;
    else signs = true;
  }
  if (drawOn !== undefined && tests.length === 0) return undefined;
  return { facts, tests, weighOn, signs, asks };
}

const needsLoading = (q: Question, day: number): boolean => {
  if (holds(requirements['vitamin-d'](q.view, day))) return false;
  const needs = levelCase(q.view, day);
  return needs === 'must be loaded' || needs === 'loading runs';
};

/**
 * Passing over days on which no draw can help, whenever it is taken: the newest value may not be repeated and does not hold,
 * weighed anew or not; or, repeated with the age and weight of that day, it fails or its weights disagree. None of this
 * depends on when it is drawn.
 */
function noDrawHelps(q: Question, day: number): boolean {
  if (!calciumMayBeRepeated(q.view, day, q.settled) && !holds(requirements.calcium(q.view, day))) return true;
  const { creatinine } = kidneyOf(q.view, day);
  const maySign = creatinineMayBeSigned(q.view, day, q.settled);
  const signed = creatinine === undefined || !maySign ? [] : [signFact([creatinine], q.today)];
  if (holds(requirements['kidney-function'](withFacts(q.view, [...signed, weighFact(q.view, day)], day), day)))
    return false;
  if (!creatinineMayBeRepeated(q.view, q.today, day, q.settled)) return true;
  const drawn = drawFacts(q.view, day, ['creatinine'], q.settled).map((fact) => ({ ...fact, from: day }));
  return !holds(requirements['kidney-function'](withFacts(q.view, drawn, day), day));
}

/** The fewest draws, then the fewest other steps, each on its earliest day, that make every requirement hold on `day`. */
function planFor(q: Question, day: number): Plan | undefined {
  const load = needsLoading(q, day);
  // A2: ready from the day of the last dose, even where a level that an older loading had replaced would decide before.
  if (load && (loadingDays(q.view, q.today, day).days.at(-1) ?? q.today) > day) return undefined;
  const asks = askFacts(q.view, q.today, day);
  const plan = (trial: Trial, drawOn: number | undefined): Plan => ({
    draw: drawOn === undefined ? undefined : { on: drawOn, tests: trial.tests },
    weighOn: trial.weighOn,
    loading: load ? loadingDays(q.view, q.today, day).days : undefined,
    signs: trial.signs,
    asked: trial.asks ? [...asks.asked, 'maintenance'] : asks.asked,
    facts: [...trial.facts, ...asks.facts],
  });
  const without = tryBloods(q, day, undefined, load);
  if (without !== undefined) return plan(without, undefined);
  if (noDrawHelps(q, day)) return undefined;
  for (
    let drawOn = Math.max(q.today, drawFloor(q.view));
    drawOn <= day && usableFrom(q.world, drawOn) <= day;
    drawOn += 1
  ) {
    if (!isBloodDay(q.world, drawOn)) continue;
    const trial = tryBloods(q, day, drawOn, load);
    if (trial !== undefined) return plan(trial, drawOn);
  }
  return undefined;
}

function lastDay(q: Question, first: number, plan: Plan): number | undefined {
  for (let day = first + 1; day <= q.today + HORIZON; day += 1) {
    const view = withFacts(q.view, plan.facts, day);
    if (requirementNames.some((name) => !q.granted.has(name) && !holds(requirements[name](view, day)))) return day - 1;
  }
  return undefined;
}

const isEmpty = (plan: Plan): boolean =>
  plan.draw === undefined &&
  plan.weighOn === undefined &&
  plan.loading === undefined &&
  !plan.signs &&
  plan.asked.length === 0;

export function windowOf(q: Question): OracleWindow | undefined {
  let reason: RequirementId | undefined;
  for (let day = q.today; day <= q.today + HORIZON; day += 1) {
    reason = inTheWay(q, day, reason);
    if (reason !== undefined) continue;
    const plan = planFor(q, day);
    if (plan !== undefined) return { first: day, last: lastDay(q, day, plan), certain: isEmpty(plan), plan };
  }
  return undefined;
}
