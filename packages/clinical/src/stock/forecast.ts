/**
 * How long the packs of one product last: day by day the doses that are booked and due are taken off the packs that may be
 * used, those that expire first going first. Nothing unknown counts: a late order does not come, an expired or stopped pack is
 * none, and what is expected on a day can be used from the day after.
 */
import { type Day, addDays, dateWithWeekday, shortDate, weekday } from '../calendar/day.ts';
import { counted } from '../kinds-texts/words.ts';

export type Lot = { readonly expiresOn: Day; readonly packs: number };
export type Need = { readonly on: Day; readonly packs: number; readonly why: 'booked' | 'due' };
export type Incoming = { readonly on: Day; readonly packs: number };
/** As the unit has set them. */
export type StockSettings = { readonly leadDays: number; readonly reservePacks: number };

export type StockWeek = {
  /** Monday. */
  readonly from: Day;
  readonly booked: number;
  readonly due: number;
  readonly incoming: number;
  /** Packs whose last day was in this week, unused. */
  readonly expire: number;
  /** Packs that may still be used when the week is over. */
  readonly left: number;
  /** Doses of this week without a pack. */
  readonly short: number;
};

export type Forecast = {
  readonly usable: number;
  readonly weeks: readonly StockWeek[];
  /** The first day on which a dose has no pack, with everything that is expected. */
  readonly runsOutOn: Day | undefined;
  /** The same if nothing of what is ordered came. */
  readonly runsOutWithoutOrders: Day | undefined;
  /** The first day that ends with fewer packs than the reserve; undefined: none, or no reserve is set. */
  readonly belowReserveOn: Day | undefined;
  /** The last day on which an order arrives in time; may be past. */
  readonly orderBy: Day | undefined;
  /** Packs that are missing until the end of the time looked at, the reserve included. */
  readonly missing: number;
  readonly until: Day;
};

export type ForecastInput = {
  readonly today: Day;
  readonly weeks: number;
  readonly lots: readonly Lot[];
  readonly needs: readonly Need[];
  readonly incoming: readonly Incoming[];
  readonly settings: StockSettings | undefined;
};

const DAYS_A_WEEK = 7;

/** Monday of the week of a day. */
export const mondayOf = (on: Day): Day => addDays(on, 1 - weekday(on));

export function forecastOf(input: ForecastInput): Forecast {
  const { today, settings } = input;
  const first = mondayOf(today);
  const until = addDays(first, input.weeks * DAYS_A_WEEK - 1);
  const withOrders = played(input, until, input.incoming);
  const without = input.incoming.length === 0 ? withOrders : played(input, until, []);
  const belowReserveOn =
    settings === undefined ? undefined : withOrders.days.find(({ left }) => left < settings.reservePacks)?.on;
  const trouble = [belowReserveOn, withOrders.runsOutOn].filter((one) => one !== undefined);
  const firstTrouble = trouble.length === 0 ? undefined : (Math.min(...trouble) as Day);
  const short = withOrders.days.reduce((sum, day) => sum + day.short, 0);
  const leftAtEnd = withOrders.days.at(-1)?.left ?? 0;
  return {
    usable: usableOn(input.lots, today),
    weeks: byWeek(withOrders.days, first, input),
    runsOutOn: withOrders.runsOutOn,
    runsOutWithoutOrders: without.runsOutOn,
    belowReserveOn,
    orderBy:
      settings === undefined || firstTrouble === undefined ? undefined : addDays(firstTrouble, -settings.leadDays),
    missing: short + Math.max(0, (settings?.reservePacks ?? 0) - leftAtEnd),
    until,
  };
}

const usableOn = (lots: readonly Lot[], on: Day): number =>
  lots.reduce((sum, lot) => (lot.expiresOn >= on ? sum + Math.max(0, lot.packs) : sum), 0);

type PlayedDay = { readonly on: Day; readonly left: number; readonly short: number; readonly expire: number };

function played(
  { today, lots, needs }: ForecastInput,
  until: Day,
  incoming: readonly Incoming[],
): { readonly days: readonly PlayedDay[]; readonly runsOutOn: Day | undefined } {
  const shelf = lots
    .filter(({ packs, expiresOn }) => packs > 0 && expiresOn >= today)
    .map((lot) => ({ ...lot }))
    .toSorted((a, b) => a.expiresOn - b.expiresOn);
  /** Packs to come have a date nobody knows yet: they are taken last. */
  let fresh = 0;
  const days: PlayedDay[] = [];
  let runsOutOn: Day | undefined;
  for (let on = today; on <= until; on = addDays(on, 1)) {
    let wanted = 0;
    for (const need of needs) if (need.on === on || (on === today && need.on < today)) wanted += need.packs;
    for (const lot of shelf) {
      const taken = Math.min(lot.packs, lot.expiresOn >= on ? wanted : 0);
      lot.packs -= taken;
      wanted -= taken;
    }
    const taken = Math.min(fresh, wanted);
    fresh -= taken;
    wanted -= taken;
    if (wanted > 0) runsOutOn ??= on;
    let expire = 0;
    for (const lot of shelf) {
      if (lot.expiresOn !== on) continue;
      expire += lot.packs;
      lot.packs = 0;
    }
    for (const one of incoming) if (one.on === on) fresh += one.packs;
    days.push({ on, left: shelf.reduce((sum, { packs }) => sum + packs, fresh), short: wanted, expire });
  }
  return { days, runsOutOn };
}

function byWeek(days: readonly PlayedDay[], first: Day, { weeks, needs, incoming, today }: ForecastInput): StockWeek[] {
  return Array.from({ length: weeks }, (_, index): StockWeek => {
    const from = addDays(first, index * DAYS_A_WEEK);
    const isIn = (on: Day): boolean => on >= from && on < from + DAYS_A_WEEK;
    const inWeek = days.filter(({ on }) => isIn(on));
    const needed = (why: Need['why']): number =>
      needs.reduce((sum, one) => (one.why === why && isIn(Math.max(one.on, today) as Day) ? sum + one.packs : sum), 0);
    return {
      from,
      booked: needed('booked'),
      due: needed('due'),
      incoming: incoming.reduce((sum, one) => (isIn(one.on) ? sum + one.packs : sum), 0),
      expire: inWeek.reduce((sum, { expire }) => sum + expire, 0),
      left: inWeek.at(-1)?.left ?? 0,
      short: inWeek.reduce((sum, { short }) => sum + short, 0),
    };
  });
}

/** What the forecast says, in sentences: which week runs out, and by when to order. */
export function forecastSays(
  forecast: Forecast,
  { today, settings }: Pick<ForecastInput, 'today' | 'settings'>,
): readonly string[] {
  const { runsOutOn, runsOutWithoutOrders, weeks, until, orderBy, missing, belowReserveOn } = forecast;
  const short = weeks.reduce((sum, week) => sum + week.short, 0);
  const says = [
    runsOutOn === undefined
      ? `Lasts through ${shortDate(until)} for what is booked and due.`
      : `Runs out in the week of ${dateWithWeekday(mondayOf(runsOutOn))}: ${counted(short, 'dose')} until ${shortDate(until)} without a pack.`,
  ];
  if (runsOutWithoutOrders !== undefined && runsOutWithoutOrders !== runsOutOn)
    says.push(`Without what is ordered it runs out in the week of ${dateWithWeekday(mondayOf(runsOutWithoutOrders))}.`);
  const expire = weeks.filter((week) => week.expire > 0);
  const [first] = expire;
  if (first !== undefined) {
    const packs = expire.reduce((sum, week) => sum + week.expire, 0);
    says.push(
      `${counted(packs, 'pack')} expire unused until then, the first in the week of ${dateWithWeekday(first.from)}.`,
    );
  }
  if (settings === undefined) {
    says.push('No lead time and reserve are set for this unit, so no day to order by is told.');
    return says;
  }
  const basis = `lead time ${counted(settings.leadDays, 'day')}, reserve ${counted(settings.reservePacks, 'pack')}`;
  if (orderBy === undefined) says.push(`Nothing to order yet (${basis}).`);
  else {
    const why =
      belowReserveOn === undefined ? 'it runs out' : `the reserve is reached on ${dateWithWeekday(belowReserveOn)}`;
    says.push(
      orderBy < today
        ? `Order today: the last day to be in time was ${dateWithWeekday(orderBy)}, for ${why} (${basis}); ${counted(missing, 'pack')} missing.`
        : `Order by ${dateWithWeekday(orderBy)}: ${why} (${basis}); ${counted(missing, 'pack')} missing.`,
    );
  }
  return says;
}
