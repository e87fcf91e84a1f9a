import { Link } from '@tanstack/react-router';
import { ifNobodyAnswers } from '@twelvemonth/clinical';
import type { AftercareView, RedFlagView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { useAct } from '../server/use-act.ts';
import { useUnitWords } from '../words/american.ts';
import { shortDay } from '../words/dates.ts';
import { dotted, unbroken } from '../words/texts.ts';
import css from './Aftercare.module.css';

type Row = AftercareView['redFlags'][number];
const byWhen = { now: 'Now', today: 'Today', 'this week': 'This week' } as const;

/** What was told and may not wait, until it is written to whom it was passed on. */
export function RedFlags({ rows, named = false }: { rows: readonly Row[]; named?: boolean }) {
  return (
    <section aria-labelledby="red-flags">
      <h2 id="red-flags">Red flags, not passed on ({rows.length})</h2>
      {rows.map((row) => (
        <Note key={row.entry} tone="stop">
          {named && (
            <p>
              <Link to="/people/$patient/aftercare" params={{ patient: row.patient }} className="finger">
                <strong>{row.name}</strong>
              </Link>{' '}
              {dotted(unbroken(row.number), row.telephone ?? 'no telephone number')}
            </p>
          )}
          <Flags flags={row.flags} />
          <p className={css['detail']}>
            told on {shortDay(row.on)}: {row.text}
          </p>
          <PassOn row={row} />
        </Note>
      ))}
    </section>
  );
}

/** Each with who acts, by when, and what the person does now. */
export function Flags({ flags }: { flags: readonly RedFlagView[] }) {
  const inUnitWords = useUnitWords();
  return (
    <ul className={css['flags']}>
      {flags.map(({ name, urgency, who, doNow, thinkOf, source }) => (
        <li key={name}>
          <p>
            <strong>
              {byWhen[urgency]}: {name}
            </strong>{' '}
            → {inUnitWords(who)}
          </p>
          <p>
            Say: “{inUnitWords(doNow)}
            {urgency === 'today' && ` ${ifNobodyAnswers}`}”
          </p>
          <p className={css['detail']}>
            Think of: {inUnitWords(thinkOf)}. ({source})
          </p>
        </li>
      ))}
    </ul>
  );
}

function PassOn({ row }: { row: Row }) {
  const today = useServiceToday();
  const [open, setOpen] = useState(false);
  const [to, setTo] = useState('');
  const [theyWill, setTheyWill] = useState('');
  const [personWasTold, setTold] = useState('');
  const attempt = useAct();
  const send = (): void => {
    const body = { about: row.entry, to, theyWill, personWasTold };
    const line = { kind: 'red-flag-passed-on' as const, body, effectiveAt: today };
    void attempt.send({ name: 'record', patient: row.patient, line });
  };
  if (!open)
    return (
      <p className="screenOnly">
        <Button tone="act" onClick={() => setOpen(true)}>
          Write to whom it was passed on<span className="unseen"> for {row.name}</span>
        </Button>
      </p>
    );
  return (
    <ActForm refusals={attempt.refusals} send={send} className={css['passOn']}>
      <Outcome of={attempt} />
      <TextField label="Who was told, by name" at="to" value={to} onChange={setTo} />
      <TextField
        label="What they will do, and when"
        at="theyWill"
        lines="several"
        value={theyWill}
        onChange={setTheyWill}
      />
      <TextField
        label="What the person was told to do now"
        at="personWasTold"
        lines="several"
        value={personWasTold}
        onChange={setTold}
      />
      <p className={css['buttons']}>
        <Button type="submit" tone="act" busy={attempt.busy}>
          Write it down
        </Button>
        <Button onClick={() => setOpen(false)}>Leave</Button>
      </p>
    </ActForm>
  );
}
