import type { ActBody, HandedOverPage, OwnPageView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { DateField } from '../fields/DateField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useActingRole } from '../frame/acting-role.ts';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { ServerProblem } from '../server/server-problem.ts';
import { useAct } from '../server/use-act.ts';
import { usePosting } from '../server/use-posting.ts';
import { dayInWords } from '../words/dates.ts';
import css from './OwnPage.module.css';

/** The page that is open, and a new one: its address is shown once, here, and kept nowhere. */
export function HandOver({ data, allowed }: { data: OwnPageView; allowed: boolean }) {
  const { patient, open, notHere } = data;
  const posting = usePosting('handOverPage');
  const { role } = useActingRole();
  const [until, setUntil] = useState(data.until);
  const { way, notSent } = data;
  const make = (sends: boolean): void => {
    if (until === undefined) return;
    void posting.send({
      patient,
      expiresOn: until,
      ...(sends ? { send: true } : {}),
      ...(role === undefined ? {} : { role }),
    });
  };
  return (
    <>
      {posting.answer !== undefined && (
        <Note tone="done" speaks="politely">
          <p>
            <strong>This address is shown only now.</strong> Print it, or write it to them. It opens until{' '}
            {dayInWords(posting.answer.until)}, with their date of birth.
          </p>
          {posting.answer.sent !== undefined && <SentWords sent={posting.answer.sent} />}
          <p className={css['address']}>{posting.answer.address}</p>
          <div className={css['alone']}>
            <h2>{posting.answer.title}</h2>
            <p>{posting.answer.text}</p>
          </div>
          <Button onClick={() => window.print()}>Print it for them</Button>
        </Note>
      )}
      {open === undefined ? (
        posting.answer === undefined && <p>None is open.</p>
      ) : (
        <ClosePage key={open.entry} data={data} open={open} allowed={allowed} />
      )}
      {notHere !== undefined ? (
        <Note>
          <p>None can be handed over: {notHere}.</p>
        </Note>
      ) : (
        allowed && (
          <ActForm
            refusals={posting.error instanceof ServerProblem ? (posting.error.problem.refusals ?? []) : []}
            send={() => make(false)}
          >
            <DateField
              label="Opens until"
              at="line.body.expiresOn"
              help="The day of the visit, or another day. A new address closes the one before."
              value={until}
              onChange={setUntil}
            />
            {posting.error !== undefined && <Trouble error={posting.error} />}
            <div className={css['acts']}>
              <Button tone="act" type="submit" busy={posting.busy} disabled={until === undefined}>
                {open === undefined ? 'Make an address' : 'Make a new address'}
              </Button>
              {way !== undefined && notSent === undefined && (
                <Button busy={posting.busy} disabled={until === undefined} onClick={() => make(true)}>
                  Make one and send it by {way.channel} to {way.to}
                </Button>
              )}
            </div>
            {notSent !== undefined && <p className="quiet">It cannot be sent from here now: {notSent}.</p>}
          </ActForm>
        )
      )}
    </>
  );
}

function SentWords({ sent }: { sent: NonNullable<HandedOverPage['sent']> }) {
  const { channel, to, outcome, because } = sent;
  const where = `by ${channel} to ${to}`;
  if (outcome === 'accepted') return <p>Sent {where}.</p>;
  return (
    <p>
      <strong>{outcome === 'not accepted' ? 'Not sent' : 'It may not have been sent'}</strong> {where}:{' '}
      {because ?? 'no reason given'}. Give it to them another way.
    </p>
  );
}

function ClosePage({
  data,
  open,
  allowed,
}: {
  data: OwnPageView;
  open: NonNullable<OwnPageView['open']>;
  allowed: boolean;
}) {
  const [reason, setReason] = useState('');
  const attempt = useAct();
  const close = (): void => {
    const line = { kind: 'own-page', body: { is: 'closed', reason }, effectiveAt: data.today };
    void attempt.send({ name: 'record', patient: data.patient, line } as ActBody['act']);
  };
  return (
    <>
      <p>
        One is open, handed over on {dayInWords(open.since)}, until {dayInWords(open.until)}.
      </p>
      {allowed && (
        <details className="screenOnly">
          <summary>Close it</summary>
          <ActForm refusals={attempt.refusals} send={close}>
            <TextField label="Why it is closed" at="line.body.reason" value={reason} onChange={setReason} />
            <Outcome of={attempt} />
            <Button type="submit" busy={attempt.busy}>
              Close the page
            </Button>
          </ActForm>
        </details>
      )}
    </>
  );
}
