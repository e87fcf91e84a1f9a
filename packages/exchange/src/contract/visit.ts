/** The visit of one person: who is here, what is done, what is asked, what runs. */
import { everyInjectionSite } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date, moment, verdict } from './basics.ts';
import { atPharmacy } from './pharmacy.ts';
import { stoppedPack } from './stock.ts';
import { supportLine } from './supports.ts';
import { namedNurseView, nurseHere, visitStep } from './sessions.ts';

export const visitView = z.object({
  patient: z.string(),
  seq: z.number().int(),
  name: z.string(),
  born: z.string(),
  bornInWords: z.string(),
  number: z.string(),
  allergies: z.string(),
  armToAvoid: z.string().optional(),
  armToAvoidBecause: z.string().optional(),
  /** Prescribers' exceptions that last today. */
  exceptions: z.array(z.string()),
  needs: z.array(z.string()),
  supports: z.array(supportLine),
  nearNames: z.array(z.string()),
  /** To know before a needle goes in: skin cleaner, blood thinners, an earlier faint. */
  atTheNeedle: z.array(z.string()),
  dose: z.string(),
  firstTimer: z.boolean(),
  lastTime: z.array(z.string()),
  session: z.string().optional(),
  on: date,
  arriveAt: z.string().optional(),
  /** Who looks after them today, and the nurses who are here. */
  nurse: namedNurseView.optional(),
  nurses: z.array(nurseHere),
  steps: z.array(visitStep),
  current: z.string().optional(),
  questions: z.array(
    z.object({
      id: z.string(),
      asks: z.string(),
      holdsOn: z.enum(['yes', 'no']),
      answer: z.enum(['yes', 'no']).optional(),
      note: z.string().optional(),
      toldUs: z.string().optional(),
    }),
  ),
  putOffValues: z.array(z.string()),
  /** Whom the early warning score is for, and the scale on which saturation is read. */
  earlyWarningFor: z.union([
    z.object({ scale: z.union([z.literal(1), z.literal(2)]), decidedOn: date.optional() }),
    z.object({ notFor: z.string() }),
  ]),
  /** What was measured at this visit, oldest first: before, during and after the dose side by side. */
  observations: z.array(
    z.object({
      when: z.enum(['before', 'during', 'after']),
      at: moment,
      by: z.string(),
      says: z.string(),
      /** NEWS2 in words; it decides nothing. */
      earlyWarning: z.string(),
    }),
  ),
  go: z
    .object({
      verdict,
      headline: z.string(),
      nearLimit: z.boolean(),
      /** Today's clearance with its numbers, by both forms. */
      clearance: z.string().optional(),
      items: z.array(z.object({ title: z.string(), verdict, says: z.string() })),
    })
    .optional(),
  /** Whether the notes of a week before already said that no dose could be given today; absent once the medicine ran. */
  foreseen: z.boolean().optional(),
  decision: z.object({ decision: z.string(), says: z.string() }).optional(),
  /** They told of an illness today, or were put off as unwell, and nobody has written what it was. */
  illnessToWrite: z.boolean(),
  prescription: z.string().optional(),
  /** Where the running dose is held; absent: it does not run, or no device was named. */
  held: z
    .object({ device: z.string(), name: z.string(), by: z.string(), at: moment, takenFrom: z.string().optional() })
    .optional(),
  /** Absent: no pharmacist has a word in it. */
  atPharmacy: atPharmacy.optional(),
  /** By whom and when. What was read of the pack is not sent to anyone. */
  preparation: z
    .object({
      entry: z.string(),
      by: z.string(),
      byStaff: z.string(),
      at: moment,
    })
    .optional(),
  /** Who may check it now, by name: here, in date, and not the preparer. Absent: nothing is prepared, or nobody is named. */
  mayCheck: z.array(z.string()).optional(),
  stoppedPack: stoppedPack.optional(),
  check: z
    .object({
      agrees: z.boolean(),
      differs: z.array(z.string()),
      by: z.string(),
      at: moment,
      /** Since it was made, as the server reckons now; absent: cannot be measured. */
      agoSeconds: z.number().optional(),
    })
    .optional(),
  /** What the go was for, where it is injected and not dripped. */
  injection: z
    .object({
      medicine: z.string(),
      product: z.string(),
      packs: z.number().int(),
      goes: z.string(),
      sites: z.array(z.enum(everyInjectionSite)),
      checkedByAnother: z.boolean(),
    })
    .optional(),
  infusion: z
    .object({
      startedAt: moment,
      plannedMinutes: z.number(),
      leastMinutes: z.number(),
      /** Seconds it has run as the server reckons now, pauses left out; absent: cannot be measured. */
      ranSeconds: z.number().optional(),
      paused: z.boolean(),
      /** Why it stands still, who stopped it and when. */
      pause: z.object({ at: moment, by: z.string(), reason: z.string() }).optional(),
      earliestFinish: moment.optional(),
      finishedAt: moment.optional(),
      milliliters: z.number().optional(),
      says: z.string(),
    })
    .optional(),
  /** The site of the cannula, once the infusion has started. */
  site: z
    .object({
      /** Running time after which it is looked at; absent: no protocol. */
      afterMinutes: z.number().optional(),
      /** Found well since it last began to run. */
      well: z.boolean(),
      /** The newest look. */
      last: z.object({ at: moment, by: z.string(), says: z.string() }).optional(),
      /** It was stopped because of the site, and nobody has looked since. */
      lookFirst: z.boolean(),
    })
    .optional(),
  /** It goes on only through another cannula: what was seen, and the one that is not used any more. */
  resite: z.object({ says: z.string(), oldSite: z.string(), oldIsIn: z.boolean() }).optional(),
  /** Tries at a vein today that failed, and who is not to try again. */
  failedTries: z.array(z.object({ entry: z.string(), says: z.string(), by: z.string() })),
  triedEnough: z.array(z.string()),
  /** Where they sit. */
  chair: z.number().int().optional(),
  /** Who of the same list sits where now, they themselves left out. */
  seated: z.array(z.object({ chair: z.number().int(), name: z.string() })),
  /** What was seen at the chair today. */
  reactions: z.array(z.object({ at: moment, by: z.string(), says: z.string() })),
  /** It stands still because of a reaction that nobody has written down yet. */
  reactionToWrite: z.boolean(),
  /** The unit lists its packs: they can be scanned, and who types says why. */
  packsListed: z.boolean(),
  /** What a bag holds. */
  bagMilliliters: z.number(),
  /** In how many minutes it runs as prepared; absent until a second check agrees. */
  checkedMinutes: z.number().optional(),
  leastMinutes: z.number(),
  /** Between second check and start; after it identifiers and product are asked again. Absent: no protocol. */
  interruptionMinutes: z.number().optional(),
  observeMinutes: z.number(),
  letterReady: z.boolean(),
  letterSent: z.boolean(),
  nextDue: date.optional(),
  /** Once a dose was given, for the door: its batch, from when the unit rings for the next, and the days for its bloods. */
  seeOff: z
    .object({
      batch: z.string().optional(),
      ringFrom: date.optional(),
      bloods: z.object({ from: date, until: date }).optional(),
    })
    .optional(),
  cautions: z.array(z.string()),
  serverTime: moment,
});
export type VisitView = z.infer<typeof visitView>;
