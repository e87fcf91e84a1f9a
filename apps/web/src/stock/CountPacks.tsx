import type { BatchRow } from '@twelvemonth/exchange';
import { useState } from 'react';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** What really lies there. The sum is not shown first: who has read it counts to it. */
export function CountPacks({ unit, row, close }: { unit: string; row: BatchRow; close: () => void }) {
  const attempt = useAct(close);
  const [packs, setPacks] = useState<number>();
  const [note, setNote] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (packs === undefined) return;
        void attempt.send({
          name: 'count packs',
          body: { unit, batch: row.batch, packs, ...(note.trim() === '' ? {} : { note }) },
        });
      }}
    >
      <NumberField
        label={`Packs of ${row.batch} on the shelf`}
        help="Opened packs left out."
        unit="packs"
        at="packs"
        value={packs}
        onChange={setPacks}
      />
      <TextField label="Anything to say about it" optional at="note" value={note} onChange={setNote} />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={packs === undefined}>
        Counted
      </Button>
    </ActForm>
  );
}
