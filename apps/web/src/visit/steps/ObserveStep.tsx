import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { timeOfDay } from '../../words/dates.ts';
import type { StepProps } from '../StepBody.tsx';
import { Note } from '../../paper/Note.tsx';
import { MeasuredSoFar } from '../MeasuredSoFar.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { ObservationFields, useObservations } from './ObservationFields.tsx';

export function ObserveStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [minutes, setMinutes] = useState<number>();
  const [well, setWell] = useState<'yes' | 'no'>();
  const [note, setNote] = useState('');
  const observations = useObservations();
  const isObserved = Object.keys(observations.observed).length > 0;
  const finished = data.infusion?.finishedAt;
  return (
    <StepForm
      title="Watch afterwards"
      help={`The protocol watches ${data.observeMinutes} minutes${data.firstTimer ? ' after a first dose' : ''}${finished === undefined ? '' : `; finished at ${timeOfDay(finished, step.zone)}`}.`}
      step={step}
      act="Record"
      missing={minutes === undefined || well === undefined ? 'Minutes, and how they are' : undefined}
      send={() =>
        step.record(
          {
            kind: 'observed',
            body: { minutes, well: well === 'yes', ...(note.trim() === '' ? {} : { note: note.trim() }) },
          },
          ...(isObserved ? [{ kind: 'observations' as const, body: { ...observations.observed, when: 'after' } }] : []),
        )
      }
    >
      <NumberField label="Watched for" unit="minutes" at="minutes" value={minutes} onChange={setMinutes} />
      <ChoiceField
        label="Well?"
        at="well"
        size="big"
        value={well}
        onChange={setWell}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <TextField label="What was seen" at="note" value={note} onChange={setNote} />
      {well === 'no' && <p>Write the reaction too: below.</p>}
      <h3>Observations after the dose</h3>
      <p className="quiet">As measured. Leave out what was not measured; none is written where nothing is entered.</p>
      <MeasuredSoFar data={data} />
      <ObservationFields
        of={observations}
        whom={data.earlyWarningFor}
        pulseHelp="Feel it. Left blank it is not a no."
        decides="It does not say that they can go home: how they are does."
      />
      {observations.irregular === 'yes' && (
        <Note tone="caution">
          A pulse newly irregular after the dose: tell a doctor before they go, and write the reaction too, below.
        </Note>
      )}
    </StepForm>
  );
}
