import { type PackProduct, type PlainDate, packProducts } from '@twelvemonth/clinical';
import type { PackOrderRow, StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { ExpiryField } from '../visit/steps/ExpiryField.tsx';
import css from './Stock.module.css';

/** Packs that came: read off one of them. */
export function ReceivePacks({
  data,
  order,
  close,
}: {
  data: StockView;
  /** The order they are of. */
  order?: PackOrderRow;
  close: () => void;
}) {
  const attempt = useAct(close);
  const [product, setProduct] = useState<PackProduct | undefined>(order?.product);
  const listed = data.formulary.packs.filter(({ product: one }) => order === undefined || one === order.product);
  const [productNumber, setProductNumber] = useState<string | undefined>(
    order !== undefined && listed.length === 1 ? listed[0]?.productNumber : undefined,
  );
  const [batch, setBatch] = useState('');
  const [expiresOn, setExpiresOn] = useState<string>();
  const [packs, setPacks] = useState<number>();
  const [from, setFrom] = useState(order?.from ?? '');
  const whole = product !== undefined && batch.trim() !== '' && expiresOn !== undefined && packs !== undefined;
  const send = (): void => {
    if (product === undefined || expiresOn === undefined || packs === undefined) return;
    void attempt.send({
      name: 'receive packs',
      body: {
        unit: data.unit,
        batch: batch.trim(),
        product,
        expiresOn: expiresOn as PlainDate,
        packs,
        ...(productNumber === undefined ? {} : { productNumber }),
        ...(from.trim() === '' ? {} : { from }),
        ...(order === undefined ? {} : { order: order.order }),
      },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} className={css['card']} send={send}>
      <h3>Packs have come</h3>
      {listed.length > 0 ? (
        <ChoiceField
          label="Pack"
          help="As the pharmacist listed them."
          at="product"
          size="big"
          value={productNumber}
          onChange={(number) => {
            setProductNumber(number);
            setProduct(listed.find((pack) => pack.productNumber === number)?.product);
          }}
          options={listed.map((pack) => ({
            value: pack.productNumber,
            says: `${pack.product} (${pack.productNumber})`,
          }))}
        />
      ) : (
        <ChoiceField
          label="Product"
          at="product"
          openUpTo={0}
          value={product}
          onChange={setProduct}
          options={packProducts.map((value) => ({ value }))}
        />
      )}
      <TextField label="Batch" at="batch" short value={batch} onChange={setBatch} />
      <ExpiryField label="Expiry" at="expiresOn" value={expiresOn} onChange={setExpiresOn} />
      <NumberField label="How many" unit="packs" at="packs" value={packs} onChange={setPacks} />
      <TextField label="From" optional at="from" value={from} onChange={setFrom} />
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={!whole}>
          {whole ? 'Record' : 'Read every line first'}
        </Button>
        <Button size="big" onClick={close}>
          Leave
        </Button>
      </div>
    </ActForm>
  );
}
