import { useState } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import type { StepProps } from '../StepBody.tsx';
import { useStep } from '../use-step.ts';

/** The two readings differ: nothing is started. Look at the pack together; withdraw what was misread, then read again. */
export function ChecksDiffer({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [reason, setReason] = useState('');
  const { preparation, check } = data;
  if (preparation === undefined || check === undefined) return null;
  return (
    <FieldTroubles value={step.attempt.refusals}>
      <h2>The readings differ</h2>
      <Note tone="stop" speaks="at once">
        <p>
          <strong>Do not start.</strong> {preparation.by} and {check.by} read differently: {check.differs.join(', ')}.
        </p>
        <p>
          Read the pack again together, away from the chair. Then withdraw the preparation with the reason; it is
          prepared and checked anew.
        </p>
      </Note>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          step.act({ name: 'withdraw', entry: preparation.entry, reason });
        }}
      >
        <TextField label="What was misread" at="reason" value={reason} onChange={setReason} />
        <Outcome of={step.attempt} />
        <Button type="submit" size="big" busy={step.attempt.busy}>
          Withdraw the preparation
        </Button>
      </form>
    </FieldTroubles>
  );
}
