/** The service itself: status, who is signed in, settings, protocol, acts, import. */
import { actSchema, planningSettings, protocolSchema } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date, moment, refusal } from './basics.ts';
import { staffView } from './staff.ts';

export const unitView = z.object({
  unit: z.string(),
  name: z.string(),
  zone: z.string(),
  chairs: z.number().int(),
  opensAt: z.string(),
  closesAt: z.string(),
  sessionWeekdays: z.array(z.number().int()),
  bloodWeekdays: z.array(z.number().int()),
  closedDays: z.array(date),
  minutesBetweenArrivals: z.number().int(),
  telephone: z.string(),
  emergencyNumber: z.string().optional(),
  demo: z.boolean(),
  planning: planningSettings.optional(),
  adviceLine: z.object({ weekdays: z.array(z.number().int()), fromTime: z.string(), untilTime: z.string() }).optional(),
  stock: z.object({ leadDays: z.number().int(), reservePacks: z.number().int() }).optional(),
  reminders: z
    .object({
      daysBefore: z.array(z.number().int()).readonly(),
      fromTime: z.string(),
      untilTime: z.string(),
      byItself: z.boolean().optional(),
    })
    .optional(),
  letters: z
    .object({ postalAddress: z.string(), language: z.enum(['en-GB', 'en-US']), answerWithinDays: z.number().int() })
    .optional(),
  protocolVersion: z.string().optional(),
  protocolReviewBy: date.optional(),
  /** How many parts of the protocol in force an upgrade has filled in and nobody has signed; absent: none. */
  protocolUnsigned: z.number().int().optional(),
});
export type UnitView = z.infer<typeof unitView>;

export const statusView = z.object({
  product: z.literal('Twelvemonth'),
  version: z.string(),
  service: z.string(),
  demo: z.boolean(),
  today: date,
  serverTime: moment,
  units: z.array(unitView),
  commit: z.number().int(),
  readOnly: z.string().optional(),
  /** The certificate this server shows ends soon, or has ended: in words. */
  certificateEnds: z.string().optional(),
  /** No administrator yet: the first visitor on this machine sets the service up. */
  needsFirstAdministrator: z.boolean(),
  demoPeople: z.array(z.object({ username: z.string(), name: z.string(), roles: z.array(z.string()) })).optional(),
  demoPassword: z.string().optional(),
});
export type StatusView = z.infer<typeof statusView>;

export const meView = z.object({
  staff: z.string(),
  name: z.string(),
  username: z.string(),
  roles: z.array(z.string()),
  unit: z.string().optional(),
  may: z.array(z.string()),
});
export type MeView = z.infer<typeof meView>;
export const signInBody = z.object({ username: z.string().min(1), password: z.string().min(1) });

/** Quick proofs: they count on an enrolled screen in an open session, for steps of a visit, and nowhere else. */
const pinField = z.string().regex(/^\d{6,10}$/, 'six to ten digits');
const badgeField = z.string().trim().min(8, 'at least 8 signs').max(80, 'at most 80 signs');
const pinProof = z.object({ staff: z.string(), pin: pinField });
const badgeProof = z.object({ badge: badgeField });

export const enrolDeviceBody = z.object({ name: z.string().trim().min(1).max(60), unit: z.string() });
export const enrolledDevice = z.object({ name: z.string() });
export const withdrawDeviceBody = z.object({ device: z.string() });
/** Which quick proofs somebody has set. */
export const mySignatureView = z.object({ pin: z.boolean(), badge: z.boolean() });
export const setMySignatureBody = z.object({
  password: z.string().min(1),
  pin: pinField.optional(),
  badge: badgeField.optional(),
});
/** Who may sign quickly for this person here; no device: nobody, sign with name and password. */
export const signingView = z.object({
  device: z.string().optional(),
  people: z.array(z.object({ staff: z.string(), name: z.string() })),
});

/** An act as it is sent. `id` is made by the sender: sending the same act again is safe. */
export const actBody = z.object({
  id: z.string().regex(/^[0-9a-f-]{36}$/i, 'a UUID made by the sender'),
  act: actSchema,
  /** The role the signed-in person acts in; needed only if they hold several that may. */
  role: z.string().optional(),
  /** Last seq seen of each ledger on the screen the act was made from. */
  seen: z.record(z.string(), z.number().int()).optional(),
  /** Written while the network was away: the sender's own clock then, believed for nothing. */
  deviceAt: z.iso.datetime({ precision: 3 }).optional(),
  /** The device it is written at, by its own word; `takesOver`: it goes on with a dose that another one holds. */
  device: z
    .object({
      id: z.string().regex(/^[0-9a-f-]{36}$/i, 'a UUID made by the device'),
      name: z.string().min(1).max(60),
      takesOver: z.literal(true).optional(),
    })
    .optional(),
  /** Another person signs this one act at a shared screen. */
  signedBy: z.union([signInBody, pinProof, badgeProof]).optional(),
});
export type ActBody = z.infer<typeof actBody>;
export const actAnswer = z.object({
  outcome: z.enum(['recorded', 'already-recorded']),
  commit: z.number().int(),
  entries: z.array(z.object({ subject: z.string(), id: z.string(), seq: z.number().int(), kind: z.string() })),
  /** What the person should read: "recorded; the next dose is due on ..." */
  says: z.string(),
});
export type ActAnswer = z.infer<typeof actAnswer>;
export const ledgerMovedOn = z.object({
  missed: z.array(z.object({ id: z.string(), kind: z.string(), text: z.string(), by: z.string(), recordedAt: moment })),
});

const certificateView = z.object({
  /** Host names and addresses it is for, with commas. */
  names: z.string(),
  until: moment,
  warns: z.boolean(),
  says: z.string(),
});
export type CertificateView = z.infer<typeof certificateView>;

export const settingsView = z.object({
  /** Where the server speaks TLS itself. */
  certificate: certificateView.optional(),
  service: z.string(),
  demo: z.boolean(),
  units: z.array(unitView),
  staff: z.array(staffView),
  /** Shared screens, and the newest tries to sign at one that were refused. */
  devices: z.array(
    z.object({
      device: z.string(),
      name: z.string(),
      unit: z.string(),
      by: z.string(),
      at: moment,
      active: z.boolean(),
    }),
  ),
  signaturesRefused: z.array(
    z.object({ at: moment, device: z.string(), staff: z.string(), how: z.string(), outcome: z.string() }),
  ),
  setUp: z.array(z.object({ what: z.string(), done: z.boolean(), how: z.string() })),
});
export type SettingsView = z.infer<typeof settingsView>;

export const protocolView = z.object({
  unit: z.string(),
  unitName: z.string(),
  versions: z.array(
    z.object({
      version: z.string(),
      title: z.string(),
      state: z.enum(['written', 'signed by one', 'adopted, not yet in force', 'in force', 'replaced']),
      inForceFrom: date.optional(),
      reviewBy: date,
      contentHash: z.string(),
      signatures: z.array(z.object({ as: z.string(), by: z.string(), at: moment, inForceFrom: date })),
      empty: z.array(
        z.object({ key: z.string(), means: z.string(), unit: z.string(), suggestion: z.string().optional() }),
      ),
      numbers: z.array(
        z.object({
          key: z.string(),
          means: z.string(),
          unit: z.string(),
          value: z.string().optional(),
          suggestion: z.string().optional(),
          source: z.string(),
          status: z.string(),
        }),
      ),
      regimens: z.array(
        z.object({
          id: z.string(),
          title: z.string(),
          intervalMonths: z.number(),
          plannedDoses: z.number(),
          source: z.string(),
        }),
      ),
      dayQuestions: z.array(
        z.object({
          id: z.string(),
          asks: z.string(),
          holdsOn: z.string(),
          then: z.string(),
          staysUntilCleared: z.boolean(),
        }),
      ),
      policies: z.array(z.object({ what: z.string(), says: z.string() })),
      cautions: z.array(z.string()),
      /** The sheet itself: what a new version begins from. */
      sheet: protocolSchema,
      /** What an upgrade of the product has filled in: nobody has signed it. */
      added: z.array(z.object({ path: z.string(), says: z.string() })),
    }),
  ),
  /** Versions whose text this version of the product cannot read: they decide nothing. */
  unreadable: z.array(z.object({ version: z.string(), adopted: z.boolean(), says: z.string() })),
  /** Starter sheets that can be taken as a beginning. */
  starters: z.array(
    z.object({
      version: z.string(),
      title: z.string(),
      /** Chosen when the service was set up: offered first. */
      chosen: z.boolean(),
    }),
  ),
  /** Of the last twelve months; absent for who may not read about people. */
  exceptions: z
    .object({
      from: date,
      until: date,
      doses: z.number().int(),
      rules: z.array(
        z.object({
          requirement: z.string(),
          written: z.number().int(),
          people: z.number().int(),
          doses: z.number().int(),
        }),
      ),
    })
    .optional(),
});
export type ProtocolView = z.infer<typeof protocolView>;
/** A version drafted from a starter or from another version, whole. */
export const protocolDraftBody = z.object({ from: z.string(), sheet: z.unknown() });

/** Who flips: a version that was written, or a draft that was not. The answer comes in parts; the next begins `after`. */
export const flipsBody = z.object({
  version: z.string().optional(),
  sheet: z.unknown().optional(),
  after: z.number().int().min(0).optional(),
});
/** People whose verdict on the given date, or whose window, would be another if the version were in force. */
export const flipsAnswer = z.object({
  /** How many of how many have been compared, with this part. */
  compared: z.number().int(),
  of: z.number().int(),
  /** Where the next part begins; absent: done. */
  next: z.number().int().optional(),
  flips: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      on: date,
      from: z.string(),
      to: z.string(),
      verdictChanges: z.boolean(),
      /** "8 Jan - 2 Mar 2027"; absent where it stays as it is. */
      windowFrom: z.string().optional(),
      windowTo: z.string().optional(),
    }),
  ),
});
export type FlipsAnswer = z.infer<typeof flipsAnswer>;

/** The past months under another sheet, in parts like `flips`: sums and the decisions of this part that come out otherwise. */
export const whatIfBody = z.object({
  version: z.string().optional(),
  sheet: z.unknown().optional(),
  months: z.number().int().min(1).max(120),
  after: z.number().int().min(0).optional(),
});
export const whatIfAnswer = z.object({
  looked: z.number().int(),
  of: z.number().int(),
  next: z.number().int().optional(),
  decisions: z.number().int(),
  putOff: z.number().int(),
  ready: z.number().int(),
  bloodsAgain: z.number().int(),
  withoutDate: z.number().int(),
  delayDays: z.number().int(),
  longestDelayDays: z.number().int(),
});
export type WhatIfAnswer = z.infer<typeof whatIfAnswer>;

/** Signed decisions of the unit's service decided again, in parts. */
export const replayBody = z.object({ after: z.number().int().min(0).optional() });
export const replayAnswer = z.object({
  looked: z.number().int(),
  of: z.number().int(),
  next: z.number().int().optional(),
  ruleSet: z.string(),
  decisions: z.number().int(),
  differences: z.array(
    z.object({
      patient: z.string(),
      name: z.string(),
      on: date,
      signed: z.string(),
      now: z.string(),
      because: z.string(),
    }),
  ),
});
export type ReplayAnswer = z.infer<typeof replayAnswer>;

export const refusalAnswer = z.object({ refusals: z.array(refusal) });

/** Server-sent events: `commit` with the subjects that moved on; clients fetch again what they show. */
export const commitEvent = z.object({
  commit: z.number().int(),
  subjects: z.array(z.object({ subject: z.string(), seq: z.number().int() })),
});
export type CommitEvent = z.infer<typeof commitEvent>;
