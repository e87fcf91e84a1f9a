import type { BatchStopView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** A pharmacist has looked: this stop is lifted. Another that stands goes on holding the batch. */
export function ReleaseBatch({
  batch,
  stop,
  others,
  close,
}: {
  batch: string;
  stop: BatchStopView;
  /** Stops that stay. */
  others: number;
  close: () => void;
}) {
  const attempt = useAct(close);
  const [reason, setReason] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => void attempt.send({ name: 'release batch', body: { batch, reason, stop: stop.entry } })}
    >
      <TextField label="What was found" at="reason" first value={reason} onChange={setReason} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        {others === 0 ? `Batch ${batch} may be used again` : `This ${stop.why} is lifted; the batch stays stopped`}
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
