import { useState } from 'react';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { dripLabels } from '../../words/drip-labels.ts';
import type { Step } from '../use-step.ts';
import { IncidentField } from './IncidentField.tsx';

/** Stopped before the end: how much was given, and why. A prescriber says later whether it counts. */
export function StopEarlyForm({ step }: { step: Step }) {
  const [milliliters, setMilliliters] = useState<number>();
  const [reason, setReason] = useState('');
  const [incident, setIncident] = useState('');
  const tooFast = step.attempt.refusals.some(({ name }) => name === 'ran-too-fast');
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (milliliters === undefined) return;
        step.act({
          name: 'finish infusion',
          milliliters,
          stoppedBecause: reason,
          ...(incident.trim() === '' ? {} : { incident }),
        });
      }}
    >
      <NumberField
        label={dripLabels.milliliters}
        unit="mL"
        at="milliliters"
        value={milliliters}
        onChange={setMilliliters}
      />
      <TextField label={dripLabels.stoppedBecause} at="stoppedBecause" value={reason} onChange={setReason} />
      <IncidentField tooFast={tooFast} onlyIf="so much has run in this time" value={incident} onChange={setIncident} />
      <Button type="submit" tone="act" size="big" busy={step.attempt.busy} disabled={milliliters === undefined}>
        Stopped for good
      </Button>
    </form>
  );
}
