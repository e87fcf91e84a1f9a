import { type PackProduct, type PlainDate, addDays, day, packProducts, plainDate } from '@twelvemonth/clinical';
import type { StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { DateField } from '../fields/DateField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Stock.module.css';

/** An order that was placed: written down so that the coming weeks count it. */
export function OrderPacks({ data, close }: { data: StockView; close: () => void }) {
  const attempt = useAct(close);
  const known = data.forecasts.map(({ product }) => product);
  const [product, setProduct] = useState<PackProduct | undefined>(known.length === 1 ? known[0] : undefined);
  const [packs, setPacks] = useState<number>();
  const usual = data.settings === undefined ? undefined : plainDate(addDays(day(data.today), data.settings.leadDays));
  const [expectedOn, setExpectedOn] = useState<string | undefined>(usual);
  const [from, setFrom] = useState('');
  const [reference, setReference] = useState('');
  const whole = product !== undefined && packs !== undefined && expectedOn !== undefined;
  const send = (): void => {
    if (product === undefined || packs === undefined || expectedOn === undefined) return;
    void attempt.send({
      name: 'order packs',
      unit: data.unit,
      body: {
        product,
        packs,
        expectedOn: expectedOn as PlainDate,
        ...(from.trim() === '' ? {} : { from: from.trim() }),
        ...(reference.trim() === '' ? {} : { reference: reference.trim() }),
      },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} className={css['card']} send={send}>
      <h3>Packs are ordered</h3>
      <ChoiceField
        label="Product"
        at="product"
        size="big"
        value={product}
        onChange={setProduct}
        options={(known.length > 0 ? known : packProducts).map((value) => ({ value }))}
      />
      <NumberField label="How many" unit="packs" at="packs" value={packs} onChange={setPacks} />
      <DateField
        label="Expected on"
        help={
          usual === undefined ? undefined : 'Today and the lead time of the unit, unless the supplier says otherwise.'
        }
        at="expectedOn"
        value={expectedOn}
        onChange={setExpectedOn}
      />
      <TextField label="From" optional at="from" value={from} onChange={setFrom} />
      <TextField label="Number of the order" optional at="reference" value={reference} onChange={setReference} />
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={!whole}>
          {whole ? 'Record' : 'Fill in every line first'}
        </Button>
        <Button size="big" onClick={close}>
          Leave
        </Button>
      </div>
    </ActForm>
  );
}
