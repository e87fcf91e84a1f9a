/** Who looked at whose notes. A table of its own, written through the sign-in library's connection; never shown to those who look. */
import type { StaffId } from '@twelvemonth/clinical';
import type { BetterAuthPlugin } from 'better-auth';
import { z } from 'zod';
import type { Accounts } from './accounts.ts';

export const lookTable = {
  id: 'looks',
  schema: {
    look: {
      modelName: 'sign_in_look',
      fields: {
        at: { type: 'string', required: true },
        staff: { type: 'string', required: true },
        patient: { type: 'string', required: true, index: true },
        what: { type: 'string', required: true },
      },
    },
  },
} satisfies BetterAuthPlugin;

const look = z.object({ at: z.string(), staff: z.string(), patient: z.string(), what: z.string() });
export type Look = z.infer<typeof look>;

export type LookLog = {
  readonly looked: (staff: StaffId, patient: string, what: string) => Promise<void>;
  readonly of: (patient: string) => Promise<Look[]>;
};

/** A screen that stays open asks again and again: the same person at the same page counts once in this long. */
const sameLookMinutes = 10;

export function lookLog(accounts: Pick<Accounts, 'looks'>, now: () => string): LookLog {
  const recent = new Map<string, number>();
  return {
    looked: async (staff, patient, what) => {
      const at = now();
      const milliseconds = Date.parse(at);
      const key = `${staff} ${patient} ${what}`;
      const before = recent.get(key);
      if (before !== undefined && milliseconds - before < sameLookMinutes * 60_000) return;
      if (recent.size > 20_000) recent.clear();
      recent.set(key, milliseconds);
      try {
        await accounts.looks.create({ at, staff, patient, what });
      } catch (cause) {
        recent.delete(key);
        throw cause;
      }
    },
    of: async (patient) => z.array(look).parse(await accounts.looks.of(patient)),
  };
}
