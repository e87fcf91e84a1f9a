/**
 * Allergies and severe reactions in random ledgers: to what, named or not, decided or not. Thrown with dice of their own, so that
 * what a seed meant before it means still.
 */
import { type Sheet, label, put } from './random-sheet.ts';

export function harm(sheet: Sheet): void {
  const { dice } = sheet;
  if (dice.chance(0.07)) allergies(sheet);
  if (dice.chance(0.06)) reactions(sheet);
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
    `${name} reaction what felt, severity ${dice.oneOf(['severe', 'severe', 'severe', 'moderate', 'mild'])}`,
  );
  if (dice.chance(0.4))
    put(sheet, on + dice.whole(0, 12), `decision severe reaction looked into about ${name}, "not an allergy"`);
}
