import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { ExpiryField } from './ExpiryField.tsx';
import { Order } from './Order.tsx';
import { type Identifier, identifierOptions } from './identifiers.ts';

export const products = [
  { value: 'zoledronic acid 5 mg in 100 mL' },
  { value: 'zoledronic acid 4 mg' },
  { value: 'another product' },
] as const;
type Product = (typeof products)[number]['value'];

/** The preparer reads the pack, alone. What is read here is not shown to the checker before they have read it themselves. */
export function PreparationStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [product, setProduct] = useState<Product>();
  const [batch, setBatch] = useState('');
  const [expiresOn, setExpiresOn] = useState<string>();
  const [minutes, setMinutes] = useState<number>();
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [clear, setClear] = useState<'yes' | 'no'>();
  const whole =
    product !== undefined &&
    batch.trim() !== '' &&
    expiresOn !== undefined &&
    minutes !== undefined &&
    identifiers.length >= 2 &&
    clear !== undefined;
  return (
    <StepForm
      title="Preparation"
      help="Read each from the pack itself, not from memory."
      step={step}
      act="Prepared"
      missing={whole ? undefined : 'Read every line first'}
      send={() =>
        step.record({
          kind: 'preparation',
          body: { product, batch: batch.trim(), expiresOn, minutes, identifiers, clearAndColourless: clear === 'yes' },
        })
      }
    >
      <Order data={data} />
      <ChoiceField
        label="The pack says"
        at="product"
        size="big"
        value={product}
        onChange={setProduct}
        options={products}
      />
      <TextField label="Batch" at="batch" short value={batch} onChange={setBatch} />
      <ExpiryField label="Expiry" at="expiresOn" value={expiresOn} onChange={setExpiresOn} />
      <NumberField label="To run in" unit="minutes" at="minutes" value={minutes} onChange={setMinutes} />
      <TicksField
        label="Identifiers compared with the order"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      <ChoiceField
        label="Clear and colourless?"
        at="clearAndColourless"
        size="big"
        value={clear}
        onChange={setClear}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
    </StepForm>
  );
}
