/**
 * What stands beside a clearance and decides nothing: how far weight and creatinine are from the limit, the change on the person's
 * own lowest creatinine, eGFR by both equations and for the person's own body surface, body mass index.
 */
import { shortDate } from '../calendar/day.ts';
import { scaledText } from '../exact/decimal.ts';
import { fixedText } from '../exact/fixed-text.ts';
import { type Ratio, minus, dividedBy, ratioAsNumber, ratioText } from '../exact/ratio.ts';
import { bodyMassIndex, bodyMassIndexSource, bodyMassIndexWarns } from '../formulas/body-mass-index.ts';
import { bodySurfaceMosteller, bodySurfaceSources, deindexed } from '../formulas/body-surface.ts';
import { mgPerDlRoundedDown, poundsRoundedUp, whatWouldClear } from '../formulas/clearance-sensitivity.ts';
import { egfr, egfrSources } from '../formulas/egfr.ts';
import { creatinineMgPerDl, heightCm } from '../formulas/units.ts';
import type { FormulaShown } from '../readiness/working.ts';
import type { KidneyFacts } from './kidney-facts.ts';
import { shortest } from './shortest.ts';

/** The numbers that several formulas are shown with, each written once. The weight is the one that decides. */
export type PutIn = {
  readonly kg: string;
  readonly umolPerL: string;
  readonly mgPerDl: string;
  readonly floor: string;
};

/** Everything of it that the notes allow, at an age. */
export function besideClearance(facts: KidneyFacts, age: number, put: PutIn): readonly FormulaShown[] {
  return [
    ...limitIn(facts, age, put),
    ...changeOnBaseline(facts, put),
    ...filtration(facts, age, put),
    ...massIndex(facts),
  ];
}

/** "ready only if she weighs at least 48 kg": the limit said in kilograms, and in creatinine. */
function limitIn({ evidence, protocol, umol, deciding }: KidneyFacts, age: number, put: PutIn): FormulaShown[] {
  const { sex } = evidence;
  if (sex === undefined || umol === undefined || deciding === undefined) return [];
  const floor = protocol.exact.clearanceFloor;
  const found = whatWouldClear({ ageYears: age, sex, weightKg: deciding.kg, creatinineUmolPerL: umol }, floor);
  const source = 'both forms of the clearance, solved for the one value with the other as it is';
  const weight = deciding.sort === 'actual' ? 'weight' : `${deciding.sort} weight`;
  return [
    {
      name: `least ${weight} that passes with this creatinine`,
      put: `${put.floor} mL/min, age ${age}, ${put.umolPerL} umol/L`,
      gives:
        found.weightKg === undefined
          ? 'none that a person has'
          : `${ratioText(found.weightKg, 1)} kg${isIn(evidence.weight?.value, 'lb') ? ` (${poundsRoundedUp(found.weightKg)} lb)` : ''}`,
      source,
    },
    {
      name: `highest creatinine that passes with this ${weight}`,
      put: `${put.floor} mL/min, age ${age}, ${put.kg} kg`,
      gives:
        found.creatinineUmolPerL === undefined
          ? 'none'
          : `${found.creatinineUmolPerL} umol/L${isIn(evidence.creatinine?.value, 'mg/dL') ? ` (${mgPerDlRoundedDown(found.creatinineUmolPerL)} mg/dL)` : ''}`,
      source,
    },
  ];
}

/** Whether a value was reported in this unit: then what follows from it is said in that too. */
const isIn = (reported: { readonly unit: string } | string | undefined, unit: string): boolean =>
  typeof reported === 'object' && reported.unit === unit;

function changeOnBaseline({ evidence, umol, baseline: lowest, protocol }: KidneyFacts, put: PutIn): FormulaShown[] {
  if (umol === undefined || lowest === undefined) return [];
  const change = minus(umol, lowest.umol);
  const times = dividedBy(umol, lowest.umol);
  const sign = change.top < 0 ? '' : '+';
  const mgPerDl = creatinineMgPerDl(change);
  const american = isIn(evidence.creatinine?.value, 'mg/dL') ? ` (${sign}${ratioText(mgPerDl, 2)} mg/dL)` : '';
  const { creatinineRise, creatinineRiseFactor } = protocol.exact;
  return [
    {
      name: 'change on the lowest earlier creatinine',
      put: `${put.umolPerL} - ${shortest(lowest.umol, 2)} umol/L of ${shortDate(lowest.on)}`,
      gives: `${sign}${shortest(change, 1)} umol/L${american}, x${ratioText(times, 2)}`,
      source: `a prescriber is asked from +${scaledText(creatinineRise)} umol/L or x${scaledText(creatinineRiseFactor)} on (this protocol)`,
    },
  ];
}

function filtration({ evidence, umol, kg }: KidneyFacts, age: number, { mgPerDl: written }: PutIn): FormulaShown[] {
  const { sex, height } = evidence;
  if (sex === undefined || umol === undefined) return [];
  const mgPerDl = ratioAsNumber(creatinineMgPerDl(umol));
  const cm = height === undefined ? undefined : heightCm(height.body.quantity);
  const surface = cm === undefined || kg === undefined ? undefined : surfaceOf(cm, kg);
  const ownSurface = surface === undefined ? '' : fixedText(surface, 2);
  const put = `age ${age}, ${sex}, ${written} mg/dL`;
  return ([2009, 2021] as const).flatMap((equation): FormulaShown[] => {
    const found = egfr(equation, sex, age, mgPerDl);
    const printed = fixedText(found, 1);
    const indexed = {
      name: `eGFR ${equation} (never decides)`,
      put,
      gives: `${printed} mL/min/1.73 m2`,
      source: egfrSources[equation],
    };
    if (surface === undefined) return [indexed];
    return [
      indexed,
      {
        name: `eGFR ${equation} for the own body surface (never decides)`,
        put: `${printed} x ${ownSurface} m2 / 1.73 m2`,
        gives: `${fixedText(deindexed(found, surface), 1)} mL/min`,
        source: bodySurfaceSources.mosteller,
      },
    ];
  });
}

const surfaceOf = (cm: Ratio, kg: Ratio): number => bodySurfaceMosteller(ratioAsNumber(cm), ratioAsNumber(kg));

function massIndex({ evidence: { height }, kg }: KidneyFacts): FormulaShown[] {
  const cm = height === undefined ? undefined : heightCm(height.body.quantity);
  if (height === undefined || cm === undefined || kg === undefined) return [];
  const index = bodyMassIndex(ratioAsNumber(cm), ratioAsNumber(kg));
  return [
    {
      name: `body mass index, height ${height.body.which}`,
      put: `${shortest(kg, 2)} kg / (${shortest(cm, 1)} cm in m)^2`,
      gives: `${fixedText(index, 1)} kg/m2${bodyMassIndexWarns(index)}`,
      source: bodyMassIndexSource,
    },
  ];
}
