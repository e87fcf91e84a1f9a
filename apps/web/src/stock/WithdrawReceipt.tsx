import type { BatchRow } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { shortDay } from '../words/dates.ts';
import { sentence } from '../words/texts.ts';

/** A receipt that was misread or mistyped: withdrawn with the reason, then received as it is. */
export function WithdrawReceipt({ unit, row, close }: { unit: string; row: BatchRow; close: () => void }) {
  const attempt = useAct(close);
  const [entry, setEntry] = useState<string | undefined>(
    row.receipts.length === 1 ? row.receipts[0]?.entry : undefined,
  );
  const [reason, setReason] = useState('');
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (entry !== undefined)
          void attempt.send({ name: 'withdraw receipt', unit, batch: row.batch, entry, reason: reason.trim() });
      }}
    >
      <ChoiceField
        label="Which receipt is wrong"
        help="It is withdrawn and stays readable. Afterwards write it again with “Packs have come”."
        at="entry"
        size="big"
        openUpTo={6}
        value={entry}
        onChange={setEntry}
        options={row.receipts.map(({ entry: value, on, by, says }) => ({
          value,
          says: `${shortDay(on)}: ${sentence(says)} (${by})`,
        }))}
      />
      <TextField
        label="What is wrong with it"
        help="For example: expiry typed as 2027, the pack says 2028."
        at="reason"
        value={reason}
        onChange={setReason}
      />
      <Outcome of={attempt} />
      <Button
        type="submit"
        tone="act"
        size="big"
        busy={attempt.busy}
        disabled={entry === undefined || reason.trim() === ''}
      >
        {entry === undefined ? 'Say which first' : 'Withdraw this receipt'}
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
