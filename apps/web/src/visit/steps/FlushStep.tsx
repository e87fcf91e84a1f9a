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
  const [calcium, setCalcium] = useState<'no' | 'yes'>();
  return (
    <StepForm
      title="Saline flush"
      help="Through the cannula, before the medicine is connected."
      step={step}
      act="Record"
      missing={
        milliliters === undefined || freely === undefined || calcium === undefined
          ? 'Volume, how it ran, and what else is in the line'
          : undefined
      }
      send={() =>
        step.record({
          kind: 'flush',
          body: { milliliters, ranFreely: freely === 'yes', calciumInLine: calcium === 'yes', when: 'before' },
        })
      }
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
      <ChoiceField
        label="Anything with calcium in this line (Ringer’s, Hartmann’s)?"
        help="It falls out with the medicine: take it off, use another line, then flush again."
        at="line.body.calciumInLine"
        size="big"
        value={calcium}
        onChange={setCalcium}
        options={[{ value: 'no' }, { value: 'yes' }]}
      />
    </StepForm>
  );
}
