import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** A pharmacist has looked: the batch may be used again. */
export function ReleaseBatch({ batch, close }: { batch: string; close: () => void }) {
  const attempt = useAct(close);
  const [reason, setReason] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => void attempt.send({ name: 'release batch', body: { batch, reason } })}
    >
      <TextField label="What was found" at="reason" first value={reason} onChange={setReason} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Batch {batch} may be used again
      </Button>
    </ActForm>
  );
}
