import { useState } from 'react';
import { NumberField } from '../../fields/NumberField.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { Order } from './Order.tsx';
import { Running } from './Running.tsx';

export function InfusionStep({ data, done }: StepProps) {
  return data.infusion === undefined ? <Start data={data} done={done} /> : <Running data={data} done={done} />;
}

function Start({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [minutes, setMinutes] = useState<number | undefined>(data.rates.minutes);
  return (
    <StepForm
      title="Start the infusion"
      help="At the chair: name and birth date once more, then connect. Press when it starts to run."
      step={step}
      act={step.time === undefined ? 'It runs now' : `It ran from ${step.time}`}
      missing={minutes === undefined ? 'How many minutes?' : undefined}
      send={() => step.act({ name: 'start infusion', plannedMinutes: minutes })}
    >
      <Order data={data} />
      <NumberField
        label="To run in"
        unit="minutes"
        help={`As prepared and checked. ${data.rates.milliliters} mL: ${data.rates.millilitersPerHour}, or ${data.rates.dropsPerMinute20}, for ${data.rates.minutes} minutes.`}
        at="plannedMinutes"
        value={minutes}
        onChange={setMinutes}
      />
    </StepForm>
  );
}
