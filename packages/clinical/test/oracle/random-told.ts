/**
 * Teeth, secondary causes, conditions, illness told on a checklist, medicines told again, other regimens and their doses: each
 * near the day on which it begins or ends to matter. Thrown with dice of their own, so that what a seed meant before it means still.
 */
import type { ProtocolSheet } from '@twelvemonth/clinical';
import { type Sheet, date, label, put } from './random-sheet.ts';

export function toldBesides(sheet: Sheet): void {
  const { dice } = sheet;
  teeth(sheet);
  secondary(sheet);
  if (dice.chance(0.08)) consents(sheet);
  if (dice.chance(0.07)) conditions(sheet);
  if (dice.chance(0.08)) illnessTold(sheet);
  if (dice.chance(0.1)) medicineAgain(sheet);
  if (dice.chance(0.05)) oncologyPlan(sheet);
  if (dice.chance(0.12)) afterLoading(sheet);
  if (dice.chance(0.04)) unsignedMineral(sheet);
  if (dice.chance(0.03)) duplicates(sheet);
}

/** A day from the recent past, now and then one while we ask. */
const recent = ({ dice, from }: Sheet, most: number): number =>
  from - dice.oneOf([dice.whole(0, most), -dice.whole(0, 6)]);

function teeth(sheet: Sheet): void {
  const { dice, from } = sheet;
  if (dice.chance(0.7)) return put(sheet, from - dice.whole(1, 300), `teeth nothing pending${checked(sheet)}`);
  if (dice.chance(0.4)) return undefined;
  for (let count = dice.oneOf([1, 1, 2, 3]); count > 0; count -= 1) {
    const on = from - dice.oneOf([dice.whole(0, 400), dice.whole(718, 732), -dice.whole(0, 6)]);
    const answer = dice.oneOf([
      'nothing pending',
      'nothing pending',
      'work pending',
      'socket not healed',
      'jaw pain or loose tooth',
      'sore or loose denture',
      'cannot get a dentist',
      'seen: nothing left to heal',
      'seen: nothing left to heal',
    ]);
    put(sheet, on, `teeth ${answer}${checked(sheet)}`);
  }
  return undefined;
}

const checked = ({ dice, from }: Sheet): string =>
  dice.chance(0.5)
    ? `, checked ${date(from - dice.oneOf([dice.whole(0, 360), dice.whole(353, 367), -dice.whole(0, 8)]))}`
    : '';

function secondary(sheet: Sheet): void {
  const { dice, from } = sheet;
  if (dice.chance(0.72)) return put(sheet, from - dice.whole(1, 500), 'secondary causes none found');
  if (dice.chance(0.4)) return undefined;
  for (let count = dice.oneOf([1, 2]); count > 0; count -= 1)
    put(
      sheet,
      recent(sheet, 200),
      `secondary causes ${dice.oneOf(['none found', 'found, dealt with', 'found, to be dealt with first'])}`,
    );
  return undefined;
}

function consents(sheet: Sheet): void {
  const { dice, from } = sheet;
  const on = from - dice.oneOf([dice.whole(718, 732), dice.whole(0, 40), dice.whole(300, 700)]);
  const answer = dice.oneOf([
    'given spoken',
    'best interest "agreed", consulted sister',
    'best interest "agreed", consulted sister',
  ]);
  sheet.lines.splice(0, sheet.lines.length, ...sheet.lines.filter(({ text }) => !text.startsWith('consent')));
  put(sheet, on, `consent ${answer}`);
  if (dice.chance(0.3))
    put(
      sheet,
      on + dice.whole(-2, 2),
      `capacity ${dice.oneOf(['can decide this', 'cannot decide this "forgets", tried pictures, may return no'])}`,
    );
  if (dice.chance(0.4))
    put(
      sheet,
      on + dice.oneOf([-1, 0, 0, 1, 20]),
      `said no to ${dice.oneOf(['this dose', 'this medicine', 'all contact'])}, "not now"`,
    );
  if (dice.chance(0.3)) put(sheet, on + dice.oneOf([0, 1, 25]), 'consent given spoken');
  if (dice.chance(0.2))
    put(sheet, on + dice.oneOf([0, 1, 20]), `dose ${dice.oneOf(['zoledronic acid 5 mg', 'denosumab 60 mg'])}, ward`);
}

function conditions(sheet: Sheet): void {
  const { dice } = sheet;
  const name = label(sheet);
  const on = recent(sheet, 300);
  const what = dice.oneOf([
    'bone pain',
    'bone pain',
    'bone pain',
    'malabsorption',
    'bariatric surgery',
    'parathyroid or thyroid surgery',
  ]);
  put(sheet, on, `${name} condition ${what}`);
  if (dice.chance(0.4))
    put(sheet, on + dice.whole(0, 20), `decision mineral metabolism looked into about ${name}, "known"`);
  if (what !== 'bone pain') return;
  const level = dice.oneOf([
    '24.9 nmol/L',
    '25 nmol/L',
    '9.9 ng/mL',
    '10 ng/mL',
    '<25 nmol/L',
    '>25 nmol/L',
    '>=9 ng/mL',
    '60 nmol/L',
  ]);
  put(sheet, recent(sheet, 100), `vitamin D ${level}${dice.chance(0.7) ? ' signed' : ''}`);
}

function illnessTold(sheet: Sheet): void {
  const { dice } = sheet;
  const on = recent(sheet, 30);
  const line = `checklist answers {"${dice.oneOf(['unwell-now', 'ill-since-bloods'])}" {answer ${dice.oneOf(['yes', 'yes', 'no'])}}}`;
  const same = dice.chance(0.3);
  if (same && dice.chance(0.5)) put(sheet, on, 'well since');
  put(sheet, on, line);
  if (same && dice.chance(0.6)) put(sheet, on, 'well since');
  else if (dice.chance(0.6)) put(sheet, on + dice.whole(1, 9), 'well since');
  if (dice.chance(0.2))
    put(sheet, on + 1, 'checklist answers {"unwell-now" {answer no}, "ill-since-bloods" {answer no}}');
}

/** The same medicine told more than once: in other capitals, at another dose, after it was stopped. */
function medicineAgain(sheet: Sheet): void {
  const { dice, from } = sheet;
  const sampled = sheet.lines.findLast((line) => line.text.includes('creatinine'))?.on ?? from;
  const sort = dice.oneOf(['nephrotoxic', 'nephrotoxic', 'calcium-lowering']);
  const dose = (): string => (dice.chance(0.5) ? `, daily dose ${dice.oneOf(['"10 mg"', '"20 mg"'])}` : '');
  let on = sampled - dice.whole(10, 200);
  const first = dose();
  for (let count = dice.oneOf([2, 2, 3]); count > 0; count -= 1) {
    const stopped = dice.chance(0.3) ? `, stopped on ${date(on + dice.oneOf([-1, 0, 10, 100]))}` : '';
    const name = dice.oneOf(['drug', 'Drug', '" drug "', 'drug', 'drugs']);
    put(sheet, on, `medicine name ${name}, sort ${sort}${dice.chance(0.7) ? first : dose()}${stopped}`);
    on += dice.oneOf([0, 10, 100, Math.max(0, sampled - on), Math.max(0, sampled + 1 - on), 60]);
  }
}

function oncologyPlan(sheet: Sheet): void {
  const { dice, from } = sheet;
  const stopped = dice.chance(0.7) ? `, stopped on ${date(from + dice.whole(-40, 20))}` : '';
  put(sheet, recent(sheet, 300), `medicine name plan, sort oncology bone plan${stopped}`);
  if (dice.chance(0.3)) put(sheet, from - dice.whole(-4, 60), `medicine name Plan, sort oncology bone plan`);
}

/** A finished loading whose time ends near, a word about the daily vitamin D, a later level nobody has signed. */
function afterLoading(sheet: Sheet): void {
  const { dice, from } = sheet;
  const ended = from - dice.oneOf([dice.whole(108, 124), dice.whole(355, 367), dice.whole(0, 130), dice.whole(1, 360)]);
  put(sheet, ended - 7, `vitamin D loading 2 doses of 50000 IU every 7 days from ${date(ended - 7)}`);
  put(sheet, ended - 7, 'vitamin D taken 1 dose, told us');
  put(sheet, ended, 'vitamin D taken 1 dose, told us');
  if (dice.chance(0.3))
    put(sheet, ended + dice.whole(0, 60), `vitamin D maintenance ${dice.oneOf(['taken', 'taken', 'not taken'])}`);
  if (dice.chance(0.35))
    put(
      sheet,
      ended + dice.whole(-20, 60),
      `vitamin D ${dice.oneOf(['49 nmol/L', '50 nmol/L', '70 nmol/L', '<60 nmol/L', '>40 nmol/L', '30 ng/mL'])}${dice.oneOf([' signed', '', ''])}`,
    );
}

function unsignedMineral(sheet: Sheet): void {
  const { dice } = sheet;
  const on = recent(sheet, 200);
  const first = label(sheet);
  const second = label(sheet);
  const [good, bad] = ['phosphate 0.90 mmol/L, low limit 0.80', 'phosphate 0.79 mmol/L, low limit 0.80'];
  put(sheet, on, `${first} ${dice.oneOf([good, bad])}`);
  if (dice.chance(0.6)) put(sheet, on + 1, `signed ${first}`);
  put(sheet, on + 2, `${second} ${dice.oneOf([good, bad])}`);
  if (dice.chance(0.4)) put(sheet, on + 3, `signed ${second}`);
}

function duplicates(sheet: Sheet): void {
  const { dice } = sheet;
  const on = recent(sheet, 60);
  for (let count = dice.oneOf([1, 2, 2]); count > 0; count -= 1) {
    const answer = dice.oneOf([
      'may be one, other p2',
      'two, other p2, differ [birth date]',
      'two, other p2, differ [birth date]',
      'two, other p3, differ [name]',
      'one, other p2, kept p1, agree [name, number]',
    ]);
    put(sheet, on + dice.whole(0, 5), `same-person answer ${answer}, reason compared`);
  }
}

/** An order for another regimen, before or instead of the yearly infusion, with doses of it and of what was had before. */
export function otherRegimen(sheet: Sheet, regimens: ProtocolSheet['regimens']): void {
  const { dice, from } = sheet;
  const regimen = dice.oneOf(regimens);
  const ordered = from - dice.oneOf([dice.whole(0, 30), dice.whole(100, 900), -dice.whole(0, 5)]);
  const own = dice.chance(0.2) ? `, interval ${dice.oneOf([3, 6, 18, 24])} months "as agreed"` : '';
  put(
    sheet,
    ordered,
    `prescription ${regimen.id} from ${date(ordered)} to ${date(from + dice.oneOf([dice.whole(0, 20), 400, 400]))}${own}`,
  );
  if (dice.chance(0.7)) {
    const back = dice.oneOf([regimen.intervalMonths * 30, regimen.intervalMonths * 31, dice.whole(20, 400)]);
    const name = label(sheet);
    const until =
      regimen.given === 'daily at home' && dice.chance(0.6) ? `, until ${date(from + dice.whole(-60, 10))}` : '';
    const part = dice.chance(0.1) ? ', part 20 mL' : '';
    put(sheet, from - back + dice.whole(-3, 3), `${name} dose ${regimen.medicine}, this service${part}${until}`);
    if (part !== '' && dice.chance(0.5)) put(sheet, from - 2, `decision part dose counts about ${name}, "looked at"`);
  }
  if (dice.chance(0.5)) {
    const other = dice.oneOf(regimens);
    const name = label(sheet);
    const until =
      other.medicine === 'teriparatide' && dice.chance(0.7) ? `, until ${date(from + dice.whole(-40, 10))}` : '';
    const back = dice.oneOf([dice.whole(20, 100), dice.whole(85, 95), dice.whole(360, 370), dice.whole(170, 190)]);
    put(sheet, from - back, `${name} dose ${other.medicine}, elsewhere${until}`);
    if (dice.chance(0.3)) put(sheet, from - dice.whole(0, 15), `decision switch agreed about ${name}, "agreed"`);
    if (dice.chance(0.4))
      put(
        sheet,
        from - back - 5,
        `prescription ${other.id} from ${date(from - back - 5)} to ${date(from - back + 300)}`,
      );
  }
  if (dice.chance(0.25))
    put(
      sheet,
      ordered + dice.oneOf([-1, 0, 1, -100]),
      `course review ${dice.oneOf([`other treatment romosozumab due ${date(from)}, ok`, 'new course of 3 doses, ok', 'carry on to 6 doses, ok, by a specialist', `planned break until ${date(from + 20)}, triggers fracture, ok`])}`,
    );
  if (dice.chance(0.1)) put(sheet, recent(sheet, 60), 'checklist answers {"heart-or-stroke" {answer yes}}');
}
