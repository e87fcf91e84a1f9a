/** What happens in a random ledger besides its bloods: events, doses, answers, exceptions. */
import { date, label, put, type Sheet } from './random-sheet.ts';

export function events(sheet: Sheet): void {
  const { dice, from } = sheet;
  if (dice.chance(0.08)) {
    const began = from - dice.whole(-5, 25);
    put(sheet, began, `${dice.oneOf(['illness', 'contrast', 'dehydration'])} "it happened"`);
    if (dice.chance(0.75)) put(sheet, began + dice.whole(0, 12), 'well since');
    if (dice.chance(0.1)) put(sheet, began - dice.whole(1, 5), 'well since');
  }
  if (dice.chance(0.04)) put(sheet, from - dice.whole(-3, 16), 'surgery other operation');
  if (dice.chance(0.14)) {
    const broke = from - dice.oneOf([dice.whole(1, 30), dice.whole(356, 370), dice.whole(30, 300)]);
    put(sheet, broke, `fracture hip${dice.chance(0.1) ? ', day not known' : ''}`);
    if (dice.chance(0.85)) put(sheet, broke + dice.whole(0, 3), 'surgery hip repair');
    if (dice.chance(0.1)) put(sheet, from - dice.whole(-3, 14), 'surgery hip re-operation');
  } else if (dice.chance(0.03)) put(sheet, from - dice.whole(0, 14), 'surgery hip repair');
  if (dice.chance(0.12)) {
    const name = label(sheet);
    put(
      sheet,
      from - dice.whole(-4, 500),
      `${name} ${dice.oneOf(['fracture spine', 'fracture wrist', 'fracture other, bone ankle', 'symptom back pain', 'symptom height loss', 'symptom jaw pain'])}`,
    );
    if (dice.chance(0.3))
      put(sheet, from - dice.whole(-4, 400), `fracture ${dice.oneOf(['wrist', 'pelvis', 'other, bone toe'])}`);
    if (sheet.lines.some((line) => line.text.startsWith(`${name} symptom`)) && dice.chance(0.4))
      put(sheet, from, `symptom cleared ${name} "muscular"`);
  }
}

/** What a laboratory or a typing hand can make of a number: no unit that belongs to it, a comparator, nought. */
export function oddity(sheet: Sheet): void {
  const { dice, from } = sheet;
  const lines = [
    'creatinine 0.088 mmol/L signed',
    'creatinine 0 umol/L signed',
    'creatinine 0.9 umol/L signed',
    'creatinine 17.7 umol/L signed',
    'creatinine 0.2 mg/dL signed',
    'creatinine 79 mg/dL signed',
    'weight 562 kg measured',
    'weight 300 kg measured',
    'creatinine >80 umol/L signed',
    'weight >100 kg measured',
    'weight 0 kg measured',
    'adjusted calcium 2.30 nmol/L signed',
    'vitamin D 60 umol/L signed',
    'vitamin D 60 umol/L',
    'height >160 cm peak adult',
    'albumin <20 g/L signed',
    'albumin 38 mmol/L signed',
  ];
  put(sheet, from - dice.whole(0, 60), dice.oneOf(lines));
}

export function doses(sheet: Sheet): void {
  const { dice, from } = sheet;
  const given = dice.oneOf([0, 0, 1, 1, 1, 2, 2, 3]);
  const last =
    from -
    dice.oneOf([
      dice.whole(355, 370),
      dice.whole(364, 366),
      dice.whole(300, 420),
      dice.whole(200, 900),
      dice.whole(366, 500),
    ]);
  for (let dose = 0; dose < given; dose += 1)
    put(sheet, last - dose * dice.oneOf([365, 366, 370]), 'dose zoledronic acid 5 mg, this service');
  if (dice.chance(0.05)) {
    const name = label(sheet);
    put(
      sheet,
      from - dice.whole(100, 500),
      `${name} dose zoledronic acid 5 mg, ward, part ${dice.oneOf(['20', '60'])} mL`,
    );
    if (dice.chance(0.6))
      put(
        sheet,
        from - dice.whole(0, 90),
        `decision part dose ${dice.oneOf(['counts', 'does not count'])} about ${name}, "looked at"`,
      );
  }
  if (dice.chance(0.04)) {
    const name = label(sheet);
    put(sheet, from - dice.whole(300, 400), `${name} dose zoledronic acid 4 mg, elsewhere`);
    if (dice.chance(0.3))
      put(sheet, from - dice.whole(0, 90), `decision after 4 mg product about ${name}, "oncology agrees"`);
  }
  if (dice.chance(0.03)) put(sheet, from - dice.whole(100, 300), 'dose denosumab 60 mg, elsewhere');
  if (dice.chance(given >= 3 ? 0.6 : 0.08)) {
    const on = from - dice.whole(-4, 200);
    put(
      sheet,
      on,
      `course review ${dice.oneOf(['carry on to 6 doses, ok', 'carry on to 4 doses, ok', 'carry on to 3 doses, ok', 'new course of 3 doses, ok', `planned break until ${date(from + dice.whole(-10, 400))}, triggers fracture, ok`, 'stop, enough', 'other treatment romosozumab due 1 Jan 2027, ok'])}`,
    );
  }
}

export function answers(sheet: Sheet): void {
  const { dice, from } = sheet;
  const long = (): number => from - dice.whole(0, 300);
  if (!dice.chance(0.08))
    put(
      sheet,
      long(),
      `allergy ${dice.chance(0.03) ? 'bisphosphonate rash' : dice.oneOf(['none known', 'none known', 'other penicillin, medicine medicine not for bones'])}`,
    );
  const pregnancy = dice.whole(0, 19);
  if (pregnancy <= 13) put(sheet, long(), 'pregnancy does not apply "told us"');
  else if (pregnancy <= 17)
    put(sheet, from - dice.oneOf([dice.whole(0, 14), dice.whole(4, 15), dice.whole(0, 40)]), 'pregnancy no');
  else if (pregnancy === 18 && dice.chance(0.3)) put(sheet, long(), 'pregnancy yes');
  if (!dice.chance(0.1)) put(sheet, long(), `consent ${dice.chance(0.04) ? 'not given' : 'given spoken'}`);
  if (dice.chance(0.05)) return;
  const starts = from + dice.oneOf([-dice.whole(0, 200), -dice.whole(0, 200), -dice.whole(0, 200), dice.whole(1, 30)]);
  const ends =
    from +
    dice.oneOf([
      dice.whole(0, 20),
      dice.whole(40, 400),
      dice.whole(40, 400),
      dice.whole(300, 400),
      dice.whole(300, 400),
    ]);
  const regimen = dice.chance(0.02) ? 'something-else' : 'zoledronic-acid-yearly';
  const planned = dice.chance(0.1) ? `, planned doses ${dice.whole(1, 6)}` : '';
  const interval = dice.chance(0.08) ? `, interval ${dice.oneOf([18, 6, 13])} months reason` : '';
  put(
    sheet,
    from - dice.whole(-3, 200),
    `prescription ${regimen} from ${date(starts)} to ${date(Math.max(starts, ends))}${planned}${interval}`,
  );
}

export function calmAnswers(sheet: Sheet): void {
  const { from } = sheet;
  put(sheet, from - 20, 'allergy none known');
  put(sheet, from - 20, 'pregnancy does not apply "told us"');
  put(sheet, from - 20, 'consent given spoken');
  put(sheet, from - 20, `prescription zoledronic-acid-yearly from ${date(from - 20)} to ${date(from + 345)}`);
}

export function exceptions(sheet: Sheet): void {
  const { dice, from } = sheet;
  if (!dice.chance(0.14)) return;
  for (let count = dice.oneOf([1, 1, 1, 2]); count > 0; count -= 1) {
    const requirement = dice.oneOf([
      'vitamin D',
      'vitamin D',
      'hip repair',
      'age of bloods',
      'age of bloods',
      'course review',
    ]);
    put(
      sheet,
      from - dice.whole(-4, 30),
      `exception ${requirement} until ${date(from + dice.oneOf([dice.whole(0, 12), dice.whole(0, 60), dice.whole(20, 120)]))}, "agreed"`,
    );
  }
}
