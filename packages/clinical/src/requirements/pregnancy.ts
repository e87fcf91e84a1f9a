/** Pregnancy and breast-feeding are asked; age and sex alone answer nothing (docs/readiness.md R8). */
import { addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Path, type Requirement, always, judgement, readyPath } from './requirement.ts';

const thresholds = [{ key: 'pregnancyAnswerDays' }] as const;

const reads = ['pregnancy'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge({ pregnancy }: Read, protocol: Protocol): Judge {
  const validDays = protocol.number.pregnancyAnswerDays;
  const ask = (why: string): Path => ({ is: 'steps', needs: { ask: { what: 'pregnancy', validDays, why } } });
  if (pregnancy === undefined) {
    return always(
      judgement('cannot say', 'pregnancy never asked', () => ({
        says: 'Nobody has recorded an answer about pregnancy and breast-feeding.',
      })),
      ask('pregnancy was never asked'),
    );
  }
  const { answer, on, entry } = pregnancy;
  const label = 'pregnancy and breast-feeding';
  const inputs = [entry === undefined ? { label, text: answer, on } : { label, text: answer, on, entry }];
  if (answer === 'does not apply') {
    return always(
      judgement('does not apply', 'pregnancy does not apply', () => ({
        says: 'Does not apply, with its recorded reason.',
        inputs,
      })),
      readyPath,
    );
  }
  if (answer !== 'no') {
    return always(
      judgement('not ready', answer, () => ({ says: `Recorded as ${answer}: not this medicine.`, inputs })),
      {
        is: 'blocked',
        by: { what: `a prescriber: ${answer}`, who: 'prescriber', step: 'prescriber decides', settled: undefined },
      },
    );
  }
  const until = addDays(on, validDays);
  const ready = judgement('ready', 'not pregnant', () => ({
    says: `Answered "no" on ${shortDate(on)}; counts until ${shortDate(until)}.`,
    inputs,
    thresholds,
  }));
  const over = judgement('cannot say', `pregnancy last asked on ${shortDate(on)}`, () => ({
    says: `The answer counted until ${shortDate(until)}: ask again.`,
    inputs,
    thresholds,
  }));
  return {
    changes: [addDays(until, 1)],
    on: (day) => (day <= until ? ready : over),
    path: (day) => (day <= until ? readyPath : ask(`the answer of ${shortDate(on)} counts until ${shortDate(until)}`)),
  };
}

export const pregnancy: Requirement<(typeof reads)[number]> = {
  id: 'pregnancy',
  title: 'Pregnancy and breast-feeding',
  clearedBy: 'the answer to the question. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
