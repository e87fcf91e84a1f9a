import type { EntryView, PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';

/** Voids an entry, with the reason. It stays readable. */
export function WithdrawForm({ entry, person, close }: { entry: EntryView; person: PersonView; close: () => void }) {
  const [reason, setReason] = useState('');
  const attempt = useAct(close, { [`patient/${person.patient}`]: person.seq });
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => void attempt.send({ name: 'withdraw', patient: person.patient, entry: entry.id, reason })}
    >
      <Outcome of={attempt} />
      <TextField
        label={`Why “${entry.text}” should not count`}
        help="For example: written in the wrong notes."
        at="reason"
        value={reason}
        onChange={setReason}
        first
      />
      {entry.amends !== undefined && (
        <Note tone="caution">
          What this corrected does not count again. If it was right after all, correct this entry instead.
        </Note>
      )}
      <p style={{ display: 'flex', gap: '0.6rem' }}>
        <Button type="submit" tone="act" size="slim" busy={attempt.busy}>
          Withdraw it
        </Button>
        <Button size="slim" onClick={close}>
          Leave it
        </Button>
      </p>
    </ActForm>
  );
}
