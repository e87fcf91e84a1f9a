/** Every try to sign at a shared screen, written down: an audit trail nobody who signs can change from a screen. */
import { z } from 'zod';
import type { SignInTables } from './accounts.ts';

const row = z.object({
  at: z.string(),
  device: z.string(),
  staff: z.string(),
  act: z.string(),
  how: z.string(),
  outcome: z.string(),
});
type SharedSignature = z.infer<typeof row>;
export type SignatureLog = ReturnType<typeof signatureLog>;

export const signatureLog = (tables: SignInTables, now: () => string) => ({
  note: async (tried: Omit<SharedSignature, 'at'>): Promise<void> => {
    await tables.create({ model: 'sharedSignature', data: { at: now(), ...tried } });
  },
  newest: async (limit: number): Promise<SharedSignature[]> =>
    z.array(row).parse(
      await tables.findMany({
        model: 'sharedSignature',
        limit,
        sortBy: { field: 'at', direction: 'desc' },
      }),
    ),
});
