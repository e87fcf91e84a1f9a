/** Weights, samples and vitamin D loadings of a random ledger, near their limits and the ends of their validity. */
import { ageOn } from './dates.ts';
import { date, label, put, type Sheet } from './random-sheet.ts';

/** Days back from the first day of asking: mostly near where something of that validity ends within the days of asking. */
export function ago(sheet: Sheet, valid: number): number {
  const { dice, from } = sheet;
  const back = dice.oneOf([
    () => dice.whole(0, 3),
    () => dice.whole(0, valid),
    () => dice.whole(0, Math.floor(valid / 2)),
    () => dice.whole(Math.max(0, valid - 12), valid + 2),
    () => dice.whole(Math.max(0, valid - 4), valid + 1),
    () => (dice.chance(0.4) ? dice.whole(valid, valid + 60) : dice.whole(0, valid)),
    // Written while we ask: a day on which it is not there, then a day on which it is.
    () => (dice.chance(0.3) ? -dice.whole(1, 8) : dice.whole(0, 20)),
  ])();
  return from - back;
}

/** A result line, mostly signed; sometimes later, sometimes corrected, withdrawn, or never signed. */
function result(sheet: Sheet, on: number, text: string, alwaysSigned = false): void {
  const { dice } = sheet;
  const kind = alwaysSigned ? 0 : dice.whole(0, 19);
  if (kind <= 11) put(sheet, on, `${text} signed`);
  else if (kind <= 15) put(sheet, on, text);
  else if (kind === 16) put(sheet, on, `${text}, acute admission signed`);
  else if (kind === 17) {
    const name = label(sheet);
    put(sheet, on, `${name} ${text}`);
    put(sheet, on + dice.whole(0, 6), `signed ${name}`);
  } else if (kind === 18) {
    const name = label(sheet);
    put(sheet, on, `${name} ${text} signed`);
    put(sheet, on, `${text.replace(/(\d)(?= |$)/, '1')} corrects ${name}`);
  } else {
    const name = label(sheet);
    put(sheet, on, `${name} ${text} signed`);
    if (dice.chance(0.5)) put(sheet, on + dice.whole(0, 5), `withdraw ${name}, "another person's"`);
  }
}

/** Weight and creatinine, often chosen so that the clearance lies within a hair of the limit at some age of the window. */
export function kidneys(sheet: Sheet, who: { born: string; sex: 'female' | 'male' | undefined }): void {
  const { dice, from } = sheet;
  const american = dice.chance(0.2);
  const age = who.born.length === 10 ? ageOn(who.born, from + dice.whole(0, 60)) : 80;
  const factor = who.sex === 'male' ? 1.23 : 1.04;
  let kilograms = dice.whole(400, 1100) / 10;
  let micromoles = dice.whole(45, 130);
  const aimed = dice.oneOf([35, 35, 36, 40, 60, 60, 60, 60, 60]);
  micromoles = Math.round(((140 - age) * kilograms * factor) / aimed);
  if (dice.chance(0.7))
    kilograms = Math.round(((aimed * micromoles) / ((140 - age) * factor)) * 10 + dice.whole(-3, 3)) / 10;
  const value = american ? (micromoles / 88.4).toFixed(dice.whole(2, 3)) : String(micromoles);
  const unit = american ? 'mg/dL' : 'umol/L';
  if (!dice.chance(0.06)) {
    const on = ago(sheet, 56);
    const comparator = dice.chance(0.02) ? dice.oneOf(['<', '>']) : '';
    if (dice.chance(0.25)) {
      // Earlier values, some of them low enough for a rise, some at the edge of being too old for a baseline.
      const before = dice.oneOf([dice.whole(1, 60), dice.whole(355, 375), dice.whole(60, 300), 0]);
      const drop = dice.oneOf([
        25,
        26,
        27,
        Math.round(micromoles - micromoles / 1.3),
        Math.round(micromoles - micromoles / 1.3) + 1,
        5,
        -10,
        0,
      ]);
      const lower = Math.max(20, micromoles - drop);
      if (dice.chance(0.8)) result(sheet, on - before, `creatinine ${lower} umol/L`, dice.chance(0.7));
      else result(sheet, on - before, `creatinine ${(lower / 88.4).toFixed(2)} mg/dL`);
    }
    if (dice.chance(0.15)) {
      const name = label(sheet);
      put(sheet, on, `${name} creatinine ${value} ${unit} signed`);
      if (dice.chance(0.6))
        put(sheet, on + dice.whole(0, 4), `decision creatinine rise accepted about ${name}, "stable on repeat"`);
    } else result(sheet, on, `creatinine ${comparator}${value} ${unit}`);
  }
  if (dice.chance(0.06)) return;
  const pounds = dice.chance(0.1);
  const weight = pounds ? `${(kilograms / 0.45359237).toFixed(1)} lb` : `${kilograms} kg`;
  const name = label(sheet);
  const on = ago(sheet, 90);
  put(
    sheet,
    on,
    `${name} weight ${weight} ${dice.oneOf(['measured', 'measured', 'measured', 'measured', 'measured', 'measured', 'reported', 'estimated'])}`,
  );
  if (dice.chance(0.1))
    put(sheet, on - dice.whole(0, 40), `weight ${(kilograms + dice.whole(-30, 30) / 10).toFixed(1)} kg measured`);
  if (dice.chance(0.25)) {
    const heights = [
      '150 cm peak adult',
      '152.4 cm peak adult',
      '158 cm peak adult',
      '165 cm measured now',
      '62 in peak adult',
      '175 cm peak adult',
      '59.9 in measured now',
      '155 cm measured now',
    ];
    put(sheet, from - dice.whole(0, 300), `height ${dice.oneOf(heights)}`);
    if (dice.chance(0.2)) put(sheet, from - dice.whole(0, 300), `height ${dice.oneOf(heights)}`);
    if (dice.chance(0.35)) put(sheet, on + dice.whole(0, 6), `decision weight: actual decides about ${name}, "muscle"`);
  }
}

/** A rise at its edge over a baseline at the edge of its days, in someone heavy enough for the clearance to pass. */
export function rise(sheet: Sheet, who: { born: string; sex: 'female' | 'male' | undefined }): void {
  const { dice, from } = sheet;
  const age = who.born.length === 10 ? ageOn(who.born, from) : 80;
  const baseline = dice.chance(0.5) ? dice.whole(90, 130) : dice.whole(55, 85);
  const edge = baseline > 87 ? 26 : Math.ceil(baseline * 0.3);
  const value = baseline + edge + dice.oneOf([-1, 0, 0, 1]);
  const on = from - dice.whole(0, 50);
  put(sheet, on - dice.oneOf([364, 365, 366, dice.whole(1, 300)]), `creatinine ${baseline} umol/L signed`);
  const name = label(sheet);
  put(sheet, on, `${name} creatinine ${value} umol/L${dice.chance(0.8) ? ' signed' : ''}`);
  if (dice.chance(0.3))
    put(sheet, on + dice.whole(0, 4), `decision creatinine rise accepted about ${name}, "stable on repeat"`);
  const kilograms = Math.round((dice.whole(55, 65) * value) / ((140 - age) * (who.sex === 'male' ? 1.23 : 1.04)));
  put(sheet, ago(sheet, 90), `weight ${kilograms} kg measured`);
}

export function calcium(sheet: Sheet): void {
  const { dice } = sheet;
  if (dice.chance(0.06)) return;
  const on = dice.chance(0.6)
    ? (sheet.lines.findLast((line) => line.text.includes('creatinine'))?.on ?? ago(sheet, 56))
    : ago(sheet, 56);
  const normal = dice.oneOf(['2.25', '2.31', '2.38', '2.40', '2.29', '2.45', '2.20', '2.60']);
  const edge = dice.oneOf(['2.19', '2.1999', '2.20', '2.21', '2.60', '2.61', '2.6001', '2.10', '2.72']);
  const value = dice.chance(0.75) ? normal : edge;
  const kind = dice.whole(0, 11);
  if (kind <= 5) result(sheet, on, `adjusted calcium ${value} mmol/L`);
  else if (kind <= 7)
    result(sheet, on, `adjusted calcium ${dice.oneOf(['8.8', '8.79', '9.4', '10.4', '10.41', '9.0'])} mg/dL`);
  else if (kind === 8)
    result(
      sheet,
      on,
      `adjusted calcium ${value} mmol/L, limits ${dice.oneOf(['2.15', '2.25', '2.10'])} to ${dice.oneOf(['2.55', '2.65', '2.60'])}`,
    );
  else if (kind === 9)
    result(
      sheet,
      on,
      `adjusted calcium ${dice.oneOf(['<2.20', '<=2.20', '<2.10', '>2.60', '>=2.60', '>2.50', '<2.30'])} mmol/L`,
    );
  else {
    // 2.19 + 0.02 x (40 - 39.5) is exactly 2.20.
    const [total, albumin] = dice.oneOf([
      ['2.19 mmol/L', '39.5 g/L'],
      ['2.19 mmol/L', '39.6 g/L'],
      ['2.20 mmol/L', '40 g/L'],
      ['2.10 mmol/L', '34 g/L'],
      ['2.40 mmol/L', '3.8 g/dL'],
      ['9.2 mg/dL', '38 g/L'],
      ['8.8 mg/dL', '4.0 g/dL'],
      ['2.62 mmol/L', '41 g/L'],
    ] as const);
    result(sheet, on, `calcium ${total}`);
    if (!dice.chance(0.2)) result(sheet, dice.chance(0.9) ? on : on - 1, `albumin ${albumin}`);
  }
  if (dice.chance(0.1))
    result(sheet, on - dice.whole(1, 40), `adjusted calcium ${dice.oneOf(['2.33', '2.10'])} mmol/L`);
}

export const levels = [
  '68 nmol/L',
  '50 nmol/L',
  '75.5 nmol/L',
  '24 ng/mL',
  '20 ng/mL',
  '110 nmol/L',
  '>50 nmol/L',
  '>=60 nmol/L',
] as const;
const lowLevels = ['49.9 nmol/L', '31 nmol/L', '19.9 ng/mL', '<20 nmol/L', '<=50 nmol/L', '<25 ng/mL'] as const;
const unclearLevels = ['<60 nmol/L', '>40 nmol/L', '>12 ng/mL', '<30 ng/mL'] as const;

export function vitamin(sheet: Sheet): void {
  const { dice, from } = sheet;
  const levelOn = dice.chance(0.5) ? ago(sheet, 365) : from - dice.whole(0, 120);
  const kind = dice.whole(0, 19);
  if (kind <= 9) result(sheet, levelOn, `vitamin D ${dice.oneOf(levels)}`);
  else if (kind === 10) result(sheet, levelOn, `vitamin D ${dice.oneOf(unclearLevels)}`);
  else if (kind <= 16) result(sheet, levelOn, `vitamin D ${dice.oneOf(lowLevels)}`);
  if (kind <= 11 && !dice.chance(0.25)) return;
  if (kind > 17 && dice.chance(0.5)) return;
  loading(sheet, kind <= 17 ? levelOn : from - 200);
}

function loading(sheet: Sheet, after: number): void {
  const { dice, from } = sheet;
  const doses = dice.oneOf([6, 6, 6, 3, 1, 10]);
  const every = dice.oneOf([7, 7, 7, 1, 14]);
  const state = dice.oneOf(['running', 'running', 'finished', 'finished', 'finished', 'stopped', 'none'] as const);
  if (state === 'none') return;
  const held = dice.chance(0.25);
  if (state === 'finished') {
    const usual = (): number =>
      dice.oneOf([
        dice.whole(0, 14),
        dice.whole(-6, 12),
        dice.whole(0, 60),
        dice.whole(110, 125),
        dice.whole(355, 368),
        dice.whole(120, 360),
      ]);
    const ended = from - (held ? dice.whole(356, 368) : usual());
    const begun = ended - (doses - 1) * every;
    put(
      sheet,
      begun - dice.whole(0, 3),
      `vitamin D loading ${doses} doses of 50000 IU every ${every} days from ${date(begun)}`,
    );
    if (dice.chance(0.5))
      for (let dose = 0; dose < doses; dose += 1) put(sheet, begun + dose * every, 'vitamin D taken 1 dose, told us');
    else {
      const first = dice.whole(0, doses - 1);
      if (first > 0) put(sheet, begun, `vitamin D taken ${first} doses, told us`);
      put(sheet, ended, `vitamin D taken ${doses - first} doses, capsules counted`);
    }
    if (held || dice.chance(0.45)) {
      const taken = held || dice.chance(0.75);
      put(sheet, ended + dice.whole(0, 100), `vitamin D maintenance ${taken ? 'taken' : 'not taken'}`);
    }
    if (dice.chance(0.15))
      result(sheet, ended + dice.whole(0, 90), `vitamin D ${dice.oneOf(dice.chance(0.7) ? levels : lowLevels)}`);
    return;
  }
  const taken = dice.whole(0, Math.max(0, doses - 1));
  const begun = Math.max(after, from - dice.whole(0, 1) - taken * every + dice.whole(-4, 4));
  put(
    sheet,
    Math.min(begun, from) - dice.whole(0, 2),
    `vitamin D loading ${doses} doses of 50000 IU every ${every} days from ${date(begun)}`,
  );
  for (let dose = 0; dose < taken; dose += 1)
    put(sheet, begun + dose * every + dice.oneOf([0, 0, 0, 1]), 'vitamin D taken 1 dose, told us');
  if (state !== 'stopped') return;
  const stopped = begun + taken * every + dice.whole(1, 3);
  put(sheet, stopped, 'vitamin D loading stopped "nausea"');
  if (dice.chance(0.7)) return;
  // Another in its place: on the same day, written after or before the stop, or later.
  const again = dice.oneOf([stopped, stopped, stopped + dice.whole(1, 10)]);
  const prescribed = `vitamin D loading ${dice.oneOf([6, 2])} doses of 50000 IU every ${every} days from ${date(again + dice.whole(0, 2))}`;
  if (dice.chance(0.3)) sheet.lines.splice(-1, 0, { on: again, text: prescribed });
  else put(sheet, again, prescribed);
  for (let dose = dice.whole(0, 2); dose > 0; dose -= 1)
    put(sheet, again + dose * every, 'vitamin D taken 1 dose, told us');
}
