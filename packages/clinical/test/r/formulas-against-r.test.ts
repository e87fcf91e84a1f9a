/**
 * The formulas against R (https://www.r-project.org, base only), written there a second time from the papers: 10,000 people,
 * two scans, two markers, a drip and a set of observations each, from a fixed seed, in one call of Rscript.
 */
import { describe, expect, test } from 'vitest';
import {
  adjustedCalciumMmolPerL,
  adjustedWeightKg,
  bodyMassIndex,
  bodySurfaceDuBois,
  bodySurfaceMosteller,
  creatinineClearance,
  creatinineMgPerDl,
  deindexed,
  densityChange,
  densityScore,
  dropsPerMinute,
  day,
  egfr,
  feverGrade,
  idealWeightKg,
  leastSignificantChange,
  markerResponse,
  news2,
  pumpMillilitersPerHour,
  quantity,
  type Ratio,
  ratioAsNumber,
  ratioOf,
  scaled,
  vitaminDNmolPerL,
  weightKg,
  youngAdultReference,
} from '@twelvemonth/clinical';
import { diceOf } from '../oracle/dice.ts';
import { type Table, fromR, missingFromR } from './run-r.ts';

const PEOPLE = 10_000;
/** Doubles against exact fractions: a few units in the last place, after powers and roots. */
const RELATIVE = 1e-11;

function randomRows(): Table {
  const d = diceOf(20261125);
  const decimal = (least: number, most: number, places: number): string =>
    (d.whole(Math.round(least * 10 ** places), Math.round(most * 10 ** places)) / 10 ** places).toFixed(places);
  return Array.from({ length: PEOPLE }, () => ({
    sex: d.oneOf(['female', 'male']),
    age: String(d.whole(18, 104)),
    kg: decimal(30, 160, 1),
    umol: decimal(30, 400, 1),
    cm: decimal(152.4, 205, 1),
    calcium: decimal(1.5, 3.2, 2),
    albumin: decimal(15, 55, 1),
    ng: decimal(3, 80, 1),
    density: decimal(0.4, 1.4, 3),
    later: decimal(0.4, 1.4, 3),
    precision: decimal(0.005, 0.03, 4),
    marker: decimal(10, 900, 1),
    'marker.later': decimal(5, 900, 1),
    ml: String(d.whole(20, 500)),
    minutes: String(d.whole(15, 240)),
    set: d.oneOf(['10', '15', '20', '60']),
    breaths: String(d.whole(4, 40)),
    saturation: String(d.whole(78, 100)),
    scale: d.oneOf(['1', '2']),
    oxygen: d.oneOf(['0', '1']),
    systolic: String(d.whole(70, 240)),
    pulse: String(d.whole(30, 150)),
    tenths: String(d.whole(340, 415)),
    conscious: d.oneOf(['A', 'A', 'C', 'V', 'P', 'U']),
    hours: String(d.whole(0, 48)),
  }));
}

const known = (value: Ratio | undefined): Ratio => {
  if (value === undefined) throw new Error('no value');
  return value;
};

/** The same by our own source, by the name of R's column. */
function ours(row: Readonly<Record<string, string>>): Record<string, number> {
  const text = (name: string): string => row[name] ?? '';
  const exactly = (name: string): Ratio => ratioOf(scaled(text(name)));
  const number = (name: string): number => Number(text(name));
  const sex = text('sex') === 'female' ? 'female' : 'male';
  const clearance = creatinineClearance({
    ageYears: number('age'),
    sex,
    weightKg: exactly('kg'),
    creatinineUmolPerL: exactly('umol'),
  });
  const mg = ratioAsNumber(creatinineMgPerDl(exactly('umol')));
  const ideal = known(idealWeightKg(sex, exactly('cm')));
  const scan = { scanner: 'A', site: 'neck' };
  const change = densityChange(
    { ...scan, on: day('2023-01-01'), gramsPerCm2: scaled(text('density')) },
    { ...scan, on: day('2026-01-01'), gramsPerCm2: scaled(text('later')) },
    exactly('precision'),
  );
  const score = news2({
    breathsPerMinute: number('breaths'),
    saturationPercent: number('saturation'),
    saturationScale: text('scale') === '2' ? 2 : 1,
    onOxygen: text('oxygen') === '1',
    systolicMmHg: number('systolic'),
    pulsePerMinute: number('pulse'),
    consciousness: text('conscious') as 'A',
    temperatureCelsius: number('tenths') / 10,
  });
  return {
    'clearance.umol': ratioAsNumber(clearance.byMicromoles),
    'clearance.mg': ratioAsNumber(clearance.byMilligrams),
    'egfr.2009': egfr(2009, sex, number('age'), mg),
    'egfr.2021': egfr(2021, sex, number('age'), mg),
    mosteller: bodySurfaceMosteller(number('cm'), number('kg')),
    dubois: bodySurfaceDuBois(number('cm'), number('kg')),
    deindexed: deindexed(egfr(2021, sex, number('age'), mg), bodySurfaceMosteller(number('cm'), number('kg'))),
    bmi: bodyMassIndex(number('cm'), number('kg')),
    ideal: ratioAsNumber(ideal),
    adjusted: ratioAsNumber(adjustedWeightKg(exactly('kg'), ideal, scaled('0.4'))),
    calcium: ratioAsNumber(
      adjustedCalciumMmolPerL(exactly('calcium'), exactly('albumin'), scaled('0.02'), scaled('40')),
    ),
    'vitamin.d': ratioAsNumber(known(vitaminDNmolPerL(quantity(text('ng'), 'ng/mL')))),
    // R turns kilograms into pounds; ours turns pounds back.
    pounds: number('kg') / ratioAsNumber(known(weightKg(quantity('1', 'lb')))),
    't.score': ratioAsNumber(densityScore(scaled(text('density')), youngAdultReference['femoral neck'])),
    'change.percent': change.comparable ? change.percent : Number.NaN,
    lsc: ratioAsNumber(leastSignificantChange(exactly('precision'))),
    'fall.percent': ratioAsNumber(
      markerResponse('CTX', scaled(text('marker')), scaled(text('marker.later'))).fallPercent,
    ),
    pump: pumpMillilitersPerHour(number('ml'), number('minutes')),
    drops: dropsPerMinute(number('ml'), number('minutes'), Number(text('set')) as 20),
    news2: score.complete ? score.total : Number.NaN,
    fever: feverGrade(number('tenths') / 10, number('hours'), '6.0')?.grade ?? Number.NaN,
  };
}

const missing = missingFromR();
if (missing !== undefined)
  test(`OPTIONAL, NOT RUN HERE: the formulas against R (${missing})`, () => expect(missing).toBe('R is not here'));
else
  describe('the formulas against R', () => {
    test('10,000 random inputs, every formula', () => {
      const rows = randomRows();
      const answers = fromR(rows);
      expect(answers).toHaveLength(PEOPLE);
      const apart: string[] = [];
      rows.forEach((row, index) => {
        for (const [name, value] of Object.entries(ours(row))) {
          const theirs = Number(answers[index]?.[name]);
          const near = Math.abs(value - theirs) <= RELATIVE * Math.max(1, Math.abs(theirs));
          if (!near) apart.push(`${name}: ours ${value}, R ${theirs}, for ${JSON.stringify(row)}`);
        }
      });
      expect(apart.slice(0, 5)).toEqual([]);
      // Every column of R's was compared, and none was constant.
      const names = Object.keys(answers[0] ?? {});
      expect(names).toEqual(Object.keys(ours(rows[0] ?? {})));
      for (const name of names) expect(new Set(answers.map((row) => row[name])).size).toBeGreaterThan(4);
    });
  });
