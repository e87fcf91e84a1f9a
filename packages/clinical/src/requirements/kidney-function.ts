/**
 * Creatinine clearance from a creatinine and a weight in date, by both printed forms, on the age of the day
 * (docs/readiness.md R2). Acute change and a disagreement with ideal weight are a prescriber's.
 */
import { type Day, addDays, ageOn, birthdayIn, civilFromDay, shortDate } from '../calendar/day.ts';
import { type Quantity, exactValue, quantityText } from '../exact/quantity.ts';
import { type Ratio, compareRatios, minus, ratioOf, times } from '../exact/ratio.ts';
import { type Clearance, bothAtLeast, creatinineClearance, eitherBelow } from '../formulas/creatinine-clearance.ts';
import { adjustedWeightKg, idealWeightKg, isAtLeastPercentOf } from '../formulas/ideal-weight.ts';
import { creatinineUmolPerL, heightCm, weightKg } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { HORIZON_DAYS } from '../readiness/context.ts';
import type { Evidence } from './evidence.ts';
import { type KidneyFacts, clearanceText, kidneyWorking } from './kidney-working.ts';
import {
  type Blocker,
  type Judge,
  type Judgement,
  type Needs,
  type Path,
  type Requirement,
  judgement,
  readyPath,
} from './requirement.ts';
import { isOutOfDate, isVoided, samplesCount, whyVoided } from './samples.ts';

/** A plain number above nought in a unit that belongs to it. */
function usable(value: Quantity, convert: (q: Quantity) => Ratio | undefined): Ratio | undefined {
  return value.comparator === '' && exactValue(value) > 0 ? convert(value) : undefined;
}

/** Baseline of R2a: the lowest of the signed creatinines of the days before, undefined if there is none. */
function baselineOf(evidence: Evidence, protocol: Protocol): { readonly umol: Ratio; readonly on: Day } | undefined {
  const { creatinine } = evidence;
  if (creatinine === undefined) return undefined;
  let lowest: { umol: Ratio; on: Day } | undefined;
  for (const one of evidence.earlierCreatinines) {
    if (one.on < creatinine.on - protocol.number.baselineDays) continue;
    const umol = usable(one.value, creatinineUmolPerL);
    if (umol !== undefined && (lowest === undefined || compareRatios(umol, lowest.umol) < 0))
      lowest = { umol, on: one.on };
  }
  return lowest;
}

function hasRisen(umol: Ratio, baseline: Ratio, protocol: Protocol): boolean {
  return (
    compareRatios(minus(umol, baseline), ratioOf(protocol.exact.creatinineRise)) >= 0 ||
    compareRatios(umol, times(baseline, ratioOf(protocol.exact.creatinineRiseFactor))) >= 0
  );
}

/** Weights other than the actual one that must be looked at beside it: ideal, and adjusted where heavy enough. */
function otherWeights(evidence: Evidence, kg: Ratio, protocol: Protocol): KidneyFacts['otherWeights'] {
  const { height, sex } = evidence;
  if (height === undefined || sex === undefined) return [];
  const cm = usable(height.body.quantity, heightCm);
  const ideal = cm === undefined ? undefined : idealWeightKg(sex, cm);
  if (ideal === undefined || compareRatios(kg, ideal) <= 0) return [];
  const found: { sort: 'ideal' | 'adjusted'; kg: Ratio }[] = [{ sort: 'ideal', kg: ideal }];
  if (isAtLeastPercentOf(kg, ideal, protocol.exact.adjustedWeightFromPercent)) {
    found.push({ sort: 'adjusted', kg: adjustedWeightKg(kg, ideal, protocol.exact.adjustedWeightShare) });
  }
  return found;
}

const repeat: NonNullable<Blocker['settled']> = (evidence) => ({ ...evidence, creatinine: undefined });

function judge(evidence: Evidence, protocol: Protocol): Judge {
  const { born, sex, creatinine, weight } = evidence;
  const { clearanceFloor, nearLimitCeiling } = protocol.exact;
  const { bloodsValidDays, weightValidDays } = protocol.number;
  const count = samplesCount(evidence, protocol);
  const exception = evidence.exceptions['age of bloods'];
  const birth = born?.precision === 'day' ? born.day : undefined;
  const umol =
    creatinine !== undefined && typeof creatinine.value !== 'string'
      ? usable(creatinine.value, creatinineUmolPerL)
      : undefined;
  const kg = weight !== undefined && typeof weight.value !== 'string' ? usable(weight.value, weightKg) : undefined;
  const baseline = umol === undefined ? undefined : baselineOf(evidence, protocol);
  const risen =
    umol !== undefined && baseline !== undefined && !evidence.riseAccepted && hasRisen(umol, baseline.umol, protocol);
  const others = kg === undefined ? [] : otherWeights(evidence, kg, protocol);
  const bloods = creatinine === undefined ? '' : `bloods of ${shortDate(creatinine.on)}`;
  const weighedOn = weight === undefined ? '' : `weight of ${shortDate(weight.on)}`;

  const facts: KidneyFacts = { evidence, protocol, birth, umol, kg, baseline, otherWeights: others };
  const cannotSay = (cause: string, says: string): Judgement =>
    judgement('cannot say', cause, () => kidneyWorking(facts, says, undefined));
  const lazily = (make: () => Judgement): (() => Judgement) => {
    let made: Judgement | undefined;
    return () => (made ??= make());
  };
  const noAge = lazily(() =>
    cannotSay(
      'age not known, so clearance',
      'The birth date is not known to the day, so neither age nor clearance can be said.',
    ),
  );
  const noSex = lazily(() =>
    cannotSay('sex not recorded, so clearance', 'The clearance formula needs the sex as registered.'),
  );
  const neverMeasured = lazily(() => cannotSay('creatinine never measured', 'No creatinine is in these notes.'));
  const voided = lazily(() =>
    cannotSay(
      `${bloods} no longer count`,
      `The creatinine of ${shortDate(creatinine?.on ?? evidence.today)} no longer counts: ${creatinine === undefined ? '' : whyVoided(creatinine, count)}.`,
    ),
  );
  const unusable = lazily(() =>
    cannotSay(
      'creatinine cannot be used as reported',
      `Reported as ${creatinine === undefined || typeof creatinine.value === 'string' ? '' : quantityText(creatinine.value)}: not a plain number in umol/L or mg/dL.`,
    ),
  );
  const unsigned = lazily(() =>
    cannotSay(
      `${bloods} not signed`,
      'Nobody has signed that this creatinine has been read and belongs to this person.',
    ),
  );
  const outOfDate = lazily(() =>
    cannotSay(
      `${bloods} out of date`,
      `The sample counts for ${bloodsValidDays} days, up to ${shortDate(addDays(creatinine?.on ?? evidence.today, bloodsValidDays))}.`,
    ),
  );
  const noWeight = lazily(() => cannotSay('weight never recorded', 'No body weight is in these notes.'));
  const weightUnusable = lazily(() =>
    cannotSay('weight cannot be used as recorded', 'The weight is not a plain number in kg or lb.'),
  );
  const weightEstimated = lazily(() =>
    cannotSay(`${weighedOn} only estimated`, 'An estimated weight does not count: weigh.'),
  );
  const weightOutOfDate = lazily(() =>
    cannotSay(
      `${weighedOn} out of date`,
      `A weight counts for ${weightValidDays} days, up to ${shortDate(addDays(weight?.on ?? evidence.today, weightValidDays))}.`,
    ),
  );
  const good = lazily(() =>
    judgement('ready', 'kidney function, if good', () =>
      kidneyWorking(facts, 'Assumed good: not measured yet.', undefined),
    ),
  );

  const clearances = new Map<number, Clearance>();
  function clearanceAt(age: number): Clearance | undefined {
    if (sex === undefined || umol === undefined || kg === undefined) return undefined;
    let found = clearances.get(age);
    if (found === undefined) {
      found = creatinineClearance({ ageYears: age, sex, weightKg: kg, creatinineUmolPerL: umol });
      clearances.set(age, found);
    }
    return found;
  }
  const conflicts = (age: number): boolean =>
    weight?.actualDecides !== true &&
    others.some((other) => {
      if (sex === undefined || umol === undefined) return false;
      const ageYears = age;
      return !bothAtLeast(
        creatinineClearance({ ageYears, sex, weightKg: other.kg, creatinineUmolPerL: umol }),
        clearanceFloor,
      );
    });

  const byAge = new Map<number, Judgement>();
  function atAge(age: number): Judgement {
    let judged = byAge.get(age);
    if (judged === undefined) byAge.set(age, (judged = judgeClearance(age)));
    return judged;
  }
  function judgeClearance(age: number): Judgement {
    const clearance = clearanceAt(age);
    if (clearance === undefined) return good();
    const working = (says?: string) => () => kidneyWorking(facts, says, { age, clearance });
    if (!bothAtLeast(clearance, clearanceFloor)) {
      return judgement(
        'not ready',
        `kidney function at ${age}: ${clearanceText(clearance, clearanceFloor)}`,
        working(),
      );
    }
    if (risen)
      return judgement(
        'cannot say',
        'creatinine has risen',
        working('Creatinine has risen on the own baseline: whatever the clearance, a prescriber is asked.'),
      );
    if (conflicts(age)) {
      return judgement(
        'cannot say',
        'ideal weight gives another answer',
        working(
          'By the actual weight the clearance passes, by the ideal or adjusted weight it does not: prescriber and pharmacist choose and record.',
        ),
      );
    }
    return { ...judgement('ready', 'kidney function', working()), nearLimit: eitherBelow(clearance, nearLimitCeiling) };
  }
  /** Past its days, but a prescriber's exception carries it: shown beside whatever the value says. */
  const byAgeCarried = new Map<number, Judgement>();
  function carried(age: number): Judgement {
    let judged = byAgeCarried.get(age);
    if (judged === undefined) byAgeCarried.set(age, (judged = { ...atAge(age), exception: exception?.entry }));
    return judged;
  }

  function on(day: Day): Judgement {
    if (birth === undefined || birth > evidence.today) return noAge();
    if (sex === undefined) return noSex();
    if (creatinine === undefined) return neverMeasured();
    if (isVoided(creatinine, count)) return voided();
    if (umol === undefined && creatinine.value !== 'assumed good') return unusable();
    if (!creatinine.signed) return unsigned();
    if (isOutOfDate(creatinine, day, bloodsValidDays, exception)) return outOfDate();
    if (weight === undefined) return noWeight();
    if (kg === undefined && weight.value !== 'assumed good') return weightUnusable();
    if (weight.method === 'estimated') return weightEstimated();
    if (isOutOfDate(weight, day, weightValidDays)) return weightOutOfDate();
    const age = ageOn(birth, day);
    return isOutOfDate(creatinine, day, bloodsValidDays) ? carried(age) : atAge(age);
  }

  function path(day: Day): Path {
    const blocked = (what: string, who: Blocker['who'], step: Blocker['step'], settled: Blocker['settled']): Path => ({
      is: 'blocked',
      by: { what, who, step, settled },
    });
    if (birth === undefined || birth > evidence.today)
      return blocked('the birth date to the day: ask, never assume one', 'clerk', 'complete identity', undefined);
    if (sex === undefined) return blocked('the sex as registered', 'clerk', 'complete identity', undefined);
    if (creatinine !== undefined) {
      if (isVoided(creatinine, count))
        return blocked(
          `a new creatinine: that of ${shortDate(creatinine.on)} no longer counts`,
          'nurse',
          'repeat result',
          repeat,
        );
      if (umol === undefined && creatinine.value !== 'assumed good')
        return blocked('a creatinine that can be used', 'nurse', 'repeat result', repeat);
      if (risen)
        return blocked(
          'a prescriber on the rise in creatinine, or a repeat',
          'prescriber',
          'prescriber decides',
          repeat,
        );
    }
    if (weight !== undefined && kg === undefined && weight.value !== 'assumed good') {
      return blocked('a weight that can be used', 'nurse', 'repeat result', (known) => ({
        ...known,
        weight: undefined,
      }));
    }
    const age = ageOn(birth, day);
    const clearance = clearanceAt(age);
    if (clearance !== undefined && !bothAtLeast(clearance, clearanceFloor)) {
      return blocked(
        `a prescriber; repeat creatinine and weight (at ${age}: ${clearanceText(clearance, clearanceFloor)})`,
        'prescriber',
        'repeat result',
        repeat,
      );
    }
    if (clearance !== undefined && conflicts(age)) {
      return blocked('prescriber and pharmacist: which weight decides', 'prescriber', 'prescriber decides', (known) =>
        known.weight === undefined ? known : { ...known, weight: { ...known.weight, actualDecides: true } },
      );
    }
    const needs: { -readonly [Key in keyof Needs]: Needs[Key] } = {};
    if (creatinine === undefined || isOutOfDate(creatinine, day, bloodsValidDays, exception)) {
      needs.draw = {
        test: 'creatinine',
        validDays: bloodsValidDays,
        neverMeasured: creatinine === undefined,
        why:
          creatinine === undefined
            ? 'creatinine was never measured'
            : `${bloods} count until ${shortDate(addDays(creatinine.on, bloodsValidDays))}`,
      };
    } else if (!creatinine.signed && creatinine.entry !== undefined) {
      needs.sign = { results: [creatinine.entry], why: `${bloods} are not signed` };
    }
    if (weight === undefined || weight.method === 'estimated' || isOutOfDate(weight, day, weightValidDays)) {
      needs.weigh = {
        validDays: weightValidDays,
        neverMeasured: weight === undefined,
        why:
          weight === undefined
            ? 'weight was never recorded'
            : weight.method === 'estimated'
              ? 'the weight was only estimated'
              : `${weighedOn} counts until ${shortDate(addDays(weight.on, weightValidDays))}`,
      };
    }
    return needs.draw === undefined && needs.sign === undefined && needs.weigh === undefined
      ? readyPath
      : { is: 'steps', needs };
  }

  const changes: Day[] = [];
  if (creatinine !== undefined) changes.push(addDays(creatinine.on, bloodsValidDays + 1));
  if (weight !== undefined) changes.push(addDays(weight.on, weightValidDays + 1));
  if (exception !== undefined) changes.push(addDays(exception.until, 1));
  if (birth !== undefined) {
    const { year } = civilFromDay(evidence.today);
    const lastYear = civilFromDay(addDays(evidence.today, HORIZON_DAYS)).year;
    for (let one = year; one <= lastYear; one += 1) changes.push(birthdayIn(birth, one));
  }
  return { changes, on, path };
}

export const kidneyFunction: Requirement = {
  id: 'kidney-function',
  title: 'Kidney function',
  clearedBy:
    'new bloods and weight; a prescriber where creatinine has risen or the weight decides. No exception below the limit',
  exceptionPossible: false,
  judge,
};
