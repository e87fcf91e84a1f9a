import { useState } from 'react';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { IncidentField } from './IncidentField.tsx';

/** No clock survived: a person confirms the running time by another one, and says which. */
export function UnmeasuredFinish({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [milliliters, setMilliliters] = useState<number>();
  const [timedBy, setTimedBy] = useState('');
  const [reason, setReason] = useState('');
  const [incident, setIncident] = useState('');
  const tooFast = step.attempt.refusals.some(({ name }) => name === 'ran-too-fast');
  return (
    <StepForm
      title="The running time cannot be measured"
      step={step}
      act="Finished"
      missing={milliliters === undefined || timedBy.trim() === '' ? 'Volume, and who timed it' : undefined}
      send={() =>
        step.act({
          name: 'finish infusion',
          milliliters,
          timedBy,
          ...(reason.trim() === '' ? {} : { stoppedBecause: reason }),
          ...(incident.trim() === '' ? {} : { incident }),
        })
      }
    >
      <Note tone="caution">{data.infusion?.says}</Note>
      <NumberField label="Given" unit="mL" at="milliliters" value={milliliters} onChange={setMilliliters} />
      <TextField label="Who timed it, by which clock, how long" at="timedBy" value={timedBy} onChange={setTimedBy} />
      <TextField label="If it was stopped early: why" at="stoppedBecause" value={reason} onChange={setReason} />
      <IncidentField tooFast={tooFast} onlyIf="the times are right" value={incident} onChange={setIncident} />
    </StepForm>
  );
}
