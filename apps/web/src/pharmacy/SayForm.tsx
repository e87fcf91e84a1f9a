import type { PrescriptionToVerify } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

export type Said = 'verified' | 'asked' | 'refused';

export const sayWords = {
  verified: { button: 'Verify', field: 'Note', at: 'note', send: 'I have read it: verified' },
  asked: { button: 'Ask the prescriber', field: 'What you ask the prescriber', at: 'question', send: 'Ask' },
  refused: { button: 'Refuse', field: 'Why it is refused', at: 'reason', send: 'Refuse this prescription' },
} as const satisfies Record<Said, { button: string; field: string; at: string; send: string }>;

/** What the pharmacist says is about the prescription as it stood on the screen. */
export function SayForm({ row, what, close }: { row: PrescriptionToVerify; what: Said; close: () => void }) {
  const today = useServiceToday();
  const attempt = useAct(close, { [`patient/${row.patient}`]: row.seq });
  const [text, setText] = useState('');
  const { field, at, send } = sayWords[what];
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        const body = {
          outcome: what,
          prescription: row.prescription,
          ...(text.trim() === '' ? {} : { [at]: text.trim() }),
        };
        void attempt.send({
          name: 'record',
          patient: row.patient,
          line: { kind: 'pharmacy-check', body, effectiveAt: today },
        });
      }}
    >
      <Outcome of={attempt} />
      <TextField
        label={field}
        at={at}
        lines="several"
        first
        value={text}
        onChange={setText}
        optional={what === 'verified'}
      />
      <Button type="submit" tone="act" size="big" busy={attempt.busy}>
        {send}
      </Button>{' '}
      <Button size="big" onClick={close}>
        Leave
      </Button>
    </ActForm>
  );
}
