/** Sessions and today. */
import { visitSteps } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date, moment, verdict, windowView } from './basics.ts';
import { stoppedPack } from './stock.ts';
import { supportLine } from './supports.ts';

export const sessionRow = z.object({
  session: z.string(),
  unit: z.string(),
  unitName: z.string(),
  on: date,
  opensAt: z.string(),
  closesAt: z.string(),
  places: z.number().int(),
  taken: z.number().int(),
  /** Booked people who will not be ready on that date, as things stand. */
  trouble: z.number().int(),
  cancelled: z.boolean(),
});
export type SessionRow = z.infer<typeof sessionRow>;
export const sessionsQuery = z.object({ from: date.optional(), until: date.optional(), unit: z.string().optional() });
export const sessionsAnswer = z.object({ sessions: z.array(sessionRow) });

export const visitStep = z.object({
  step: z.enum(visitSteps),
  state: z.enum(['done', 'running', 'waiting', 'to come']),
  at: moment.optional(),
  by: z.string().optional(),
  says: z.string().optional(),
});
export type VisitStep = z.infer<typeof visitStep>;

/** Who looks after somebody in a session. `isHere` false: not named as here any more, somebody else is to be named. */
export const namedNurseView = z.object({ staff: z.string(), name: z.string(), isHere: z.boolean() });
export type NamedNurseView = z.infer<typeof namedNurseView>;
export const nurseHere = z.object({ staff: z.string(), name: z.string() });

export const listedPatient = z.object({
  patient: z.string(),
  name: z.string(),
  number: z.string(),
  born: z.string(),
  dose: z.string(),
  firstTimer: z.boolean(),
  verdict,
  headline: z.string(),
  /** Prescribers' exceptions that last on the day, each with who, until when and why; none once the dose is given. */
  exceptions: z.array(z.string()),
  needs: z.array(z.string()),
  /** Others on the same list whose name or birth date is easily taken for theirs. */
  nearNames: z.array(z.string()),
  /** What goes with this place, and what was booked for a place they no longer have. */
  supports: z.array(supportLine),
  steps: z.array(visitStep),
  outcome: z.enum(['not here yet', 'here', 'given', 'part given', 'put off', 'gone']),
});
export type ListedPatient = z.infer<typeof listedPatient>;

export const sessionView = sessionRow.extend({
  seq: z.number().int(),
  list: z.array(z.object({ place: z.number().int(), arriveAt: z.string(), who: listedPatient.optional() })),
  /** People who wait or are due, and whose window holds this date: who could be offered a free place. */
  couldCome: z.array(
    z.object({ patient: z.string(), name: z.string(), standing: z.string(), window: z.string(), certain: z.boolean() }),
  ),
});
export type SessionView = z.infer<typeof sessionView>;

const trouble = z.object({ patient: z.string(), name: z.string(), says: z.string() });
const packsOfDay = z.object({ batch: z.string(), packs: z.number().int(), note: z.string().optional() });

/** A session on its day: what opening and closing it need, and what was said when it was opened, closed and handed over. */
export const sessionDayView = z.object({
  session: z.string(),
  seq: z.number().int(),
  unit: z.string(),
  unitName: z.string(),
  on: date,
  today: date,
  state: z.enum(['not opened', 'open', 'closed, handover waits', 'closed']),
  chairs: z.number().int(),
  listed: z.number().int(),
  /** Nurses who are here, as the opening says, and who looks after whom, in order of arrival. */
  nurses: z.array(nurseHere),
  lookedAfter: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      arriveAt: z.string(),
      /** Has gone home: nobody looks after them any more. */
      gone: z.boolean(),
      nurse: namedNurseView.optional(),
    }),
  ),
  /** The soonest after its preparation first. `afterSeconds` absent: not known. */
  secondChecks: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      preparedBy: z.string(),
      checkedBy: z.string(),
      at: moment,
      agrees: z.boolean(),
      afterSeconds: z.number().optional(),
    }),
  ),
  /** Who works here, what they have shown and until when it counts. */
  staff: z.array(
    z.object({
      staff: z.string(),
      name: z.string(),
      roles: z.array(z.string()),
      competences: z.array(z.object({ what: z.string(), until: date, inDate: z.boolean() })),
      /** Their account ends with this day. */
      onlyToday: z.boolean(),
      /** Registered, and in date for medicines into a vein. */
      mayCheck: z.boolean(),
    }),
  ),
  /** Batches that may be used. `isHere`: by the sum some lie at this unit, or were opened here today; those come first. */
  batches: z.array(
    z.object({
      batch: z.string(),
      product: z.string(),
      expiresOn: date,
      opened: z.number().int(),
      isHere: z.boolean(),
    }),
  ),
  /** Known now: people of today and of the next session who are not ready. */
  trouble: z.array(trouble),
  next: z.object({ session: z.string(), on: date, trouble: z.array(trouble) }).optional(),
  opened: z
    .object({
      by: z.string(),
      at: moment,
      /** Who opened it and when, where who is here, kit or chairs were written anew since. */
      first: z.object({ by: z.string(), at: moment }).optional(),
      present: z.array(z.object({ staff: z.string(), name: z.string(), role: z.string() })),
      secondCheckers: z.array(z.object({ staff: z.string(), name: z.string() })),
      kit: z.string(),
      kitCheckedBy: z.string(),
      kitComplete: z.boolean(),
      kitExpiresOn: date,
      chairs: z.number().int(),
      /** `bySum`: what the sum said before the count, where the two differ. */
      counts: z.array(packsOfDay.extend({ bySum: z.number().int().optional() })),
      note: z.string().optional(),
    })
    .optional(),
  /** Open, and nothing may be started: why. */
  held: z.array(z.string()),
  /** What stands in the way of closing: who has no outcome, whose letter is missing. */
  missing: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      what: z.enum(['not come', 'not over', 'letter']),
      remedy: z.string(),
      /** HH:MM: expected then, which is still to come. */
      comesAt: z.string().optional(),
    }),
  ),
  /** Letters of people on the list that are signed and have not gone out. */
  lettersToSend: z.number().int(),
  closed: z
    .object({
      by: z.string(),
      byStaff: z.string(),
      at: moment,
      counts: z.array(packsOfDay),
      handover: z.string(),
      to: z.string(),
      toStaff: z.string(),
    })
    .optional(),
  accepted: z.object({ by: z.string(), at: moment, note: z.string().optional() }).optional(),
});
export type SessionDayView = z.infer<typeof sessionDayView>;

/** Asked before a booking is confirmed: every requirement again for that date. */
export const bookingCheck = z.object({
  on: date,
  verdict,
  headline: z.string(),
  insideWindow: z.boolean(),
  /** New trouble: each must be accepted by name to go on. */
  causes: z.array(
    z.object({
      cause: z.string(),
      title: z.string(),
      verdict,
      says: z.string(),
      /** Whether whoever asks may take it on: registered staff only. */
      acceptable: z.boolean(),
    }),
  ),
  /** Steps with the dates between which they must be done for this place. */
  steps: z.array(z.object({ what: z.string(), earliest: date, latest: date.optional() })),
  window: windowView.optional(),
});
export type BookingCheck = z.infer<typeof bookingCheck>;

export const todayView = z.object({
  date,
  unit: z.string(),
  unitName: z.string(),
  session: z.string().optional(),
  /** Whether the session of today was opened. */
  sessionState: z.enum(['not opened', 'open', 'closed, handover waits', 'closed']).optional(),
  /** Other sessions of today: whose people are not on this page. */
  alsoToday: z.array(z.object({ session: z.string(), opensAt: z.string(), closesAt: z.string(), listed: z.number() })),
  /** Open, and nothing may be started: why. */
  held: z.array(z.string()),
  /** Earlier sessions that nobody closed, or whose handover nobody has taken on; the oldest first. */
  leftOver: z.array(
    z.object({
      session: z.string(),
      on: date,
      state: z.enum(['open', 'closed, handover waits']),
      /** Whose the handover is. */
      to: z.object({ staff: z.string(), name: z.string() }).optional(),
    }),
  ),
  /** The next session, if there is none today. */
  nextSession: z.object({ session: z.string(), on: date }).optional(),
  counts: z.object({
    listed: z.number().int(),
    gone: z.number().int(),
    here: z.number().int(),
    late: z.number().int(),
  }),
  /** HH:MM at which the last can have left if nobody waits for anything; absent: nobody is still to leave, or no protocol. */
  finishEarliest: z.string().optional(),
  chairs: z.number().int(),
  /** Nurses who are here, as the opening of the session says: one of them looks after each person. */
  nurses: z.array(nurseHere),
  /** While somebody is late or a place is free: who could come instead, those with the least choice first. */
  couldCome: z.array(z.object({ patient: z.string(), name: z.string(), standing: z.string() })),
  /** Packs in use now whose batch was stopped after they were prepared. */
  stoppedPacks: z.array(stoppedPack.extend({ patient: z.string(), who: z.string() })),
  /** Acts in the order in which they are due. */
  next: z.array(
    z.object({
      by: z.string(),
      patient: z.string(),
      who: z.string(),
      what: z.string(),
      act: z.string(),
      to: z.string(),
    }),
  ),
  visits: z.array(
    listedPatient.extend({
      arriveAt: z.string(),
      /** Minutes past the arrival time, for somebody who is late. */
      late: z.number().int().optional(),
      place: z.number().int(),
      chair: z.number().int().optional(),
      nurse: namedNurseView.optional(),
      infusion: z
        .object({
          startedAt: moment,
          earliestFinish: moment.optional(),
          paused: z.boolean(),
          plannedMinutes: z.number(),
          says: z.string(),
        })
        .optional(),
    }),
  ),
  /** Booked in the coming sessions and not ready on their date, known today. */
  trouble: z.array(
    z.object({ session: z.string(), on: date, patient: z.string(), name: z.string(), verdict, says: z.string() }),
  ),
  /** Booked in a coming session, and nothing may be prepared: a pharmacist's word is missing, or was no. Refused ones first. */
  heldByPharmacy: z.array(
    z.object({
      session: z.string(),
      on: date,
      patient: z.string(),
      name: z.string(),
      says: z.string(),
      refused: z.boolean(),
    }),
  ),
  /** Small piles of work with their number, oldest first inside. */
  work: z.array(z.object({ what: z.string(), count: z.number().int(), to: z.string(), oldest: date.optional() })),
  commit: z.number().int(),
});
export type TodayView = z.infer<typeof todayView>;
