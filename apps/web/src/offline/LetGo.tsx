import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { reckonedServerTime } from '../server/connection.ts';
import { useAct } from '../server/use-act.ts';
import { localMoment } from '../words/local-moment.ts';
import { actInWords } from './act-in-words.ts';
import { sendWaiting } from './send-waiting.ts';
import { type WaitingAct, waitNoMore } from './waiting.ts';

/** It is not taken in: that it was written, and why it does not stand, is an entry of the person. */
export function LetGo({ act, patient }: { act: WaitingAct; patient: string }) {
  const { unit } = useUnit();
  const [because, setBecause] = useState('');
  const letGo = useAct(() => void waitNoMore(act.id).then(sendWaiting));
  return (
    <>
      <TextField
        label="Or let it go: why it does not stand"
        help="It is written into the notes as not taken in, with this reason."
        at="line.body.because"
        value={because}
        onChange={setBecause}
      />
      <Outcome of={letGo} />
      <Button
        size="big"
        busy={letGo.busy}
        disabled={because.trim() === ''}
        onClick={() =>
          void letGo.send({
            name: 'record',
            patient,
            line: {
              kind: 'not-taken-in',
              body: { what: actInWords(act.act), wroteAt: act.wroteAt, because: because.trim() },
              effectiveAt: localMoment(reckonedServerTime(), unit?.zone ?? 'Europe/London'),
            },
          })
        }
      >
        Let mine go
      </Button>
    </>
  );
}
