import type { PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../../fields/ActForm.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { useAct } from '../../server/use-act.ts';

/** Takes it back: the two are read apart, and held until somebody says that they are two. */
export function ReadApartForm({
  data,
  other,
  done,
}: {
  data: PersonView;
  other: PersonView['together'][number];
  done: () => void;
}) {
  const [reason, setReason] = useState('');
  const attempt = useAct(done, { [`patient/${data.patient}`]: data.seq });
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => void attempt.send({ name: 'read apart', patient: data.patient, other: other.patient, reason })}
    >
      <TextField
        label="Why they should be read apart"
        help="Both people are held as possible duplicates until somebody says that they are two. What was written since stays in the kept notes: move what belongs to the other person."
        at="reason"
        value={reason}
        onChange={setReason}
      />
      <Outcome of={attempt} />
      <p style={{ marginTop: '0.8rem' }}>
        <Button type="submit" tone="act" busy={attempt.busy} disabled={reason.trim() === ''}>
          Read them apart
        </Button>
      </p>
    </ActForm>
  );
}
