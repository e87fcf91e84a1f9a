/** Recording one step of a visit: the moment is now on the server's clock unless another time is given. */
import type { KindName } from '@twelvemonth/clinical';
import type { ActBody, VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useUnit } from '../frame/unit.ts';
import { type Signature, useAct } from '../server/use-act.ts';
import { atTime, localMoment } from '../words/local-moment.ts';
import { readTypedTime } from '../words/typed-time.ts';
import { useFromPaper } from './from-paper.ts';
import { useServerNow } from './server-now.ts';

const wrongTime = (says: string) => ({
  name: 'field-wrong',
  says,
  field: 'effectiveAt',
  remedy: 'hours and minutes, as written there',
});

export function useStep(data: VisitView, done: (says: string) => void) {
  const { unit } = useUnit();
  const now = useServerNow(data.serverTime);
  const [time, setTime] = useState<string>();
  const zone = unit?.zone ?? 'Europe/London';
  const paper = useFromPaper();
  const attempt = useAct(
    (answer) => done(answer.says),
    { [`patient/${data.patient}`]: data.seq },
    paper === undefined ? { patient: data.patient, name: data.name, zone } : undefined,
  );
  const read = time === undefined ? undefined : readTypedTime(time);
  const moment = (): string =>
    read === undefined ? localMoment(now(), zone) : atTime(localMoment(Date.parse(`${data.on}T12:00:00Z`), zone), read);
  const [timeAsked, setTimeAsked] = useState(false);
  /** What stands on paper happened at the time that stands there, never now; what is no time is never taken for now either. */
  const timeWrong =
    time === undefined
      ? paper === undefined
        ? undefined
        : 'the time on the sheet is missing'
      : read === undefined
        ? `"${time}" is not a time of the day`
        : undefined;
  const lacksTime = (): boolean => {
    setTimeAsked(timeWrong !== undefined);
    return timeWrong !== undefined;
  };
  return {
    attempt: timeAsked && timeWrong !== undefined ? { ...attempt, refusals: [wrongTime(timeWrong)] } : attempt,
    now,
    /** Another time than now, as HH:MM today; undefined: now. */
    time,
    setTime,
    zone: unit?.zone,
    act: (act: object, signedBy?: Signature) => {
      if (lacksTime()) return;
      void attempt.send(
        {
          patient: data.patient,
          ...act,
          // Typed in later: when it happened goes with it, and the server keeps when it was written.
          ...(read === undefined ? {} : { happenedAt: moment() }),
        } as ActBody['act'],
        signedBy === undefined ? {} : { signedBy },
      );
    },
    record: (...lines: readonly { readonly kind: KindName; readonly body: object }[]) => {
      if (lacksTime()) return;
      const [first] = lines;
      const effectiveAt = moment();
      const act =
        lines.length === 1 && first !== undefined
          ? { name: 'record', patient: data.patient, line: { ...first, effectiveAt } }
          : { name: 'record together', patient: data.patient, lines: lines.map((line) => ({ ...line, effectiveAt })) };
      void attempt.send(act as ActBody['act']);
    },
  };
}
export type Step = ReturnType<typeof useStep>;
