/** Entries as they stand in a register from before a rule of ours looked at them: into the store, past every check. */
import { randomUUID } from 'node:crypto';
import type { PlainDate } from '@twelvemonth/clinical';
import type { OwnServer } from './own-server.ts';

export async function enteredBefore(
  { atHand }: OwnServer,
  patient: string,
  bodies: Readonly<Record<string, object>>,
  on: string,
): Promise<void> {
  const outcome = await atHand.store.act({
    id: randomUUID(),
    content: patient,
    by: { staff: 'somebody', role: 'clerk' },
    at: atHand.clock.now(),
    subjects: [`patient/${patient}`],
    decide: () => ({
      drafts: Object.entries(bodies).map(([kind, body]) => ({
        subject: `patient/${patient}` as const,
        kind,
        shape: 1,
        body,
        effectiveAt: on as PlainDate,
        zone: 'Europe/London',
      })),
    }),
  });
  if (outcome.outcome !== 'recorded') throw new Error(`${patient}: ${outcome.outcome}`);
}
