import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { timeOfDay } from '../../words/dates.ts';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';

export function ObserveStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [minutes, setMinutes] = useState<number>();
  const [well, setWell] = useState<'yes' | 'no'>();
  const [note, setNote] = useState('');
  const finished = data.infusion?.finishedAt;
  return (
    <StepForm
      title="Watch afterwards"
      help={`The protocol watches ${data.observeMinutes} minutes${data.firstTimer ? ' after a first dose' : ''}${finished === undefined ? '' : `; finished at ${timeOfDay(finished, step.zone)}`}.`}
      step={step}
      act="Record"
      missing={minutes === undefined || well === undefined ? 'Minutes, and how they are' : undefined}
      send={() =>
        step.record({
          kind: 'observed',
          body: { minutes, well: well === 'yes', ...(note.trim() === '' ? {} : { note: note.trim() }) },
        })
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
    </StepForm>
  );
}
