import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { WaitingCallsView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ActForm } from '../fields/ActForm.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useMay } from '../frame/may.ts';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { adviceLine } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { momentInWords, shortDay } from '../words/dates.ts';
import { type Known, WhoIsIt } from './WhoIsIt.tsx';

/** Calls that still wait: red flags first, then who is to be rung, then those whose person nobody has found. */
export function CallsScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...adviceLine(unit?.unit), enabled: unit !== undefined });
  return (
    <Awaited query={asked} what="the calls">
      {(data) => <Sheet data={data} />}
    </Awaited>
  );
}

const waiting = { 'an answer': 'Red flags to answer', 'a call back': 'To be rung back' } as const;

function Sheet({ data }: { data: WaitingCallsView }) {
  return (
    <Page title="Advice line" sub={data.unitName}>
      {data.open.length === 0 && data.unknown.length === 0 && <Empty says="No call waits for anybody." />}
      {(['an answer', 'a call back'] as const).map((waitsFor) => {
        const calls = data.open.filter((one) => one.waitsFor === waitsFor);
        if (calls.length === 0) return null;
        return (
          <section key={waitsFor} aria-label={waiting[waitsFor]}>
            <h2>{waiting[waitsFor]}</h2>
            {calls.map(({ call, patient, name, says, due }) => (
              <Note key={call} tone={waitsFor === 'an answer' ? 'stop' : 'caution'}>
                <p>
                  <strong>
                    <Link to="/people/$patient" params={{ patient }}>
                      {name}
                    </Link>
                  </strong>
                  , by {shortDay(due)}: {says}
                </p>
                <p>
                  <Link
                    to="/people/$patient"
                    params={{ patient }}
                    search={{ record: 'advice-answered', about: call }}
                    className="finger"
                  >
                    write what came of it
                  </Link>
                </p>
              </Note>
            ))}
          </section>
        );
      })}
      {data.unknown.length > 0 && (
        <section aria-labelledby="not-found">
          <h2 id="not-found">About somebody not found</h2>
          {data.unknown.map((one) => (
            <Settle key={one.call} unit={data.unit} one={one} />
          ))}
        </section>
      )}
    </Page>
  );
}

function Settle({ unit: of, one }: { unit: string; one: WaitingCallsView['unknown'][number] }) {
  const attempt = useAct();
  const may = useMay();
  const { unit } = useUnit();
  const [open, setOpen] = useState(false);
  const [found, setFound] = useState<Known>();
  const [outcome, setOutcome] = useState('');
  return (
    <div style={{ marginBottom: '1.2rem' }}>
      <Note tone={one.redFlag ? 'stop' : 'caution'}>
        {momentInWords(one.at, unit?.zone)}, {one.by}: {one.says}
      </Note>
      {!open ? (
        may('settle unknown call') && (
          <p style={{ marginTop: '0.6rem' }}>
            <Button onClick={() => setOpen(true)}>Say whom it was about, or what was done</Button>
          </p>
        )
      ) : (
        <ActForm
          refusals={attempt.refusals}
          send={() =>
            void attempt.send({
              name: 'settle unknown call',
              unit: of,
              body: {
                call: one.call,
                ...(found === undefined ? {} : { patient: found.patient }),
                outcome: outcome.trim(),
              },
            })
          }
        >
          {found === undefined ? (
            <WhoIsIt choose={setFound} />
          ) : (
            <p>
              It was about <strong>{found.name}</strong>: the call is written into their notes, with the time it was
              made.{' '}
              <Button tone="plain" onClick={() => setFound(undefined)}>
                somebody else
              </Button>
            </p>
          )}
          <TextField
            label={found === undefined ? 'Nobody of ours: what was done' : 'How you know'}
            at="body.outcome"
            value={outcome}
            onChange={setOutcome}
          />
          <Outcome of={attempt} />
          <Button type="submit" tone="act" size="big" busy={attempt.busy} disabled={outcome.trim() === ''}>
            {found === undefined ? 'It is nobody of ours' : 'Write it into their notes'}
          </Button>
        </ActForm>
      )}
    </div>
  );
}
