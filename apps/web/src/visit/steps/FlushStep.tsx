import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';

export function FlushStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [milliliters, setMilliliters] = useState<number>();
  const [freely, setFreely] = useState<'yes' | 'no'>();
  return (
    <StepForm
      title="Saline flush"
      help="Through the cannula, before the medicine is connected. Nothing with calcium runs through this line."
      step={step}
      act="Record"
      missing={milliliters === undefined || freely === undefined ? 'Volume, and how it ran' : undefined}
      send={() => step.record({ kind: 'flush', body: { milliliters, ranFreely: freely === 'yes', when: 'before' } })}
    >
      <NumberField label="Saline" unit="mL" at="milliliters" value={milliliters} onChange={setMilliliters} />
      <ChoiceField
        label="Ran freely, no swelling, no pain?"
        at="ranFreely"
        size="big"
        value={freely}
        onChange={setFreely}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
    </StepForm>
  );
}
