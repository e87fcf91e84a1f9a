import { type PackProduct, packProducts } from '@twelvemonth/clinical';
import type { StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import css from './Stock.module.css';

type Line = { readonly key: string; readonly productNumber: string; readonly product: PackProduct | undefined };
const newLine = (): Line => ({ key: crypto.randomUUID(), productNumber: '', product: undefined });

/** The pharmacist's list of packs. The newest list holds; older ones stay readable. */
export function PacksForm({ data, close }: { data: StockView; close: () => void }) {
  const attempt = useAct(close);
  const { packs, packsCarrySerial, separatorSentAs } = data.formulary;
  const [lines, setLines] = useState<readonly Line[]>(
    packs.length === 0 ? [newLine()] : packs.map((pack) => ({ ...pack, key: pack.productNumber })),
  );
  const [serials, setSerials] = useState<'yes' | 'no' | undefined>(
    packs.length === 0 ? undefined : packsCarrySerial ? 'yes' : 'no',
  );
  const [separator, setSeparator] = useState(separatorSentAs ?? '');
  const change = (key: string, more: Partial<Line>): void =>
    setLines(lines.map((line) => (line.key === key ? { ...line, ...more } : line)));
  const whole =
    serials !== undefined && lines.every(({ productNumber, product }) => productNumber !== '' && product !== undefined);
  const send = (): void =>
    void attempt.send({
      name: 'set formulary',
      unit: data.unit,
      body: {
        packs: lines.flatMap(({ productNumber, product }) =>
          product === undefined ? [] : [{ productNumber, product }],
        ),
        packsCarrySerial: serials === 'yes',
        ...(separator.trim() === '' ? {} : { separatorSentAs: separator.trim() }),
      },
    });
  return (
    <ActForm
      refusals={attempt.refusals}
      className={css['card']}
      send={() => {
        if (whole) send();
      }}
    >
      <h2>Packs of {data.unitName}</h2>
      <p className="quiet">
        One line for each pack in the house, look-alikes too: a look-alike that is listed is named when it is scanned.
      </p>
      {lines.map(({ key, productNumber, product }, index) => (
        <div key={key} className={css['pack']}>
          <TextField
            label={`Product number, pack ${index + 1}`}
            help="The 14 digits after (01)."
            at={`packs.${index}.productNumber`}
            inputMode="numeric"
            value={productNumber}
            onChange={(typed) => change(key, { productNumber: typed.trim() })}
          />
          <ChoiceField
            label={`Product, pack ${index + 1}`}
            at={`packs.${index}.product`}
            openUpTo={0}
            value={product}
            onChange={(chosen) => change(key, { product: chosen })}
            options={packProducts.map((value) => ({ value }))}
          />
          <Button onClick={() => setLines(lines.filter((line) => line.key !== key))}>
            Leave out<span className="unseen"> pack {index + 1}</span>
          </Button>
        </div>
      ))}
      <p>
        <Button onClick={() => setLines([...lines, newLine()])}>Another pack</Button>
      </p>
      <ChoiceField
        label="Do the packs carry a serial number?"
        at="packsCarrySerial"
        size="big"
        value={serials}
        onChange={setSerials}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <TextField
        label="Sign the scanners type for the separator"
        help="Leave empty where they send the separator itself. Otherwise one of ~ ^ # @ $ | \ { } [ ] `"
        optional
        at="separatorSentAs"
        short
        value={separator}
        onChange={setSeparator}
      />
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={!whole}>
          {whole ? 'Record the list' : 'Fill in every line first'}
        </Button>
        <Button size="big" onClick={close}>
          Leave
        </Button>
      </div>
    </ActForm>
  );
}
