import { useNavigate } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../../fields/ActForm.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Outcome } from '../../paper/Outcome.tsx';
import { useAct } from '../../server/use-act.ts';
import { type Found, FindOther } from './FindOther.tsx';

/** Someone noticed that two notes may be one person's, whatever they look like. */
export function SayMayBeOne({ data }: { data: PersonView }) {
  const navigate = useNavigate();
  const [other, setOther] = useState<Found>();
  const [reason, setReason] = useState('');
  const compare = (): void => {
    if (other !== undefined)
      void navigate({ to: '/people/$patient/compare/$other', params: { patient: data.patient, other: other.patient } });
  };
  const attempt = useAct(compare);
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() => {
        if (other === undefined) return;
        void attempt.send({ name: 'may be one', patient: data.patient, other: other.patient, reason });
      }}
    >
      <p>From then on neither person is ready, until the two have been compared.</p>
      <FindOther label="The other notes" but={data.patient} chosen={other} choose={setOther} />
      <TextField label="Why they may be one person" at="reason" value={reason} onChange={setReason} />
      <Outcome of={attempt} />
      <p style={{ marginTop: '0.8rem' }}>
        <Button type="submit" tone="act" busy={attempt.busy} disabled={other === undefined || reason.trim() === ''}>
          Note it and compare
        </Button>
      </p>
    </ActForm>
  );
}
