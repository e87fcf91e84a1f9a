import type { SupportLineView, SupportsView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { dayInWords } from '../words/dates.ts';
import { useSupport } from './use-support.ts';

/** Booked with whom, their reference, for when; `moves` is the booking this one takes the place of. */
export function BookSupportForm({
  data,
  what,
  moves,
  done,
}: {
  data: SupportsView;
  what: SupportLineView['what'];
  moves: string | undefined;
  done: () => void;
}) {
  const { attempt, write } = useSupport(data, done);
  const [bookedWith, setBookedWith] = useState('');
  const [reference, setReference] = useState('');
  const [at, setAt] = useState('');
  const { place } = data;
  if (place === undefined) return null;
  return (
    <ActForm
      refusals={attempt.refusals}
      send={() =>
        write({
          answer: 'booked',
          what,
          ...place,
          bookedWith: bookedWith.trim(),
          ...(reference.trim() === '' ? {} : { reference: reference.trim() }),
          ...(at.trim() === '' ? {} : { at: at.trim() }),
          ...(moves === undefined ? {} : { inPlaceOf: moves }),
        })
      }
    >
      <p>
        <strong>
          {moves === undefined ? what : `${what}, moved`} for {dayInWords(place.on)}, {place.arriveAt}
        </strong>
      </p>
      <TextField label="Booked with" at="line.body.bookedWith" first value={bookedWith} onChange={setBookedWith} />
      <TextField label="Their reference" optional at="line.body.reference" value={reference} onChange={setReference} />
      <TextField
        label="To be there at"
        help="HH:MM, 24 hours."
        optional
        short
        inputMode="numeric"
        at="line.body.at"
        value={at}
        onChange={setAt}
      />
      <Outcome of={attempt} />
      <p style={{ display: 'flex', gap: '0.6rem' }}>
        <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={bookedWith.trim() === ''}>
          {bookedWith.trim() === '' ? 'With whom?' : 'Write the booking'}
        </Button>
        <Button size="big" onClick={done}>
          Leave
        </Button>
      </p>
    </ActForm>
  );
}
