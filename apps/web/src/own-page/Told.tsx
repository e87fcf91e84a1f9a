import type { ActBody, OwnPageView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { dayInWords } from '../words/dates.ts';
import css from './OwnPage.module.css';

type Row = OwnPageView['told'][number];

/** What they told us, newest first; what waits has a place to write what was found. */
export function Told({ data }: { data: OwnPageView }) {
  return (
    <section aria-labelledby="told">
      <h2 id="told">What they told us</h2>
      {data.told.length === 0 ? (
        <p>Nothing yet.</p>
      ) : (
        <ul className={css['told']}>
          {data.told.map((row) => (
            <li key={row.entry}>
              <p>
                <strong>{dayInWords(row.on)}</strong>: {row.words}
              </p>
              {row.finding !== undefined && <p>Looked at: {row.finding}</p>}
              {row.waits && <LookedAt data={data} row={row} />}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function LookedAt({ data, row }: { data: OwnPageView; row: Row }) {
  const [finding, setFinding] = useState('');
  const attempt = useAct();
  const send = (): void => {
    const line = { kind: 'looked-again', body: { about: row.entry, finding }, effectiveAt: data.today };
    void attempt.send({ name: 'record', patient: data.patient, line } as ActBody['act']);
  };
  return (
    <ActForm refusals={attempt.refusals} send={send}>
      <TextField
        at="line.body.finding"
        label="Waits: what did you find, and what did you tell them?"
        help="Ring them. What you learn (an illness, pain, teeth, a medicine) needs an entry of its own in the notes, and another day is booked there."
        value={finding}
        onChange={setFinding}
      />
      <Outcome of={attempt} />
      <Button type="submit" busy={attempt.busy}>
        I looked at it
      </Button>
    </ActForm>
  );
}
