/** Symptoms, other medicines, minerals and long courses in random ledgers, near the days on which each begins or ends to matter. */
import { type Sheet, date, label, put } from './random-sheet.ts';

/** What a symptom, another medicine or a long course adds: each near the day on which it begins or ends to matter. */
export function besides(sheet: Sheet): void {
  const { dice, from } = sheet;
  const sampled = sheet.lines.findLast((line) => line.text.includes('creatinine'))?.on ?? from;
  if (dice.chance(0.12)) told(sheet);
  if (dice.chance(0.06)) again(sheet, sampled);
  if (dice.chance(0.12)) {
    const began = sampled + dice.oneOf([-1, 0, 1, dice.whole(-30, 30)]);
    const sort = dice.oneOf(['nephrotoxic', 'nephrotoxic', 'calcium-lowering']);
    const stopped = dice.chance(0.3) ? `, stopped on ${date(began + dice.oneOf([-1, 0, 5]))}` : '';
    put(sheet, began, `medicine name drug, sort ${sort}${stopped}`);
  }
  if (dice.chance(0.12)) {
    const sort = dice.oneOf(['bisphosphonate tablet', 'other bone medicine', 'steroid']);
    const began = from - dice.whole(-4, 300);
    const stopped = dice.chance(0.7)
      ? `, stopped on ${date(from + dice.oneOf([dice.whole(-90, 12), dice.whole(0, 60)]))}`
      : '';
    put(sheet, began, `medicine name tablet, sort ${sort}${stopped}`);
    if (dice.chance(0.4)) {
      const name = dice.oneOf(['tablet', 'Tablet', 'another']);
      const ended = dice.chance(0.6) ? `, stopped on ${date(from + dice.whole(-20, 20))}` : '';
      put(sheet, from - dice.whole(-6, 60), `medicine name ${name}, sort ${sort}${ended}`);
    }
  }
  if (dice.chance(0.1)) {
    const last = dice.oneOf([dice.whole(176, 190), dice.whole(100, 200), -dice.whole(1, 6)]);
    put(sheet, from - last, `dose denosumab ${dice.oneOf(['60', '60', '120'])} mg, elsewhere`);
    if (dice.chance(0.4)) put(sheet, from - last - dice.whole(150, 200), 'dose denosumab 60 mg, elsewhere');
  }
  if (dice.chance(0.1)) longCourse(sheet);
  if (dice.chance(0.12)) minerals(sheet);
  if (dice.chance(0.06)) spine(sheet);
}

/** A second value of one day, the same or another. */
function again(sheet: Sheet, on: number): void {
  const { dice } = sheet;
  const name = label(sheet);
  const value = dice.oneOf([
    'creatinine 79 umol/L',
    'creatinine 70 umol/L',
    'adjusted calcium 2.29 mmol/L',
    'vitamin D 68 nmol/L',
    'vitamin D 30 nmol/L',
    'albumin 40 g/L',
  ]);
  put(sheet, on, `${name} ${value}`);
  if (dice.chance(0.7)) put(sheet, on + dice.whole(0, 3), `signed ${name}`);
}

/** Heights measured over the years, and pictures of the spine. */
function spine(sheet: Sheet): void {
  const { dice, from } = sheet;
  for (let count = dice.oneOf([1, 2, 2, 3]); count > 0; count -= 1) {
    const height = dice.oneOf(['160 cm', '158 cm', '158.1 cm', '62 in', '157.5 cm', '<150 cm', '161.9 cm']);
    const which = dice.oneOf(['measured now', 'measured now', 'measured now', 'peak adult']);
    put(sheet, from - dice.whole(-6, 900), `height ${height} ${which}`);
  }
  if (dice.chance(0.4))
    put(
      sheet,
      from - dice.whole(-6, 400),
      `spine imaging X-ray ${dice.oneOf(['new fracture', 'no fracture', 'old fracture only'])}`,
    );
}

function told(sheet: Sheet): void {
  const { dice, from } = sheet;
  const name = label(sheet);
  const on = from - dice.oneOf([dice.whole(0, 200), -dice.whole(0, 6)]);
  const said = dice.oneOf([
    'symptom thigh, hip or groin pain',
    'symptom eye pain or redness',
    'symptom jaw pain',
    'symptom jaw pain',
    'symptom tingling or cramps',
    'symptom other',
    'checklist answers {"thigh" {answer yes}}',
    'checklist answers {"teeth" {answer yes}, "eye" {answer no}}',
    'checklist answers {"teeth" {answer yes}}',
    'checklist answers {"unwell-now" {answer yes}, "drunk-enough" {answer no}}',
  ]);
  put(sheet, on, `${name} ${said}`);
  if (dice.chance(0.2)) put(sheet, on + 1, 'checklist answers {"thigh" {answer no}, "teeth" {answer no}}');
  const questions = said.startsWith('symptom')
    ? ['']
    : ['thigh', 'teeth', 'eye', 'unwell-now'].map((id) => `, question ${id}`);
  for (const question of questions)
    if (dice.chance(0.45)) put(sheet, on + dice.whole(0, 12), `symptom cleared ${name} "looked into"${question}`);
  if (dice.chance(0.4))
    put(
      sheet,
      from - dice.whole(-4, 30),
      `exception teeth and jaw until ${date(from + dice.oneOf([dice.whole(0, 12), dice.whole(0, 60)]))}, "agreed"`,
    );
}

function minerals(sheet: Sheet): void {
  const { dice, from } = sheet;
  for (let count = dice.oneOf([1, 1, 2]); count > 0; count -= 1) {
    const name = label(sheet);
    const text = dice.oneOf([
      'alkaline phosphatase 130 U/L, limits 30 to 130',
      'alkaline phosphatase 131 U/L, limits 30 to 130',
      'alkaline phosphatase 100 U/L',
      'phosphate 1.10 mmol/L, high limit 1.50',
      'phosphate 0.80 mmol/L, limits 0.80 to 1.50',
      'phosphate 0.79 mmol/L, limits 0.80 to 1.50',
      'phosphate <0.90 mmol/L, low limit 0.80',
      'magnesium 0.7 mmol/L, limits 0.70 to 1.00',
      'magnesium 0.69 mmol/L, low limit 0.70',
      'magnesium >0.80 mmol/L, low limit 0.70',
      'parathyroid hormone 6.9 pmol/L, high limit 6.9',
      'parathyroid hormone 7.0 pmol/L, high limit 6.9',
      'parathyroid hormone <6.0 pmol/L, high limit 6.9',
    ]);
    const on = from - dice.oneOf([dice.whole(0, 200), -dice.whole(0, 6)]);
    put(sheet, on, `${name} ${text}`);
    if (dice.chance(0.85)) put(sheet, on + dice.whole(0, 3), `signed ${name}`);
    if (dice.chance(0.3))
      put(sheet, on + dice.whole(0, 8), `decision mineral metabolism looked into about ${name}, "known"`);
  }
}

/** Five to seven doses in a row, a break or a review among them at times. */
function longCourse(sheet: Sheet): void {
  const { dice, from } = sheet;
  const given = dice.oneOf([5, 6, 6, 7]);
  const last = from - dice.whole(355, 420);
  for (let back = 0; back < given; back += 1) put(sheet, last - back * 366, 'dose zoledronic acid 5 mg, this service');
  const nth = last - 366 * dice.whole(0, 2);
  if (dice.chance(0.3))
    put(sheet, nth - dice.whole(1, 90), `course review planned break until ${date(nth)}, triggers fracture, ok`);
  put(
    sheet,
    dice.oneOf([last - 366, last - 1, last, last + 1, from - dice.whole(0, 60)]),
    `course review carry on to 10 doses, ok${dice.oneOf([', by a specialist', ', by a specialist', '', ', by another prescriber'])}`,
  );
}
