/**
 * Hip fractures by how they were treated, the second dose after denosumab, denosumab where the kidneys fail: each near the day or
 * the number on which it begins or ends to matter. Thrown with dice of their own, so that what a seed meant before it means still.
 */
import { type Sheet, date, label, put } from './random-sheet.ts';

export function laterBesides(sheet: Sheet): void {
  const { dice } = sheet;
  if (dice.chance(0.06)) hipBroken(sheet);
  if (dice.chance(0.04)) secondAfterDenosumab(sheet);
  if (dice.chance(0.05)) denosumabAndKidneys(sheet);
  if (dice.chance(0.05)) dailyVitaminD(sheet);
}

function hipBroken(sheet: Sheet): void {
  const { dice, from } = sheet;
  const name = label(sheet);
  const on = from - dice.oneOf([dice.whole(356, 370), dice.whole(356, 370), dice.whole(1, 40), dice.whole(400, 2000)]);
  const treated = dice.oneOf([
    '',
    ', treatment repaired',
    ', treatment repaired',
    ', treatment repaired',
    ', treatment not repaired',
    ', treatment not known',
  ]);
  put(sheet, on, `${name} fracture hip${dice.chance(0.15) ? ', day not known' : ''}${treated}`);
  if (dice.chance(0.25)) put(sheet, on + dice.whole(-1, 3), 'surgery hip repair');
  if (dice.chance(0.35))
    put(sheet, from - dice.whole(-4, 20), `decision hip fracture looked into about ${name}, "healed without a repair"`);
}

function secondAfterDenosumab(sheet: Sheet): void {
  const { dice, from } = sheet;
  put(sheet, from - dice.whole(280, 330), `dose denosumab ${dice.oneOf(['60', '120'])} mg, elsewhere`);
  const first = from - dice.oneOf([dice.whole(50, 70), dice.whole(80, 100), dice.whole(170, 190)]);
  put(sheet, first, 'dose zoledronic acid 5 mg, this service');
  if (dice.chance(0.15)) put(sheet, first + 25, 'dose zoledronic acid 5 mg, this service');
  put(
    sheet,
    from - dice.whole(0, 40),
    `prescription zoledronic-acid-yearly from ${date(from - 30)} to ${date(from + 400)}, interval ${dice.oneOf([1, 2, 2, 3, 3, 6])} months "after denosumab"`,
  );
}

/** Creatinine around the regimen's number in someone of 40 to 60 kg, decided about or not, signed or not. */
function denosumabAndKidneys(sheet: Sheet): void {
  const { dice, from } = sheet;
  const regimen = dice.oneOf(['denosumab-60-six-monthly', 'denosumab-60-six-monthly', 'denosumab-120']);
  put(sheet, from - dice.whole(0, 60), `prescription ${regimen} from ${date(from - 60)} to ${date(from + 300)}`);
  const name = label(sheet);
  const sampled = from - dice.oneOf([dice.whole(0, 40), dice.whole(50, 58), -dice.whole(0, 4)]);
  put(sheet, sampled, `${name} creatinine ${dice.whole(75, 130)} umol/L${dice.chance(0.85) ? ' signed' : ''}`);
  if (dice.chance(0.6)) put(sheet, sampled, 'adjusted calcium 2.34 mmol/L signed');
  if (dice.chance(0.8)) put(sheet, sampled, `weight ${dice.whole(40, 60)} kg measured`);
  if (dice.chance(0.25)) put(sheet, sampled, 'height 165 cm peak adult');
  if (dice.chance(0.5))
    put(sheet, sampled + dice.whole(0, 6), `decision low clearance accepted about ${name}, "calcium after a week"`);
}

/** A loading that ended long ago, and words about the daily vitamin D at the edges of the days they count. */
function dailyVitaminD(sheet: Sheet): void {
  const { dice, from } = sheet;
  const ended = from - dice.oneOf([dice.whole(110, 350), dice.whole(355, 368)]);
  put(sheet, ended, `vitamin D loading 2 doses of 50000 IU every 7 days from ${date(ended)}`);
  put(sheet, ended, 'vitamin D taken 2 doses, told us');
  for (let count = dice.oneOf([1, 1, 2]); count > 0; count -= 1) {
    const said = dice.oneOf([ended + dice.whole(0, 3), from - dice.whole(112, 124), from - dice.whole(-4, 100)]);
    put(sheet, said, `vitamin D maintenance ${dice.oneOf(['taken', 'taken', 'taken', 'not taken'])}`);
  }
}
