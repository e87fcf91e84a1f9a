/**
 * A request as text: dates, kinds and sessions by their names. Nothing but the weights may be left out: who may be where from
 * when is known or it is not asked.
 */
import { type Day, day, isPlainDate } from '@twelvemonth/clinical';
import { z } from 'zod';
import { type FormatProblem, problemsOf } from '../day/format-problem.ts';
import { type FillRequest, type Tier, usualFillWeights } from './request.ts';

const minutes = z.int().nonnegative();
const date = z
  .string()
  .refine(isPlainDate, { error: 'is not a date: write it as 2026-11-25' })
  .transform((text): Day => day(text));
const name = z.string().min(1);

/** In the order of the tiers. */
export const tierNames = ['first in line', 'urgent', 'other'] as const;
export const weekdayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

const mostKinds = 100;
const mostSessions = 30_000;

const edge = z.strictObject({ day: date, because: name });
const weight = z.int().nonnegative();

const requestShape = z.strictObject({
  today: date,
  kinds: z
    .array(z.strictObject({ name, nurseMinutes: minutes, chairMinutes: minutes, isFirst: z.boolean() }))
    .min(1)
    .max(mostKinds),
  sessions: z
    .array(
      z.strictObject({
        name,
        day: date,
        site: name,
        nurseMinutes: minutes,
        chairMinutes: minutes,
        mostFirstVisits: z.int().nonnegative(),
        mostVisits: z.int().nonnegative().optional(),
        reservedPercent: z.int().min(0).max(100),
      }),
    )
    .min(1)
    .max(mostSessions),
  people: z
    .array(
      z.strictObject({
        name,
        kind: name,
        tier: z.enum(tierNames),
        earliest: edge,
        latest: edge,
        due: date,
        bloods: z
          .strictObject({ usableUntil: date.nullable(), drawFrom: date, daysToResult: z.int().nonnegative() })
          .nullable(),
        weekdays: z.array(z.enum(weekdayNames)),
        travelMinutes: z.record(z.string(), z.number().nonnegative()),
        told: name.nullable(),
        noticeDays: z.int().nonnegative(),
        group: name.optional(),
      }),
    )
    .min(1),
  weights: z
    .strictObject({
      perDayLate: weight,
      perDayEarly: weight,
      otherWeekday: weight,
      perHourOfTravel: weight,
      anotherDraw: weight,
      moveTold: weight,
      noPlace: weight,
    })
    .optional(),
});

/** A request as it is written. */
export type FillWritten = z.input<typeof requestShape>;

export type FillRead =
  | {
      readonly ok: true;
      readonly request: FillRequest;
      /** By session: what the file calls it. */
      readonly sessionNames: readonly string[];
      readonly hasUsualWeights: boolean;
    }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

function sameNames(field: string, named: readonly { readonly name: string }[]): FormatProblem[] {
  const names = new Set<string>();
  return named.flatMap((one, index) => {
    if (!names.has(one.name)) {
      names.add(one.name);
      return [];
    }
    return [{ at: `${field}.${index}.name`, says: `there are two of "${one.name}": tell them apart` }];
  });
}

const placesByName = (named: readonly { readonly name: string }[]): Map<string, number> =>
  new Map(named.map((one, index) => [one.name, index]));

export function readFillRequest(json: unknown): FillRead {
  const read = requestShape.safeParse(json);
  if (!read.success) return { ok: false, problems: problemsOf(read.error) };
  const { today, kinds, sessions, people, weights } = read.data;
  const problems = [...sameNames('kinds', kinds), ...sameNames('sessions', sessions), ...sameNames('people', people)];
  sessions.forEach((session, index) => {
    if (session.day < today)
      problems.push({ at: `sessions.${index}.day`, says: 'is before today: leave the session out' });
  });
  const [kindCalled, sessionCalled] = [placesByName(kinds), placesByName(sessions)];
  const found = (map: Map<string, number>, called: string, at: string, list: string): number => {
    const index = map.get(called);
    if (index === undefined)
      problems.push({ at, says: `"${called}" is not among the ${list}: correct it, or add it there` });
    return index ?? 0;
  };
  const request: FillRequest = {
    today,
    kinds,
    sessions,
    people: people.map(({ kind, tier, weekdays, told, group, ...person }, index) => ({
      ...person,
      kind: found(kindCalled, kind, `people.${index}.kind`, 'kinds'),
      tier: tierNames.indexOf(tier) as Tier,
      weekdays: weekdays.map((one) => weekdayNames.indexOf(one) + 1),
      told: told === null ? null : found(sessionCalled, told, `people.${index}.told`, 'sessions'),
      ...(group === undefined ? {} : { group }),
    })),
    weights: weights ?? usualFillWeights,
  };
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, request, sessionNames: sessions.map((one) => one.name), hasUsualWeights: weights === undefined };
}
