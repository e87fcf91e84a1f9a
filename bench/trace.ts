/** A batch traced both ways in ten years of doses, and the stock list beside it. */
import { randomUUID } from 'node:crypto';
import { patientSubject } from '@twelvemonth/clinical';
import type { StockView, TraceView } from '@twelvemonth/exchange';
import { ownServer, setUp } from '../apps/server/test/support/own-server.ts';
import { type Bench, type Figure, bestMilliseconds } from './figure.ts';

const peopleTraced = 2_000;
const yearsTraced = 10;

/** 2,000 people with a dose a year for ten years, of one batch a quarter. */
export const bench: Bench = async (): Promise<readonly Figure[]> => {
  const server = await ownServer();
  try {
    await setUp(server);
    for (let index = 0; index < peopleTraced; index += 1) {
      const month = 1 + (index % 10);
      const doses = Array.from({ length: yearsTraced }, (_, year) => ({
        kind: 'dose',
        body: {
          medicine: 'zoledronic acid 5 mg',
          setting: 'elsewhere',
          batch: `PA-${1000 + year * 4 + Math.floor((month - 1) / 3)}`,
        },
        effectiveAt: `${2017 + year}-${String(month).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')}`,
      }));
      const born = `19${30 + (index % 30)}-0${1 + (index % 9)}-1${index % 10}`;
      const lines = [
        {
          kind: 'identity',
          body: { family: `Traced-${index}`, given: 'Olive', born, sex: 'female', number: `999 300 ${1000 + index}` },
          effectiveAt: '2016-12-01',
        },
        {
          kind: 'referral',
          body: { from: 'family doctor', reason: 'fracture', unit: 'thornbeck', tier: 'routine' },
          effectiveAt: '2016-12-01',
        },
        ...doses,
      ];
      const subject = patientSubject(`t${index}`);
      // Straight into the store: deciding 2,000 registrations one by one would be most of the time, and is not what is measured.
      await server.atHand.store.act({
        id: randomUUID(),
        content: `t${index}`,
        by: { staff: 'bench', role: 'clerk' },
        at: server.atHand.clock.now(),
        subjects: [subject],
        decide: () => ({ drafts: lines.map((line) => ({ ...line, subject, shape: 1, zone: 'Europe/London' })) }),
      });
    }
    const ask = async <Answer>(url: string): Promise<Answer> => server.read<Answer>(url);
    const trace = '/api/stock/trace?batch=PA-1020';
    const cold = performance.now();
    const { people: had } = await ask<TraceView>(trace);
    const first = performance.now() - cold;
    const warm = await bestMilliseconds(() => ask<TraceView>(trace));
    const person = await bestMilliseconds(() => ask('/api/people/t17/batches'));
    const stock = await bestMilliseconds(() => ask<StockView>('/api/stock?unit=thornbeck'));
    const beside = `${peopleTraced * yearsTraced} doses of ${yearsTraced} years; ${had.length} people had it`;
    return [
      {
        what: 'from a batch to its people, who was told with it',
        value: warm,
        unit: 'ms',
        beside: `goal: under 1000; ${beside}`,
      },
      { what: 'the same, the first time after everything was written', value: first, unit: 'ms' },
      { what: 'from a person to their batches', value: person, unit: 'ms', beside: 'goal: under 1000' },
      { what: 'the stock list with its coming weeks', value: stock, unit: 'ms' },
    ];
  } finally {
    await server.close();
  }
};
