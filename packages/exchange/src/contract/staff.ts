/** Who works here: accounts that an administrator makes, and those for one day. */
import { competences } from '@twelvemonth/clinical';
import { z } from 'zod';
import { date } from './basics.ts';

export const staffView = z.object({
  staff: z.string(),
  name: z.string(),
  username: z.string(),
  roles: z.array(z.string()),
  active: z.boolean(),
  /** An account that ends by itself. */
  forToday: z.object({ lastDay: date, registration: z.string() }).optional(),
});
export type StaffView = z.infer<typeof staffView>;
export const newStaffBody = z.object({
  name: z.string().trim().min(1),
  username: z.string().regex(/^[a-z0-9.-]{3,40}$/, 'three to forty of a-z, 0-9, dot, hyphen'),
  password: z.string().min(12, 'at least 12 characters'),
  roles: z.array(z.string()).min(1),
});
/** A nurse from elsewhere, for today: the account ends with the day. Two people vouch for who it is and what they have shown. */
export const staffForTodayBody = newStaffBody.pick({ name: true, username: true, password: true }).extend({
  unit: z.string(),
  registration: z.string().trim().min(4, 'at least 4 signs').max(20, 'at most 20 signs'),
  shown: z.array(z.enum(competences)).min(1, 'say what they have shown'),
  /** Of whoever is signed in: at a screen that others use, being signed in proves nothing. */
  ownPassword: z.string().min(1, 'type your own password'),
  witnessUsername: z.string().min(1),
  witnessPassword: z.string().min(1),
});
/** Disabling a person ends their sessions at once; nothing they signed changes. */
export const changeStaffBody = z.object({
  staff: z.string(),
  roles: z.array(z.string()).min(1).optional(),
  active: z.boolean().optional(),
  password: z.string().min(12, 'at least 12 characters').optional(),
});
export const firstAdministratorBody = newStaffBody.pick({ name: true, username: true, password: true }).extend({
  service: z.string().trim().min(1),
  /** The starter sheet that is offered first when a protocol is begun. */
  starter: z.string().optional(),
});
