/**
 * What of the evidence differs once a plan has been carried out and has come out well: a repeat has the last value (or is called good where
 * none was ever measured), the weight is the last one, the loading is finished, what was asked is answered
 * (docs/readiness.md A3). Everything in it has taken effect by the day the plan is for.
 */
import type { Day } from '../calendar/day.ts';
import type { CalciumSample } from '../requirements/deciding-sample.ts';
import type { Evidence, Sample } from '../requirements/evidence.ts';
import type { Plan } from './plan.ts';

const repeated = (last: Sample | undefined, on: Day, known: boolean): Sample => ({
  on,
  value: known && last !== undefined ? last.value : 'assumed good',
  signed: true,
  acute: false,
  contradicted: false,
  entry: undefined,
  limits: last?.limits,
});

function repeatedCalcium(last: CalciumSample | undefined, on: Day, known: boolean): CalciumSample {
  if (!known || last === undefined)
    return { on, sort: 'adjusted', sample: repeated(undefined, on, false), albumin: undefined };
  return {
    on,
    sort: last.sort,
    sample: repeated(last.sample, on, true),
    albumin: last.albumin === undefined ? undefined : repeated(last.albumin, on, true),
  };
}

const signedIf = <S extends Sample | undefined>(sample: S, results: ReadonlySet<string>): S =>
  sample?.entry !== undefined && results.has(sample.entry) ? { ...sample, signed: true } : sample;

export function outcomeOf(plan: Plan, before: Evidence): Partial<Evidence> {
  const after: { -readonly [Key in keyof Evidence]?: Evidence[Key] } = {};
  const results = new Set(plan.sign.flatMap((one) => one.results));
  if (results.size > 0) {
    after.creatinine = signedIf(before.creatinine, results);
    after.vitaminD = signedIf(before.vitaminD, results);
    if (before.calcium !== undefined) {
      after.calcium = {
        ...before.calcium,
        sample: signedIf(before.calcium.sample, results),
        albumin: signedIf(before.calcium.albumin, results),
      };
    }
  }
  for (const { test, neverMeasured } of plan.draw?.tests ?? []) {
    const on = plan.draw?.on ?? plan.on;
    if (test === 'creatinine') {
      after.creatinine = repeated(before.creatinine, on, !neverMeasured);
      after.riseAccepted = false;
      after.lowClearanceAccepted = false;
    }
    if (test === 'calcium') after.calcium = repeatedCalcium(before.calcium, on, !neverMeasured);
    if (test === 'vitamin D') after.vitaminD = repeated(before.vitaminD, on, !neverMeasured);
  }
  // Weight is measured at every draw, needed or not.
  const weighedOn = plan.draw?.on ?? plan.weigh?.on;
  if (weighedOn !== undefined) {
    after.weight = {
      on: weighedOn,
      value: before.weight?.value ?? 'assumed good',
      method: 'measured',
      caution: before.weight?.caution,
      entry: undefined,
      actualDecides: false,
      before: undefined,
      changeLookedInto: false,
    };
  }
  if (plan.load !== undefined) {
    const { load } = plan;
    const running = load.sort === 'remaining doses' ? before.loading : undefined;
    const loading = {
      entry: running?.entry,
      dated: running?.dated ?? load.first,
      startOn: running?.startOn ?? load.first,
      doses: running?.doses ?? load.count,
      everyDays: load.everyDays,
      taken: running?.doses ?? load.count,
      lastTaken: load.last,
      state: { is: 'finished', on: load.last },
    } as const;
    after.loading = loading;
    after.finishedLoadings = [...before.finishedLoadings, loading];
  }
  for (const { what, on } of plan.ask) {
    if (what === 'consent') after.consent = { decision: 'given', on, entry: undefined };
    if (what === 'allergies') after.allergiesAssumed = true;
    if (what === 'pregnancy') after.pregnancy = { answer: 'no', on, entry: undefined };
    if (what === 'teeth and jaw')
      after.dental = [...before.dental, { answer: 'nothing pending', on, checkedOn: undefined, entry: undefined }];
    if (what === 'maintenance') after.maintenance = { taken: true, on, entry: undefined };
    if (what === 'secondary causes') after.secondaryCauses = { answer: 'none found', on, entry: undefined };
  }
  return after;
}
