/**
 * Small ledgers drawn from a seed, crowded near the edges: values around their limits, validities that end within the days
 * of asking, birthdays in the window, leap days, loadings at every stage. Each is written as text first, so that what is
 * checked can always be pasted.
 */
import { entriesFromDrafts, type Entry, parseLedger } from '@twelvemonth/clinical';
import { dayNumber } from './dates.ts';
import { diceOf } from './dice.ts';
import { besides } from './random-besides.ts';
import { harm } from './random-harm.ts';
import { type Settings, settings, withPolicies } from './random-settings.ts';
import { date, put, type Sheet } from './random-sheet.ts';
import { laterBesides } from './random-later.ts';
import { otherRegimen, toldBesides } from './random-told.ts';
import { ago, calcium, kidneys, levels, rise, vitamin } from './random-bloods.ts';
import { answers, calmAnswers, doses, events, exceptions, oddity } from './random-life.ts';

export type Case = Settings & {
  readonly seed: number;
  readonly text: string;
  readonly entries: readonly Entry[];
  /** First of ten days of asking. */
  readonly from: number;
};

function person(sheet: Sheet): { born: string; sex: 'female' | 'male' | undefined } {
  const { dice, from } = sheet;
  const birthday = from + dice.oneOf([() => dice.whole(-2, 12), () => dice.whole(0, 70), () => dice.whole(0, 364)])();
  const age = dice.whole(66, 92);
  const [year = '', month = '', day = ''] = date(birthday).split('-');
  let born = `${Number(year) - age}-${month}-${month === '02' && day === '29' ? '28' : day}`;
  if (dice.chance(0.06)) born = `${dice.oneOf([1936, 1940, 1944, 1948])}-02-29`;
  if (dice.chance(0.03)) born = dice.oneOf(['1941', '1941-06']);
  const sex = dice.chance(0.03) ? undefined : dice.oneOf(['female', 'female', 'female', 'male'] as const);
  put(sheet, from - 700, `person ${sex ?? 'sex not recorded'}, born ${born}`);
  return { born, sex };
}

/** Far from the seeds of the ledgers themselves. */
const TOLD_SEEDS = 500_000_000;
const HARM_SEEDS = 700_000_000;
const LATER_SEEDS = 900_000_000;

const firstDays = ['2026-11-25', '2026-02-26', '2027-12-27', '2028-02-27', '2024-02-26', '2025-02-26', '2026-06-15'];

export function caseOf(seed: number): Case {
  const dice = diceOf(seed);
  const from = dayNumber(dice.oneOf(firstDays)) + dice.oneOf([0, 0, dice.whole(0, 300)]);
  const sheet: Sheet = { dice, from, lines: [], labels: 0 };
  const who = person(sheet);
  // A person with trouble in every part has no window, and a window is what is hardest: most parts are mostly calm.
  const trouble = dice.oneOf([0.15, 0.3, 0.3, 0.5, 1]);
  const part = (random: () => void, calm: () => void): void => (dice.chance(trouble) ? random() : calm());
  part(
    () => (dice.chance(0.2) ? rise(sheet, who) : kidneys(sheet, who)),
    () => {
      put(sheet, ago(sheet, 56), `creatinine ${dice.whole(55, 75)} umol/L signed`);
      put(sheet, ago(sheet, 90), `weight ${dice.whole(70, 84)} kg measured`);
    },
  );
  part(
    () => calcium(sheet),
    () =>
      put(
        sheet,
        sheet.lines.findLast((line) => line.text.includes('creatinine'))?.on ?? from,
        'adjusted calcium 2.34 mmol/L signed',
      ),
  );
  part(
    () => vitamin(sheet),
    () => put(sheet, ago(sheet, 365), `vitamin D ${dice.oneOf(levels)} signed`),
  );
  part(
    () => events(sheet),
    () => undefined,
  );
  part(
    () => doses(sheet),
    () => put(sheet, from - dice.whole(340, 400), 'dose zoledronic acid 5 mg, this service'),
  );
  if (dice.chance(0.03)) oddity(sheet);
  part(
    () => answers(sheet),
    () => calmAnswers(sheet),
  );
  part(
    () => exceptions(sheet),
    () => undefined,
  );
  besides(sheet);
  const chosen = settings(dice, from);
  const more: Sheet = { ...sheet, dice: diceOf(seed + TOLD_SEEDS) };
  toldBesides(more);
  if (more.dice.chance(0.2)) otherRegimen(more, chosen.sheet.regimens);
  const harmed: Sheet = { ...more, dice: diceOf(seed + HARM_SEEDS) };
  harm(harmed);
  laterBesides({ ...harmed, dice: diceOf(seed + LATER_SEEDS) });
  const text = sheet.lines.map((line) => `${date(line.on)} ${line.text}`).join('\n');
  const read = parseLedger(text);
  if (!read.ok) throw new Error(`seed ${seed}: ${JSON.stringify(read.problems[0])}\n${text}`);
  return {
    seed,
    text,
    entries: entriesFromDrafts(read.drafts, { start: '2020-01-01T00:00:00.000Z' }),
    ...withPolicies(chosen, more.dice),
    from,
  };
}
