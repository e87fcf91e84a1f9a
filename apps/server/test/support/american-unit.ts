/** A unit that writes American English, under the US-like starter with every suggestion accepted as its own decision. */
import { type ProtocolSheet, emptyNumbers, starterUs } from '@twelvemonth/clinical';
import { type OwnServer, setUp, thornbeck } from './own-server.ts';

function decidedSheet(): ProtocolSheet {
  const numbers = { ...starterUs.numbers };
  for (const { key, suggestion } of emptyNumbers(starterUs))
    numbers[key] = { ...numbers[key], value: suggestion ?? null, status: 'local decision' };
  return { ...starterUs, numbers };
}

export async function americanUnit(server: OwnServer): Promise<void> {
  await setUp(server, '2026-11-25', { ...decidedSheet(), version: 'thornbeck-1' });
  await server.done('lead', {
    name: 'set unit',
    unit: 'thornbeck',
    body: {
      ...thornbeck,
      name: 'Thornbeck Infusion Center',
      zone: 'America/New_York',
      telephone: '555 0100',
      letters: { postalAddress: '4 Weir Lane, Thornbeck', language: 'en-US', answerWithinDays: 14 },
    },
  });
}

/** What a first dose asks for beside bloods and weight. The US product text wants the mouth looked at (highlights). */
export async function workedUp(server: OwnServer, patient: string, day = '2026-11-25'): Promise<void> {
  const lines = [
    { kind: 'allergy', body: { answer: 'none known' } },
    { kind: 'pregnancy', body: { answer: 'does not apply', reason: 'past the menopause since 1993' } },
    { kind: 'dental', body: { answer: 'nothing pending', checkedOn: '2026-09-03' } },
    { kind: 'secondary-causes', body: { answer: 'none found' } },
    { kind: 'consent', body: { decision: 'given', how: 'spoken' } },
  ].map((line) => ({ ...line, effectiveAt: day }));
  await server.done('nurse', { name: 'record together', patient, lines });
  await server.done('prescriber', {
    name: 'record',
    patient,
    line: {
      kind: 'prescription',
      body: { regimen: 'zoledronic-acid-yearly', validFrom: day, validUntil: '2027-10-31' },
      effectiveAt: day,
    },
  });
}
