import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Aftercare.module.css';

/** A registered person, not a timer, ends the asking, with a reason. */
export function StopAsking({ patient, dose, done }: { patient: string; dose: string; done: () => void }) {
  const today = useServiceToday();
  const [reason, setReason] = useState('');
  const attempt = useAct(done);
  const send = (): void =>
    void attempt.send({
      name: 'record',
      patient,
      line: { kind: 'aftercare', body: { outcome: 'not asked further', dose, reason }, effectiveAt: today },
    });
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['form']}>
      <h2>Stop asking</h2>
      <TextField
        label="Why nobody asks further"
        help="What was tried, by which routes, and how it is known that they are well."
        at="reason"
        lines="several"
        value={reason}
        onChange={setReason}
      />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write it down
      </Button>
    </ActForm>
  );
}
