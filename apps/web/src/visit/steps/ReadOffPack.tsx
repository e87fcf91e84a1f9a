import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { inRandomOrder } from './look-alikes.ts';
import type { PackSoFar } from './read-pack.ts';

/** Product and batch read off the pack itself: the product among its look-alikes, in another order each time. */
export function ReadOffPack({ value, onChange }: { value: PackSoFar; onChange: (value: PackSoFar) => void }) {
  const [products] = useState(inRandomOrder);
  return (
    <>
      <ChoiceField
        label="The pack says"
        at="product"
        size="big"
        value={value.product}
        onChange={(product) => onChange({ ...value, product })}
        options={products.map((product) => ({ value: product }))}
        openUpTo={products.length}
      />
      <TextField
        label="Last four signs of the batch"
        at="batchLastFour"
        short
        value={value.batchLastFour}
        onChange={(batchLastFour) => onChange({ ...value, batchLastFour })}
      />
    </>
  );
}
