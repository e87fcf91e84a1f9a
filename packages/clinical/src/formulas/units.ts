/**
 * Reported units into the units the formulas work in, exactly. A unit that does not belong to the quantity answers with
 * undefined: it is never guessed. Limits kept per unit are compared in the unit reported, not through these.
 *
 * Factors (clinical.md 2f, checked in tests against a UCUM library): creatinine 1 mg/dL = 88.4 umol/L (table footnote, BMC
 * Geriatr 2021); calcium 1 mmol/L = 4.008 mg/dL (standard, from memory); vitamin D 1 ng/mL = 2.496 nmol/L (standard, from
 * memory), of vitamin D as a dose 1 ug = 40 IU (NOS 2018, read); 1 lb = 0.45359237 kg and 1 in = 2.54 cm by definition (international yard and pound, 1959).
 */
import { type Quantity, exactValue } from '../exact/quantity.ts';
import { type Ratio, dividedBy, ratio, ratioOf, times } from '../exact/ratio.ts';

const UMOL_PER_MG_OF_CREATININE = ratio(884, 10);
const MG_PER_MMOL_OF_CALCIUM = ratio(4008, 1000);
const NMOL_PER_NG_OF_VITAMIN_D = ratio(2496, 1000);
const KG_PER_LB = ratio(45_359_237, 100_000_000);
const CM_PER_INCH = ratio(254, 100);
const TEN = ratio(10, 1);

const valueOf = (q: Quantity): Ratio => ratioOf(exactValue(q));

/** A value converted where it is a plain number above nought: "<20" is not 20, and nothing alive weighs nought. */
export const usable = (value: Quantity, convert: (q: Quantity) => Ratio | undefined): Ratio | undefined =>
  value.comparator === '' && exactValue(value) > 0 ? convert(value) : undefined;

/** Creatinine in umol/L from umol/L or mg/dL. */
export function creatinineUmolPerL(q: Quantity): Ratio | undefined {
  if (q.unit === 'umol/L') return valueOf(q);
  return q.unit === 'mg/dL' ? times(valueOf(q), UMOL_PER_MG_OF_CREATININE) : undefined;
}

/** The same amount of creatinine in mg/dL, the unit of the older form of the clearance. */
export const creatinineMgPerDl = (umolPerL: Ratio): Ratio => dividedBy(umolPerL, UMOL_PER_MG_OF_CREATININE);

/** Calcium in mmol/L from mmol/L or mg/dL. */
export function calciumMmolPerL(q: Quantity): Ratio | undefined {
  if (q.unit === 'mmol/L') return valueOf(q);
  return q.unit === 'mg/dL' ? dividedBy(valueOf(q), MG_PER_MMOL_OF_CALCIUM) : undefined;
}

/** Albumin in g/L from g/L or g/dL. */
export function albuminGPerL(q: Quantity): Ratio | undefined {
  if (q.unit === 'g/L') return valueOf(q);
  return q.unit === 'g/dL' ? times(valueOf(q), TEN) : undefined;
}

/** 25-hydroxyvitamin D in nmol/L from nmol/L or ng/mL. To show only: 20 ng/mL is 49.92 nmol/L, yet passes a floor of 20. */
export function vitaminDNmolPerL(q: Quantity): Ratio | undefined {
  if (q.unit === 'nmol/L') return valueOf(q);
  return q.unit === 'ng/mL' ? times(valueOf(q), NMOL_PER_NG_OF_VITAMIN_D) : undefined;
}

const IU_PER_MICROGRAM_OF_VITAMIN_D = ratio(40n, 1n);

/** A dose of vitamin D in international units from micrograms, as packets outside the UK print it. */
export const vitaminDInternationalUnits = (micrograms: Ratio): Ratio =>
  times(micrograms, IU_PER_MICROGRAM_OF_VITAMIN_D);

/** Body weight in kilograms from kg or lb. */
export function weightKg(q: Quantity): Ratio | undefined {
  if (q.unit === 'kg') return valueOf(q);
  return q.unit === 'lb' ? times(valueOf(q), KG_PER_LB) : undefined;
}

/** The same weight in pounds, as a US scale shows it. */
export const weightInPounds = (kg: Ratio): Ratio => dividedBy(kg, KG_PER_LB);

/** Height in centimetres from cm or inches. */
export function heightCm(q: Quantity): Ratio | undefined {
  if (q.unit === 'cm') return valueOf(q);
  return q.unit === 'in' ? times(valueOf(q), CM_PER_INCH) : undefined;
}
