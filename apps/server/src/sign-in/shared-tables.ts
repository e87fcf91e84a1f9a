/** Tables for signing at a shared screen, beside the sign-in library's own and written through its connection. */
import type { BetterAuthPlugin } from 'better-auth';

const text = { type: 'string', required: true } as const;

export const sharedTables = {
  id: 'shared-screens',
  schema: {
    /** A screen that stands in a unit. Its cookie is kept as a hash only. */
    sharedDevice: {
      modelName: 'sign_in_device',
      fields: {
        name: text,
        unit: text,
        tokenHash: { ...text, index: true },
        enrolledBy: text,
        enrolledAt: text,
        active: { type: 'boolean', required: true },
      },
    },
    /** A person's PIN or badge, as a hash; `wrong` counts wrong tries since the last right one. */
    quickSecret: {
      modelName: 'sign_in_quick_secret',
      fields: {
        staff: { ...text, index: true },
        sort: text,
        hash: { ...text, index: true },
        wrong: { type: 'number', required: true },
      },
    },
    /** Every try to sign at a shared screen: when, where, whose, for what, and what came of it. */
    sharedSignature: {
      modelName: 'sign_in_signature',
      fields: { at: text, device: text, staff: text, act: text, how: text, outcome: text },
    },
  },
} satisfies BetterAuthPlugin;
