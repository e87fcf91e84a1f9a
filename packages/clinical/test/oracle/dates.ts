/**
 * Dates for the checker, through Temporal alone, so that it shares no date sums with the product. A day is counted from
 * 1970-01-01 only because the product's `Day` is, and answers must be compared.
 */
const epoch = Temporal.PlainDate.from('1970-01-01');

export const dayNumber = (text: string): number =>
  epoch.until(Temporal.PlainDate.from(text), { largestUnit: 'days' }).days;
const texts = new Map<number, string>();
export function dateText(day: number): string {
  const known = texts.get(day);
  if (known !== undefined) return known;
  const found = epoch.add({ days: day }).toString();
  texts.set(day, found);
  return found;
}

const later = new Map<string, number>();
/** Same day so many months later; Temporal constrains to the end of a shorter month, as the page asks. */
export function monthsLater(day: number, months: number): number {
  const key = `${day} ${months}`;
  const known = later.get(key);
  if (known !== undefined) return known;
  const found = dayNumber(epoch.add({ days: day }).add({ months }).toString());
  later.set(key, found);
  return found;
}

const weekdays = new Map<number, number>();
export function isoWeekday(day: number): number {
  const known = weekdays.get(day);
  if (known !== undefined) return known;
  const found = epoch.add({ days: day }).dayOfWeek;
  weekdays.set(day, found);
  return found;
}

const birthdays = new Map<string, { readonly from: number; readonly days: readonly number[] }>();
/** Whole years on a day. Who was born on 29 February has their birthday on 1 March in other years. */
export function ageOn(born: string, day: number): number {
  let known = birthdays.get(born);
  if (known === undefined) {
    const birth = Temporal.PlainDate.from(born);
    const days: number[] = [];
    for (let age = 0; age <= 130; age += 1) {
      const year = birth.year + age;
      const leapless =
        birth.month === 2 && birth.day === 29 && !Temporal.PlainDate.from({ year, month: 1, day: 1 }).inLeapYear;
      days.push(
        dayNumber(
          Temporal.PlainDate.from(
            leapless ? { year, month: 3, day: 1 } : { year, month: birth.month, day: birth.day },
          ).toString(),
        ),
      );
    }
    known = { from: birth.year, days };
    birthdays.set(born, known);
  }
  let age = -1;
  while (age + 1 < known.days.length && (known.days[age + 1] ?? Infinity) <= day) age += 1;
  return age;
}
