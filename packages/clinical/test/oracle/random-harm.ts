/**
 * Allergies and severe reactions in random ledgers: to what, named or not, decided or not; and old bloods that an exception
 * carries; and broken bones. Thrown with dice of their own, so that
 * what a seed meant before it means still.
 */
import { type Sheet, date, label, put } from './random-sheet.ts';

export function harm(sheet: Sheet): void {
  const { dice } = sheet;
  if (dice.chance(0.07)) allergies(sheet);
  if (dice.chance(0.06)) reactions(sheet);
  if (dice.chance(0.05)) oldBloods(sheet);
  if (dice.chance(0.07)) fractures(sheet);
}

function allergies(sheet: Sheet): void {
  const { dice, from } = sheet;
  for (let count = dice.oneOf([1, 1, 2]); count > 0; count -= 1) {
    const to = dice.oneOf([
      'penicillin, medicine medicine not for bones',
      'latex, medicine not a medicine',
      'denosumab, medicine denosumab',
      'injection, medicine denosumab',
      'injection, medicine romosozumab',
      'tablet, medicine bisphosphonate',
      'tablet, medicine not known which',
      'tablet',
      'Alendronate, medicine medicine not for bones',
      'biphosphonates, medicine not known which',
      'teriparatide',
    ]);
    const felt = dice.chance(0.2) ? `, reaction ${dice.oneOf(['rash', '"rash after risedronate"'])}` : '';
    put(sheet, from - dice.oneOf([dice.whole(0, 300), -dice.whole(0, 6)]), `allergy other ${to}${felt}`);
  }
}

function reactions(sheet: Sheet): void {
  const { dice, from } = sheet;
  const name = label(sheet);
  const on = from - dice.oneOf([dice.whole(0, 400), -dice.whole(0, 6)]);
  put(
    sheet,
    on,
    `${name} reaction what felt, severity ${dice.oneOf([
      'severe',
      'severe',
      'moderate, term anaphylaxis, grade 3, grade version 5.0',
      'moderate, term uveitis, grade 1, grade version 5.0',
      'mild, term fever, grade 3, grade version 5.0',
      'moderate, term fever, grade 2, grade version 5.0',
      'mild, term osteonecrosis of the jaw',
      'moderate',
      'mild',
    ])}`,
  );
  if (dice.chance(0.4))
    put(sheet, on + dice.whole(0, 12), `decision severe reaction looked into about ${name}, "not an allergy"`);
}

/** The only bloods are old, and an exception carries them: near the age at which it no longer may. */
function oldBloods(sheet: Sheet): void {
  const { dice, from } = sheet;
  const others = sheet.lines.filter(({ text }) => !/^(?:creatinine|adjusted calcium|calcium|albumin)/.test(text));
  sheet.lines.splice(0, sheet.lines.length, ...others);
  const on = from - dice.oneOf([dice.whole(90, 102), dice.whole(90, 102), dice.whole(57, 99)]);
  put(sheet, on, `creatinine ${dice.whole(55, 75)} umol/L signed`);
  put(sheet, on, 'adjusted calcium 2.34 mmol/L signed');
  put(
    sheet,
    from - dice.whole(-2, 30),
    `exception age of bloods until ${date(from + dice.oneOf([dice.whole(3, 12), dice.whole(20, 120)]))}, "agreed"`,
  );
}

function fractures(sheet: Sheet): void {
  const { dice, from } = sheet;
  for (let count = dice.oneOf([1, 1, 2]); count > 0; count -= 1) {
    const name = label(sheet);
    const on = from - dice.oneOf([dice.whole(0, 400), -dice.whole(0, 6)]);
    const site = dice.oneOf([
      'thigh shaft',
      'thigh shaft, day not known',
      'ribs',
      'upper arm',
      'other',
      'other, bone ankle',
      'other, bone "Femur, distal"',
      'other, bone leg, note "below the subtrochanteric line"',
      'other, note thighbone',
    ]);
    put(sheet, on, `${name} fracture ${site}`);
    if (dice.chance(0.35))
      put(sheet, on + dice.whole(0, 12), `decision thigh fracture not atypical about ${name}, "seen on film"`);
  }
}
