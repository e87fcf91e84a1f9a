import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { AftercareOfPersonView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { aftercareOfPerson } from '../server/queries.ts';
import { dayInWords, shortDay } from '../words/dates.ts';
import { counted, dotted, unbroken } from '../words/texts.ts';
import css from './Aftercare.module.css';
import { AskForm } from './AskForm.tsx';
import { NotReached } from './NotReached.tsx';
import { RedFlags } from './RedFlags.tsx';
import { StopAsking } from './StopAsking.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';

/** How one person is after the dose: whom to ring, the questions, what was told before. */
export function AskScreen() {
  const { patient } = useParams({ from: '/people/$patient/aftercare' });
  const asked = useQuery(aftercareOfPerson(patient));
  return (
    <Awaited query={asked} what="the questions">
      {(data) => <Sheet key={data.patient} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: AftercareOfPersonView }) {
  const { patient, dose, waiting, noCall } = data;
  return (
    <Page
      title="After the dose"
      sub={dotted(data.name, `born ${data.born}`, unbroken(data.number))}
      acts={
        <>
          <Link to="/aftercare">back to the list</Link>
          <Link to="/people/$patient" params={{ patient }}>
            to the person
          </Link>
          <Button onClick={() => window.print()}>Print</Button>
        </>
      }
    >
      {data.redFlags.length > 0 && <RedFlags rows={data.redFlags} />}
      <dl className={css['whom']}>
        <dt>
          <InUnitWords>Ring</InUnitWords>
        </dt>
        <dd>
          {data.telephone ?? 'no telephone number in the notes'}
          {data.speakTo.map((one) => (
            <div key={one}>
              <InUnitWords>{one}</InUnitWords>
            </div>
          ))}
        </dd>
        <dt>Dose</dt>
        <dd>
          {dose === undefined
            ? 'none given here'
            : dotted(`${dose.medicine} on ${dayInWords(dose.on)}`, `dose ${dose.number}`)}
        </dd>
        {waiting !== undefined && (
          <>
            <dt>Ask</dt>
            <dd>
              on {dayInWords(waiting.tryOn)}
              {waiting.attempts > 0 &&
                `; ${counted(waiting.attempts, 'call')} in vain, the last ${waiting.lastAttempt}`}
              {waiting.notAsked !== undefined && `; in an earlier call not asked: ${waiting.notAsked}`}
            </dd>
          </>
        )}
      </dl>
      {noCall !== undefined && (
        <Note tone="stop">
          <p>
            <InUnitWords>{noCall}</InUnitWords>
          </p>
        </Note>
      )}
      {dose !== undefined && noCall === undefined && <Ways data={data} dose={dose} />}
      <Told data={data} />
      {data.cautions.map((caution) => (
        <p key={caution} className={css['caution']}>
          {caution}
        </p>
      ))}
    </Page>
  );
}

type Way = 'asked' | 'not reached' | 'stop';

function Ways({ data, dose }: { data: AftercareOfPersonView; dose: NonNullable<AftercareOfPersonView['dose']> }) {
  const [way, setWay] = useState<Way>('asked');
  const done = (): void => setWay('asked');
  return (
    <>
      <p className={`${css['ways']} screenOnly`}>
        <Button aria-pressed={way === 'asked'} onClick={() => setWay('asked')}>
          The questions
        </Button>
        <Button aria-pressed={way === 'not reached'} onClick={() => setWay('not reached')}>
          Not reached
        </Button>
        {data.waiting !== undefined && (
          <Button aria-pressed={way === 'stop'} onClick={() => setWay('stop')}>
            Stop asking
          </Button>
        )}
      </p>
      {way === 'asked' && <AskForm key={data.seq} data={data} dose={dose} />}
      {way === 'not reached' && <NotReached patient={data.patient} done={done} />}
      {way === 'stop' && <StopAsking patient={data.patient} dose={dose.entry} done={done} />}
    </>
  );
}

function Told({ data }: { data: AftercareOfPersonView }) {
  const { told, reports, patient } = data;
  if (told.length === 0) return null;
  return (
    <section aria-labelledby="told">
      <h2 id="told">Told so far</h2>
      <ul className={css['list']}>
        {told.map(({ entry, on, text, by }) => {
          const report = reports.find(({ reaction }) => reaction === entry);
          return (
            <li key={entry}>
              {shortDay(on)}: {text} <span className={css['by']}>({by})</span>
              {report !== undefined && (
                <>
                  {' '}
                  {report.reported.join('; ')}{' '}
                  <Link
                    className="screenOnly"
                    to="/people/$patient/report"
                    params={{ patient }}
                    search={{ reaction: entry }}
                  >
                    draft a report<span className="unseen"> about {text}</span>
                  </Link>
                </>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
