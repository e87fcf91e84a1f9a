import { useState } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import type { Step } from '../use-step.ts';

export function PauseForm({ step }: { step: Step }) {
  const [reason, setReason] = useState('');
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        step.act({ name: 'pause infusion', reason });
      }}
    >
      <TextField label="Why it is paused" at="reason" value={reason} onChange={setReason} first />
      <Button type="submit" tone="act" size="big" busy={step.attempt.busy}>
        It stands still now
      </Button>
    </form>
  );
}
