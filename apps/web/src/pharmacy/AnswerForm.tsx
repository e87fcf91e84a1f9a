import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** The prescriber's answer; the prescription then waits for the pharmacist again. */
export function AnswerForm({ patient, check, close }: { patient: string; check: string; close: () => void }) {
  const today = useServiceToday();
  const attempt = useAct(close);
  const [answer, setAnswer] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        void attempt.send({
          name: 'record',
          patient,
          line: { kind: 'pharmacy-answer', body: { check, answer: answer.trim() }, effectiveAt: today },
        })
      }
    >
      <Outcome of={attempt} />
      <TextField
        label="What you answer"
        at="answer"
        help="If the prescription is wrong, correct it instead."
        lines="several"
        first
        value={answer}
        onChange={setAnswer}
      />
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        Answer
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
