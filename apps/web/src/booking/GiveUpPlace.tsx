import { useNavigate } from '@tanstack/react-router';
import type { PersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Why } from '../paper/Why.tsx';
import { useAct } from '../server/use-act.ts';

/** Gives the booked place up without taking another. */
export function GiveUpPlace({ person }: { person: PersonView }) {
  const navigate = useNavigate();
  const [reason, setReason] = useState('');
  const [askedBy, setAskedBy] = useState<'the patient' | 'the unit'>();
  const attempt = useAct(() => void navigate({ to: '/people/$patient', params: { patient: person.patient } }), {
    [`patient/${person.patient}`]: person.seq,
  });
  const { place } = person;
  if (place === undefined) return null;
  return (
    <div style={{ marginTop: '2rem' }}>
      <Why about="without booking another" word="give the place up">
        <ActForm
          refusals={attempt.refusals}
          send={() => {
            if (askedBy === undefined) return;
            void attempt.send({
              name: 'give up place',
              patient: person.patient,
              session: place.session,
              reason,
              askedBy,
            });
          }}
        >
          <Outcome of={attempt} />
          <ChoiceField
            label="Who asked"
            at="askedBy"
            value={askedBy}
            onChange={setAskedBy}
            options={[{ value: 'the patient' }, { value: 'the unit' }]}
            trouble={undefined}
          />
          <TextField label="Why it is given up" at="reason" value={reason} onChange={setReason} />
          <Button type="submit" busy={attempt.busy} disabled={askedBy === undefined}>
            Give the place up
          </Button>
        </ActForm>
      </Why>
    </div>
  );
}
