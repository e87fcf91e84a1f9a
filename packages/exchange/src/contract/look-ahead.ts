/** A unit as the coming years are looked ahead at from. */
import { z } from 'zod';
import { date } from './basics.ts';

const arrivals = z.object({ perWeek: z.number(), lagWeeks: z.number() });
const quarter = z.number();

/** What planning needs, field by field as the package has it; whoever looks ahead reads no notes. */
const aheadOfUnit = z.object({
  demand: z.object({
    waiting: z.array(z.number()).readonly(),
    due: z.array(z.object({ week: z.number(), dose: z.number(), people: z.number() })).readonly(),
    referrals: arrivals,
    season: z.tuple([quarter, quarter, quarter, quarter]).readonly(),
    leavers: arrivals,
    pausesEnding: z.array(z.object({ week: z.number(), people: z.number() })).readonly(),
    startsAgain: z.number(),
    doses: z.number(),
    intervalWeeks: z.number(),
    pauseWeeks: z.number(),
    returns: z.array(z.number()).readonly(),
    diesAfterFirst: z.number(),
    diesLater: z.number(),
    counted: z
      .object({
        referrals: z.number(),
        leavers: z.number(),
        returns: z.array(z.number()).readonly(),
        diesAfterFirst: z.number(),
        diesLater: z.number(),
        startsAgain: z.number(),
      })
      .optional(),
  }),
  service: z.object({
    sessionsPerWeek: z.number(),
    placesPerSession: z.number(),
    minutesOpen: z.number(),
    nurses: z.number(),
    chairs: z.number(),
    nurseMinutesPerVisit: z.number(),
    chairMinutesPerVisit: z.number(),
    watchedPerNurse: z.number(),
    infusionMinutes: z.number(),
    otherVisitsPerWeek: z.number(),
  }),
  bloods: z.object({ drawn: z.enum(['at referral', 'to fit the place']), validWeeks: z.number() }),
});

export const lookAheadView = z.object({
  unit: z.string(),
  unitName: z.string(),
  today: date,
  /** Why there is nothing to look ahead at. */
  says: z.string().optional(),
  ahead: aheadOfUnit.optional(),
  /** Each figure in words, with what it was counted from and the starting value it was drawn towards. */
  read: z
    .array(z.object({ what: z.string(), is: z.string(), from: z.string(), starting: z.string().optional() }))
    .readonly(),
  hasUsualSettings: z.boolean(),
});
export type LookAheadView = z.infer<typeof lookAheadView>;
