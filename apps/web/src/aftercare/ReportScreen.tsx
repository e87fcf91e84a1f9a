import { useQuery } from '@tanstack/react-query';
import { Link, useParams, useSearch } from '@tanstack/react-router';
import type { ReactionReportView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useServiceToday } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { reactionReport } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import css from './Aftercare.module.css';

/** A suspected reaction drafted as plain text for the schemes; a person completes it and sends it there. */
export function ReportScreen() {
  const { patient } = useParams({ from: '/people/$patient/report' });
  const { reaction = '' } = useSearch({ from: '/people/$patient/report' });
  const asked = useQuery(reactionReport(patient, reaction));
  return (
    <Awaited query={asked} what="the report">
      {(data) => <Sheet key={data.reaction} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: ReactionReportView }) {
  const { patient, text, missing, reported } = data;
  const [copied, setCopied] = useState<string>();
  const copy = (): void => {
    navigator.clipboard.writeText(text).then(
      () => setCopied('Copied.'),
      () => setCopied('This browser does not let it be copied: select the text and copy it by hand.'),
    );
  };
  return (
    <Page
      title="Report of a reaction"
      sub={`${data.name}: a draft from the notes. A person checks it, decides how serious it is, and sends it.`}
      acts={
        <>
          <Link to="/people/$patient/aftercare" params={{ patient }}>
            back
          </Link>
          <Button onClick={copy}>Copy</Button>
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      <output className="screenOnly">{copied}</output>
      {missing.length > 0 && (
        <Note tone="caution">
          <p>
            <strong>Not in the notes:</strong> {missing.join(', ')}.
          </p>
        </Note>
      )}
      <pre className={css['report']}>{text}</pre>
      {reported.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <Reported data={data} />
    </Page>
  );
}

const schemes = [{ value: 'local scheme' }, { value: 'national scheme' }, { value: 'not reported' }] as const;

function Reported({ data }: { data: ReactionReportView }) {
  const today = useServiceToday();
  const [to, setTo] = useState<(typeof schemes)[number]['value']>();
  const [number, setNumber] = useState('');
  const [note, setNote] = useState('');
  const attempt = useAct(() => setTo(undefined));
  const send = (): void => {
    const body = {
      reaction: data.reaction,
      to,
      ...(number.trim() === '' ? {} : { number: number.trim() }),
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    };
    const line = { kind: 'reaction-reported' as const, body, effectiveAt: today };
    void attempt.send({ name: 'record', patient: data.patient, line });
  };
  return (
    <ActForm refusals={attempt.refusals} send={send} className={`${css['form']} screenOnly`}>
      <h2>What came of it</h2>
      <ChoiceField label="Sent to" at="to" value={to} onChange={setTo} options={schemes} />
      <TextField label="Number they gave it" at="number" optional value={number} onChange={setNumber} />
      <TextField
        label="Note"
        help="Why it was not reported, or what else was said."
        at="note"
        optional
        value={note}
        onChange={setNote}
      />
      <Outcome of={attempt} />
      <Button type="submit" tone="act" busy={attempt.busy}>
        Write it down
      </Button>
    </ActForm>
  );
}
