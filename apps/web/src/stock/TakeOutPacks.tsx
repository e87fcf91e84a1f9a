import type { BatchRow } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

const whys = ['expired', 'broken', 'sent back', 'opened and not given', 'to another unit'] as const;

/** Packs that left the shelf and were given to nobody. */
export function TakeOutPacks({ unit, row, close }: { unit: string; row: BatchRow; close: () => void }) {
  const attempt = useAct(close);
  const [packs, setPacks] = useState<number>();
  const [why, setWhy] = useState<(typeof whys)[number]>();
  const [note, setNote] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (packs === undefined || why === undefined) return;
        void attempt.send({
          name: 'take out packs',
          body: { unit, batch: row.batch, packs, why, ...(note.trim() === '' ? {} : { note }) },
        });
      }}
    >
      <NumberField
        label={`Packs of ${row.batch} taken out`}
        unit="packs"
        at="packs"
        value={packs}
        onChange={setPacks}
      />
      <ChoiceField
        label="Why"
        help="A pack that was scanned for somebody is counted as opened already."
        at="why"
        size="big"
        value={why}
        onChange={setWhy}
        options={whys.map((value) => ({ value }))}
      />
      <TextField label="Anything to say about it" optional at="note" value={note} onChange={setNote} />
      <Outcome of={attempt} />
      <Button
        type="submit"
        tone="act"
        size="big"
        busy={attempt.busy}
        disabled={packs === undefined || why === undefined}
      >
        Taken out
      </Button>
    </ActForm>
  );
}
