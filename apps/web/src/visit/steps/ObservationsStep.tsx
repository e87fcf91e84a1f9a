import { useState } from 'react';
import { QuantityField } from '../../fields/QuantityField.tsx';
import { nothingTyped } from '../../fields/typed-quantity.ts';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { ObservationFields, useObservations } from './ObservationFields.tsx';

export function ObservationsStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const observations = useObservations();
  const [weight, setWeight] = useState(nothingTyped);
  const send = (): void => {
    const weighed = {
      comparator: weight.comparator,
      value: weight.value,
      ...(weight.unit === undefined ? {} : { unit: weight.unit }),
    };
    step.record(
      { kind: 'observations', body: { ...observations.observed, when: 'before' } },
      ...(weight.value.trim() === ''
        ? []
        : [{ kind: 'weight' as const, body: { quantity: weighed, method: 'measured' } }]),
    );
  };
  return (
    <StepForm
      title="Observations"
      help="As measured. Leave out what was not measured."
      step={step}
      act="Record"
      send={send}
      missing={observations.anyFigure ? undefined : 'Enter a value first'}
    >
      {data.putOffValues.length > 0 && (
        <Note tone="caution">The protocol puts off at: {data.putOffValues.join('; ')}.</Note>
      )}
      <ObservationFields
        of={observations}
        whom={data.earlyWarningFor}
        pulseHelp="Feel it: left blank it is not a no, and the dose waits."
        decides="It decides nothing about the dose: the protocol’s put-off values do."
      />
      <QuantityField
        label="Weight today"
        help="Shoes off. The decision to go wants a weight of the day."
        at="quantity"
        units={['kg', 'lb']}
        value={weight}
        onChange={setWeight}
      />
    </StepForm>
  );
}
