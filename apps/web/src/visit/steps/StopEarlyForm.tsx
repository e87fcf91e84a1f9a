import { useState } from 'react';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import type { Step } from '../use-step.ts';

/** Stopped before the end: how much was given, and why. A prescriber says later whether it counts. */
export function StopEarlyForm({ step }: { step: Step }) {
  const [milliliters, setMilliliters] = useState<number>();
  const [reason, setReason] = useState('');
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (milliliters !== undefined) step.act({ name: 'finish infusion', milliliters, stoppedBecause: reason });
      }}
    >
      <NumberField label="Given" unit="mL" at="milliliters" value={milliliters} onChange={setMilliliters} />
      <TextField label="Why it was stopped" at="stoppedBecause" value={reason} onChange={setReason} />
      <Button type="submit" tone="act" size="big" busy={step.attempt.busy} disabled={milliliters === undefined}>
        Stopped for good
      </Button>
    </form>
  );
}
