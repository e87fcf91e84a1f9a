import { sameBatch } from '@twelvemonth/clinical';
import type { StockView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { counted } from '../words/texts.ts';
import css from './Stock.module.css';

const whys = ['quarantine', 'batch recall'] as const;
const speeds = ['at once', '48 hours', '5 days'] as const;

/** From now on no pack of the batch is prepared or started, at any unit of the service. */
export function StopBatch({ data, close }: { data: StockView; close: () => void }) {
  const attempt = useAct(close);
  const [batch, setBatch] = useState('');
  const [why, setWhy] = useState<(typeof whys)[number]>();
  const [actWithin, setActWithin] = useState<(typeof speeds)[number]>();
  const [reason, setReason] = useState('');
  const [toldBy, setToldBy] = useState('');
  const [productNumber, setProductNumber] = useState('');
  const send = (): void => {
    if (why === undefined) return;
    void attempt.send({
      name: 'stop batch',
      body: {
        batch,
        why,
        reason,
        ...(why === 'quarantine' || actWithin === undefined ? {} : { actWithin }),
        ...(toldBy.trim() === '' ? {} : { toldBy }),
        ...(productNumber.trim() === '' ? {} : { productNumber: productNumber.trim() }),
      },
    });
  };
  return (
    <ActForm refusals={attempt.refusals} className={css['card']} send={send}>
      <h3>Stop a batch</h3>
      <p className="quiet">Nobody prepares or starts a pack of it from now on, at any unit of this service.</p>
      <TextField
        label="Batch"
        help="As printed on the pack."
        at="batch"
        short
        first
        value={batch}
        onChange={setBatch}
      />
      <KnownBatch data={data} batch={batch} />
      <ChoiceField
        label="Why"
        help="Quarantine: put aside until someone has looked. Batch recall: the maker or the regulator calls it back."
        at="why"
        size="big"
        value={why}
        onChange={setWhy}
        options={whys.map((value) => ({ value }))}
      />
      {why === 'batch recall' && (
        <ChoiceField
          label="Act within"
          help="As the notice says."
          at="actWithin"
          size="big"
          value={actWithin}
          onChange={setActWithin}
          options={speeds.map((value) => ({ value }))}
        />
      )}
      <TextField label="What is wrong with it" at="reason" value={reason} onChange={setReason} />
      <TextField label="Who said so" optional at="toldBy" value={toldBy} onChange={setToldBy} />
      <TextField
        label="Product number"
        help="Only where two makers use the same batch number: the 14 digits after (01). Left empty, every pack with the number is stopped."
        optional
        at="productNumber"
        short
        inputMode="numeric"
        value={productNumber}
        onChange={setProductNumber}
      />
      <Outcome of={attempt} />
      <div className={css['acts']}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={why === undefined}>
          {why === undefined ? 'Say why first' : 'Stop the batch'}
        </Button>
        <Button size="big" onClick={close}>
          Leave
        </Button>
      </div>
    </ActForm>
  );
}

/** A number misread stops nothing: what is known of the one that was typed stands beside it. A notice may come before the packs. */
function KnownBatch({ data, batch }: { data: StockView; batch: string }) {
  if (batch.trim() === '') return null;
  const row = data.batches.find((one) => sameBatch(one.batch) === sameBatch(batch));
  return (
    <p className="quiet">
      <output>
        {row?.product === undefined
          ? 'No packs of this batch are written down here. Read the number once more; it can be stopped all the same.'
          : `${row.product}, ${counted(Math.max(0, row.packs), 'pack')} by the sum, ${counted(row.people, 'person', 'people')} had it.`}
      </output>
    </p>
  );
}
