/** The working of a clearance: what went in, both forms with the numbers put in, what else was looked at, what to beware of. */
import { textOfKnown } from '../calendar/partial-date.ts';
import { type Day, shortDate } from '../calendar/day.ts';
import { type Scaled, approximately, scaledText } from '../exact/decimal.ts';
import { quantityText } from '../exact/quantity.ts';
import { type Ratio, compareRatio, compareRatios, ratioAsNumber, ratioText, ratioTextBeside } from '../exact/ratio.ts';
import {
  type Clearance,
  bothAtLeast,
  clearanceSources,
  creatinineClearance,
  eitherBelow,
} from '../formulas/creatinine-clearance.ts';
import { idealWeightSources } from '../formulas/ideal-weight.ts';
import { creatinineMgPerDl } from '../formulas/units.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { asksCreatinineAfter } from '../protocol/regimen.ts';
import type { FormulaShown, Input, Threshold, Working } from '../readiness/working.ts';
import { creatinineRaisingCautions } from './creatinine-raising.ts';
import type { Sample } from './evidence.ts';
import { type PutIn, besideClearance } from './kidney-beside.ts';
import type { KidneyEvidence, KidneyFacts, SomeWeight } from './kidney-facts.ts';
import { shortest } from './shortest.ts';

/** "just below 35" is said within half a unit of the limit. */
const NEAR_BELOW = 0.5;

const below = (value: Ratio, floor: Scaled): string =>
  compareRatio(value, floor) < 0 && approximately(floor) - ratioAsNumber(value) < NEAR_BELOW
    ? ` (just below ${scaledText(floor)})`
    : '';

/** Both forms as printed, each on its own side of the limit: "34.996", never "35.00". */
type Printed = { readonly byMicromoles: string; readonly byMilligrams: string };

function printedBeside(floor: Scaled, { byMicromoles, byMilligrams }: Clearance): Printed {
  const limits = [floor];
  return {
    byMicromoles: ratioTextBeside(byMicromoles, 2, limits),
    byMilligrams: ratioTextBeside(byMilligrams, 2, limits),
  };
}

/** "34.99 mL/min by one form, 35.11 by the other (just below 35)" */
export function clearanceText(clearance: Clearance, floor: Scaled, printed = printedBeside(floor, clearance)): string {
  const { byMicromoles, byMilligrams } = clearance;
  const lower = compareRatios(byMicromoles, byMilligrams) <= 0 ? byMicromoles : byMilligrams;
  return `${printed.byMicromoles} mL/min by one form, ${printed.byMilligrams} by the other${below(lower, floor)}`;
}

const unsaid = 'Clearance cannot be said.';

export function kidneyWorking(
  facts: KidneyFacts,
  says: string | undefined,
  at: { readonly age: number; readonly clearance: Clearance } | undefined,
): Working {
  const { evidence, protocol, birth, umol, deciding } = facts;
  const floor = protocol.exact.clearanceFloor;
  const printed = at === undefined ? undefined : printedBeside(floor, at.clearance);
  const judged =
    at === undefined
      ? undefined
      : `${clearanceText(at.clearance, floor, printed)}; limit ${scaledText(floor)}, both forms must pass`;
  return {
    says: says === undefined || judged === undefined ? (says ?? judged ?? unsaid) : `${says} ${judged}`,
    inputs: inputsOf(facts, at?.age),
    formulas:
      at === undefined || printed === undefined || umol === undefined || deciding === undefined
        ? []
        : formulasOf(facts, at, printed, umol, deciding),
    thresholds: thresholdsOf(facts),
    cautions: cautionsOf(facts, at, birth, evidence),
  };
}

function measured(label: string, { value, on, entry }: Pick<Sample, 'value' | 'on' | 'entry'>): Input {
  const text = typeof value === 'string' ? value : quantityText(value);
  return entry === undefined ? { label, text, on } : { label, text, on, entry };
}

function inputsOf({ evidence, baseline }: KidneyFacts, age: number | undefined): Input[] {
  const { creatinine, weight, identity, height } = evidence;
  const inputs: Input[] = [];
  if (creatinine !== undefined) {
    inputs.push(measured('creatinine', creatinine));
  }
  if (weight !== undefined) {
    inputs.push(measured(`weight, ${weight.method}`, weight));
  }
  if (identity !== undefined) {
    inputs.push({
      label: 'born',
      text: `${textOfKnown(identity.body.born, evidence.born)}${age === undefined ? '' : `, so ${age} years`}`,
      entry: identity.id,
    });
    inputs.push({ label: 'sex', text: identity.body.sex ?? 'not recorded', entry: identity.id });
  }
  if (height !== undefined)
    inputs.push({
      label: `height, ${height.body.which}`,
      text: quantityText(height.body.quantity),
      on: height.on,
      entry: height.id,
    });
  if (baseline !== undefined)
    inputs.push({ label: 'lowest earlier creatinine', text: `${shortest(baseline.umol, 1)} umol/L`, on: baseline.on });
  return inputs;
}

function formulasOf(
  facts: KidneyFacts,
  { age, clearance }: { readonly age: number; readonly clearance: Clearance },
  printed: Printed,
  umol: Ratio,
  { kg, sort }: SomeWeight,
): FormulaShown[] {
  const { evidence, protocol, otherWeights } = facts;
  const sex = evidence.sex ?? 'female';
  const floor = protocol.exact.clearanceFloor;
  const mgPerDl = creatinineMgPerDl(umol);
  const put: PutIn = {
    kg: shortest(kg, 2),
    umolPerL: shortest(umol, 2),
    mgPerDl: ratioText(mgPerDl, 4),
    floor: scaledText(floor),
  };
  const share = sex === 'female' ? ' x 0.85' : '';
  const by = sort === 'actual' ? '' : `, by ${sort} weight as this protocol says`;
  const shown: FormulaShown[] = [
    {
      name: `creatinine clearance, umol/L form${by}`,
      put: `(140 - ${age}) x ${put.kg} kg x ${sex === 'female' ? '1.04' : '1.23'} / ${put.umolPerL} umol/L`,
      gives: `${printed.byMicromoles} mL/min${below(clearance.byMicromoles, floor)}`,
      source: clearanceSources.byMicromoles,
    },
    {
      name: `creatinine clearance, mg/dL form${by}`,
      put: `(140 - ${age}) x ${put.kg} kg${share} / (72 x ${put.mgPerDl} mg/dL)`,
      gives: `${printed.byMilligrams} mL/min${below(clearance.byMilligrams, floor)}`,
      source: clearanceSources.byMilligrams,
    },
  ];
  for (const other of otherWeights) {
    const found = creatinineClearance({ ageYears: age, sex, weightKg: other.kg, creatinineUmolPerL: umol });
    shown.push({
      name: `the same with ${other.sort} weight`,
      put: `${ratioText(other.kg, 2)} kg instead of ${put.kg} kg`,
      gives: clearanceText(found, floor),
      source: other.sort === 'actual' ? clearanceSources.byMicromoles : idealWeightSources[other.sort],
    });
  }
  shown.push(...besideClearance(facts, age, put));
  return shown;
}

const always = [
  { key: 'clearanceFloor' },
  { key: 'nearLimitCeiling' },
  { key: 'bloodsValidDays' },
  { key: 'weightValidDays' },
  { key: 'weightChangePercent' },
] as const;
const afterLowClearance = [{ key: 'calciumAfterDoseDays' }, { key: 'calciumAfterDoseWeeks' }] as const;
const afterNearLimit = [{ key: 'creatinineAfterDoseFromDays' }, { key: 'creatinineAfterDoseByDays' }] as const;
const ofRise = [{ key: 'creatinineRise' }, { key: 'creatinineRiseFactor' }, { key: 'baselineDays' }] as const;
const ofOtherWeights = [{ key: 'adjustedWeightFromPercent' }, { key: 'adjustedWeightShare' }] as const;

function thresholdsOf({ otherWeights, baseline, protocol: { regimen } }: KidneyFacts): readonly Threshold[] {
  const thresholds: Threshold[] = always.slice();
  if (regimen.belowClearanceFloor !== 'not given') thresholds.push(...afterLowClearance);
  if (asksCreatinineAfter(regimen)) thresholds.push(...afterNearLimit);
  if (baseline !== undefined) thresholds.push(...ofRise);
  if (otherWeights.length > 0) thresholds.push(...ofOtherWeights);
  return thresholds;
}

const calciumAfter = ({ number: { calciumAfterDoseWeeks: weeks, calciumAfterDoseDays: days } }: Protocol): string =>
  weeks === 0 ? `a sample within ${days} days after the dose` : `a sample every week for ${weeks} weeks after the dose`;

/** What is looked at after a dose given near the limit (clock/creatinine-after-dose). */
function creatinineAfter({ regimen, number }: Protocol): string {
  const { creatinineAfterDoseFromDays: from, creatinineAfterDoseByDays: by } = number;
  return asksCreatinineAfter(regimen) && by !== 0
    ? ` Afterwards a creatinine, ${from} to ${by} days after the dose.`
    : '';
}

function cautionsOf(
  { protocol }: KidneyFacts,
  at: { readonly age: number; readonly clearance: Clearance } | undefined,
  birth: Day | undefined,
  evidence: KidneyEvidence,
): string[] {
  const { clearanceFloor, nearLimitCeiling } = protocol.exact;
  const cautions: string[] = [];
  if (
    protocol.regimen.belowClearanceFloor !== 'not given' &&
    at !== undefined &&
    eitherBelow(at.clearance, clearanceFloor)
  )
    cautions.push(`Low calcium threatens below this clearance: ${calciumAfter(protocol)}.`);
  if (at !== undefined && bothAtLeast(at.clearance, clearanceFloor) && eitherBelow(at.clearance, nearLimitCeiling))
    cautions.push(
      `Near the limit: weigh and recompute on the day, with a recent creatinine, and let the prescriber know.${creatinineAfter(protocol)}`,
    );
  if (evidence.weight?.caution !== undefined) cautions.push(`The weight may mislead: ${evidence.weight.caution}.`);
  const { creatinine } = evidence;
  for (const medicine of evidence.nephrotoxic) {
    if (creatinine !== undefined && medicine.on > creatinine.on) {
      cautions.push(
        `${medicine.body.name}, hard on the kidneys, recorded from ${shortDate(medicine.on)}: after the sample of ${shortDate(creatinine.on)}.`,
      );
    }
  }
  cautions.push(...creatinineRaisingCautions(evidence));
  if (birth !== undefined && at !== undefined && at.age < 18) cautions.push('The formula is for adults.');
  return cautions;
}
