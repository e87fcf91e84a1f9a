import type { ActBody, SupportsView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { reckonedServerTime } from '../server/connection.ts';
import { type Attempt, useAct } from '../server/use-act.ts';
import { localMoment } from '../words/local-moment.ts';

/** Writes one line about a booking of this person, as of now. */
export function useSupport(data: SupportsView, done: () => void): { attempt: Attempt; write: (body: unknown) => void } {
  const attempt = useAct(done, { [`patient/${data.patient}`]: data.seq });
  const { unit } = useUnit();
  return {
    attempt,
    write: (body) =>
      void attempt.send({
        name: 'record',
        patient: data.patient,
        line: {
          kind: 'support-booking',
          body,
          effectiveAt: localMoment(reckonedServerTime(), unit?.zone ?? 'Europe/London'),
        },
      } satisfies ActBody['act']),
  };
}
