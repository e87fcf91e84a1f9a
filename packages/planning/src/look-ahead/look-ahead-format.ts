/**
 * What is known of the coming years as text, with what a unit offers, the wait it aims at and what-ifs. Nothing has a value of
 * its own: a rate that nobody wrote down would count as nobody coming.
 */
import { z } from 'zod';
import { type FormatProblem, problemsOf } from '../day/format-problem.ts';
import { type DemandInputs, type Offer, placesFrom } from './inputs.ts';
import type { WaitTarget } from './look-ahead.ts';

const most = 100_000;
const people = z.int().min(0).max(most);
const weeks = z.int().min(0).max(most);
const share = z.number().min(0).max(1);
const rate = z.number().min(0).max(most);
const arrivals = z.strictObject({ perWeek: rate, lagWeeks: weeks });
const season = z.tuple([rate, rate, rate, rate], { error: 'write four numbers, one for each quarter; 1 is even' });

const demandShape = z.strictObject({
  waiting: z.array(people).min(1),
  due: z.array(z.strictObject({ week: weeks, dose: z.int().min(1), people })),
  referrals: arrivals,
  season,
  leavers: arrivals,
  pausesEnding: z.array(z.strictObject({ week: weeks, people })),
  startsAgain: share,
  doses: z.int().min(1).max(100),
  intervalWeeks: z.int().min(1).max(most),
  pauseWeeks: z.int().min(1).max(most),
  returns: z.array(share),
  diesAfterFirst: share,
  diesLater: share,
  counted: z
    .strictObject({
      referrals: rate,
      leavers: rate,
      returns: z.array(rate),
      diesAfterFirst: rate,
      diesLater: rate,
      startsAgain: rate,
    })
    .optional(),
});

const offerShape = z.strictObject({
  placesPerWeek: z.number().positive().max(most).optional(),
  sessions: z
    .strictObject({
      perWeek: z.number().positive().max(most),
      nurseMinutes: z.int().positive(),
      nurseMinutesPerVisit: z.int().positive(),
    })
    .optional(),
  bloods: z.strictObject({ drawn: z.enum(['at referral', 'to fit the place']), validWeeks: z.int().positive() }),
});

const targetShape = z.strictObject({ weeks: z.number().min(0), probability: z.number().positive().max(1) });

const fileShape = z.strictObject({
  unit: z.string().min(1),
  demand: demandShape,
  offer: offerShape,
  target: targetShape,
  whatIfs: z
    .array(
      z.strictObject({
        name: z.string().min(1),
        demand: demandShape.partial().default({}),
        offer: offerShape.partial().default({}),
      }),
    )
    .default([]),
});

type DemandWritten = z.infer<typeof demandShape>;
type OfferWritten = z.infer<typeof offerShape>;

export type Case = { readonly name: string; readonly inputs: DemandInputs; readonly offer: Offer };

export type LookAheadRead =
  | { readonly ok: true; readonly asTheyAre: Case; readonly whatIfs: readonly Case[]; readonly target: WaitTarget }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

const even = 4;
const hundredth = 0.01;

function demandProblems(
  at: string,
  { season: quarters, returns, doses, waiting, due, counted }: DemandWritten,
): FormatProblem[] {
  const problems: FormatProblem[] = [];
  const say = (field: string, says: string): void => void problems.push({ at: `${at}.${field}`, says });
  const sum = quarters.reduce((total, one) => total + one, 0);
  if (Math.abs(sum - even) > hundredth) say('season', `the four must add up to 4; they add up to ${sum}`);
  if (returns.length !== doses - 1)
    say('returns', `has ${returns.length} shares: write one for each dose that another follows, ${doses - 1}`);
  if (waiting.length > doses)
    say('waiting', `has ${waiting.length} numbers: write at most one for each dose, ${doses}`);
  if (counted !== undefined && counted.returns.length !== returns.length)
    say(
      'counted.returns',
      `has ${counted.returns.length} numbers: write one for each of the returns, ${returns.length}`,
    );
  due.forEach(({ dose }, index) => {
    if (dose > doses) say(`due.${index}.dose`, `must be at most doses, ${doses}`);
  });
  return problems;
}

/** Places a week: told, or from the nurses' minutes of the sessions. */
function offerFrom(at: string, { placesPerWeek, sessions, bloods }: OfferWritten, problems: FormatProblem[]): Offer {
  if ((placesPerWeek === undefined) === (sessions === undefined))
    problems.push({ at, says: 'write either placesPerWeek or sessions' });
  const places =
    placesPerWeek ??
    (sessions === undefined ? 1 : placesFrom(sessions.perWeek, sessions.nurseMinutes, sessions.nurseMinutesPerVisit));
  if (places <= 0) problems.push({ at: `${at}.sessions`, says: 'has no place in it: more minutes, or shorter visits' });
  return { placesPerWeek: places, bloods };
}

export function readLookAhead(json: unknown): LookAheadRead {
  const read = fileShape.safeParse(json);
  if (!read.success) return { ok: false, problems: problemsOf(read.error) };
  const { unit, demand, offer, target, whatIfs } = read.data;
  const problems = demandProblems('demand', demand);
  const asTheyAre: Case = { name: unit, inputs: demand, offer: offerFrom('offer', offer, problems) };
  const others = whatIfs.map((other, index): Case => {
    const at = `whatIfs.${index}`;
    const inputs = defined(demand, other.demand);
    // Places told another way replace those of the offer.
    const isOtherPlaces = other.offer.placesPerWeek !== undefined || other.offer.sessions !== undefined;
    const kept = isOtherPlaces ? { bloods: offer.bloods } : offer;
    problems.push(...demandProblems(`${at}.demand`, inputs));
    return { name: other.name, inputs, offer: offerFrom(`${at}.offer`, defined(kept, other.offer), problems) };
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, asTheyAre, whatIfs: others, target };
}

/** The one with what is written in the other in its place. */
const defined = <T extends object>(one: T, other: { readonly [Key in keyof T]?: T[Key] | undefined }): T => ({
  ...one,
  ...(Object.fromEntries(Object.entries(other).filter(([, value]) => value !== undefined)) as Partial<T>),
});
