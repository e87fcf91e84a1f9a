/**
 * How long bisphosphonates have been at work in a lifetime: tablets from their start to their stop, each drip or injection
 * for as long as the protocol lets it work. Days that overlap count once.
 */
import { type Day, addMonths, day as dayOf } from '../calendar/day.ts';
import { isBisphosphonate } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

/** From a day, to the day before the other. */
type Stretch = { readonly from: Day; readonly to: Day };

/** Days of tablets up to a day; open-ended ones count up to it. */
export const tabletDays = (record: SubjectRecord, on: Day): number => daysCovered(tabletStretches(record, on), on);

/** Days of tablets, drips and injections together up to a day. */
export function bisphosphonateDays(record: SubjectRecord, protocol: Protocol, on: Day): number {
  const doses = factsOf(record, 'dose').flatMap((dose): Stretch[] => {
    const months = monthsAtWork(dose, protocol);
    return months === undefined ? [] : [{ from: dose.on, to: addMonths(dose.on, months) }];
  });
  return daysCovered([...tabletStretches(record, on), ...doses], on);
}

/** The interval of the first regimen of the medicine; for the oncology strength the months after which another may follow. */
function monthsAtWork({ body }: Fact<'dose'>, { sheet, number }: Protocol): number | undefined {
  if (!isBisphosphonate(body.medicine)) return undefined;
  if (body.medicine === 'zoledronic acid 4 mg') return number.otherProductMonths;
  return sheet.regimens.find(({ medicine }) => medicine === body.medicine)?.intervalMonths;
}

const tabletStretches = (record: SubjectRecord, on: Day): Stretch[] =>
  factsOf(record, 'medicine')
    .filter(({ body }) => body.sort === 'bisphosphonate tablet')
    .map(({ on: from, body }) => ({ from, to: body.stoppedOn === undefined ? on : dayOf(body.stoppedOn) }));

function daysCovered(stretches: readonly Stretch[], on: Day): number {
  let days = 0;
  let until = -Infinity;
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    const end = Math.min(to, on);
    days += Math.max(0, end - Math.max(from, until));
    until = Math.max(until, end);
  }
  return days;
}
