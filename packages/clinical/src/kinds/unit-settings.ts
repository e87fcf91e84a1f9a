import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField, timeField, zoneField } from './fields.ts';

const count = z.number().int().min(0).max(60);
/** The planner's grid is five minutes. */
const stepMinutes = z.number().int().min(5).max(240).multipleOf(5);

/** What planning needs of a unit beside its chairs and hours. How long an infusion runs and is watched after is the protocol's. */
export const planningSettings = z
  .object({
    /** Nurses at the chairs through a usual session; who prepares and checks is counted apart. */
    nurses: count.min(1),
    /** Running infusions one nurse keeps an eye on. */
    watchedPerNurse: count.min(1),
    /** Seats for the watch after an infusion, beside the chairs. */
    watchPlaces: count,
    preparers: count,
    secondCheckers: count,
    minutes: z
      .object({
        observations: stepMinutes,
        checklist: stepMinutes,
        cannula: stepMinutes,
        preparation: stepMinutes,
        secondCheck: stepMinutes,
        /** A prepared dose may stand so long. */
        keeps: stepMinutes,
        removal: stepMinutes,
        leave: stepMinutes,
        injection: stepMinutes,
      })
      .readonly(),
    /** First visits a session may have. */
    mostFirstVisits: count,
    /** Hundredths of a session's minutes kept for those first in line. */
    reservedPercent: z.number().int().min(0).max(90),
    /** Days between telling a person and the place. */
    noticeDays: z.number().int().min(0).max(60),
    /** Of a hundred rehearsals of a session so many are to end by closing; chooses among plans that are nearly as good. */
    onTimePercent: z.number().int().min(50).max(99).optional(),
  })
  .readonly();
export type PlanningSettings = z.infer<typeof planningSettings>;

/** What a unit is: name, zone, chairs, hours, session and blood days, closures. The latest entry holds. */
export const unitSettings = entryKind({
  name: 'unit-settings',
  of: 'unit',
  shape: 1,
  label: 'unit settings',
  help: 'Name, zone, chairs, hours, session days, blood days, closed days.',
  writes: ['service lead', 'administrator'],
  body: z
    .object({
      name: shortText,
      zone: zoneField,
      chairs: z.number().int().min(1).max(60),
      opensAt: timeField,
      closesAt: timeField,
      sessionWeekdays: z.array(z.number().int().min(1).max(7)).readonly(),
      bloodWeekdays: z.array(z.number().int().min(1).max(7)).min(1).readonly(),
      closedDays: z.array(dateField).readonly(),
      /** Minutes between arrivals when a session is planned. */
      minutesBetweenArrivals: z.number().int().min(5).max(120),
      telephone: shortText,
      /** Rung inside the building when somebody collapses; stands on the anaphylaxis card. */
      emergencyNumber: shortText.optional(),
      demo: z.boolean(),
      planning: planningSettings.optional(),
      /** When people are reminded of a place; without it nobody is. */
      reminders: z
        .object({
          /** "28, 7 and 2 days before": practice page 1a row 15 (common practice, no source); the unit's own. */
          daysBefore: z.array(z.number().int().min(1).max(90)).min(1).readonly(),
          /** No message before and after. */
          fromTime: timeField,
          untilTime: timeField,
          /** Those a person approved go on their day without a press; absent: none does. */
          byItself: z.boolean().optional(),
        })
        .readonly()
        .optional(),
      /** When somebody answers the advice line, and rings those who had a first dose; without it any open day counts. */
      adviceLine: z
        .object({
          weekdays: z.array(z.number().int().min(1).max(7)).min(1).readonly(),
          fromTime: timeField,
          untilTime: timeField,
        })
        .readonly()
        .optional(),
      /** How long an order takes to come, and how many packs are to lie there always; without it no day to order by is told. */
      stock: z
        .object({ leadDays: z.number().int().min(0).max(120), reservePacks: z.number().int().min(0).max(5000) })
        .readonly()
        .optional(),
      /** How the unit writes; without it no letter that gives a day to answer by can be printed. */
      letters: z
        .object({
          postalAddress: textField,
          language: z.enum(['en-GB', 'en-US']),
          /** Days after which an answer is asked for again, and by which a person is asked to ring. */
          answerWithinDays: z.number().int().min(1).max(90),
        })
        .readonly()
        .optional(),
    })
    .readonly(),
  example: {
    name: 'Thornbeck Day Unit',
    zone: 'Europe/London',
    chairs: 6,
    opensAt: '08:30',
    closesAt: '17:00',
    sessionWeekdays: [2, 4],
    bloodWeekdays: [1, 2, 3, 4, 5],
    closedDays: ['2026-12-25' as PlainDate],
    minutesBetweenArrivals: 20,
    telephone: '01632 960100',
    demo: true,
    letters: { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-GB', answerWithinDays: 14 },
  },
});
