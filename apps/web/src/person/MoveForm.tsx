import type { EntryView, PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { type Found, FindOther } from './one-or-two/FindOther.tsx';

/** An entry that stands in the wrong person's notes: withdrawn here and written there, by one act. */
export function MoveForm({ entry, person, close }: { entry: EntryView; person: PersonView; close: () => void }) {
  const [to, setTo] = useState<Found>();
  const [reason, setReason] = useState('');
  const attempt = useAct(close, { [`patient/${person.patient}`]: person.seq });
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (to === undefined) return;
        void attempt.send({ name: 'move entry', patient: person.patient, entry: entry.id, to: to.patient, reason });
      }}
    >
      <Outcome of={attempt} />
      <FindOther label={`“${entry.text}” belongs to`} but={person.patient} chosen={to} choose={setTo} />
      <TextField
        label="How it came to be here"
        help="A result has to be signed again there. Decisions made here while it stood are listed, to be looked at again."
        at="reason"
        value={reason}
        onChange={setReason}
      />
      <p style={{ display: 'flex', gap: '0.6rem' }}>
        <Button
          type="submit"
          tone="act"
          size="slim"
          busy={attempt.busy}
          disabled={to === undefined || reason.trim() === ''}
        >
          Move it
        </Button>
        <Button size="slim" onClick={close}>
          Leave it
        </Button>
      </p>
    </ActForm>
  );
}
