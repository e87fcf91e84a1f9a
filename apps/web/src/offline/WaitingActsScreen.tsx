import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { Page } from '../paper/Page.tsx';
import { reckonedServerTime } from '../server/connection.ts';
import { me, queries, visit } from '../server/queries.ts';
import { type Signature, useAct } from '../server/use-act.ts';
import { SignHere } from '../signing/SignHere.tsx';
import { momentInWords } from '../words/dates.ts';
import { localMoment } from '../words/local-moment.ts';
import { counted } from '../words/texts.ts';
import { actInWords } from './act-in-words.ts';
import { sendSigned, sendWaiting } from './send-waiting.ts';
import { type WaitingAct, letWait, useWaiting, waitNoMore } from './waiting.ts';

/** What was written here and is not in the notes yet: what waits for the network, and what waits for a person. */
export function WaitingActsScreen() {
  const waiting = useWaiting();
  const staff = useQuery(me).data?.staff;
  const needs = waiting.filter((act) => act.needs !== undefined);
  const rest = waiting.filter((act) => act.needs === undefined);
  return (
    <Page
      title="Written here, not in the notes yet"
      sub="Kept on this device, sealed, until it is in the notes. It is sent under the name of whoever wrote it."
      acts={<Link to="/">today</Link>}
    >
      {waiting.length === 0 && <Empty says="Nothing waits: what was written here is in the notes." />}
      {needs.map((act) => (
        <Conflict key={act.id} act={act} needs={act.needs} />
      ))}
      {rest.length > 0 && (
        <section aria-labelledby="waits">
          <h2 id="waits">{counted(rest.length, 'entry waits', 'entries wait')}</h2>
          <ul>
            {rest.map((act) => (
              <li key={act.id}>
                <Written act={act} />
                {act.staff !== staff && <strong> It is sent once {act.staffName} is signed in on this device.</strong>}
              </li>
            ))}
          </ul>
        </section>
      )}
    </Page>
  );
}

function Written({ act }: { act: WaitingAct }) {
  const { unit } = useUnit();
  return (
    <>
      <strong>{act.name}</strong>: {actInWords(act.act)}{' '}
      <span className="quiet">
        ({act.staffName}, {momentInWords(act.wroteAt, unit?.zone)})
      </span>
    </>
  );
}

/** What the server said, the reasons it gave and what others wrote, in one text. */
const against = ({ says, refusals, missed }: NonNullable<WaitingAct['needs']>): string =>
  [says, ...refusals.map((one) => one.says), ...missed.map(({ text, by }) => `${text} (${by})`)]
    .join(' ')
    .slice(0, 2000);

/** What I wrote, what the notes say, and a choice: send it all the same, or let it go with a reason that is written down. */
function Conflict({ act, needs }: { act: WaitingAct; needs: WaitingAct['needs'] }) {
  const { unit } = useUnit();
  const [sendBecause, setSendBecause] = useState('');
  const [signing, setSigning] = useState(false);
  if (needs === undefined) return null;
  const sendAllTheSame = async (): Promise<void> => {
    // Read above: what others wrote is seen now.
    const { patient } = act;
    const isAsked = needs.refusals.length > 0 && needs.refusals.every(({ name }) => name === 'is-it-right');
    const { needs: _, ...rest } = act;
    await letWait({
      ...rest,
      confirmedTime: true,
      allTheSame: { against: against(needs), because: sendBecause.trim() },
      ...(needs.refusals.some(({ name }) => name === 'held-elsewhere') ? { takesOver: true as const } : {}),
      ...(act.seen === undefined || patient === undefined
        ? {}
        : { seen: { ...act.seen, ...(await seenNow(patient)) } }),
      act: isAsked ? ({ ...act.act, confirms: needs.refusals.map(({ says }) => says) } as WaitingAct['act']) : act.act,
    });
  };
  const onlyToSign =
    needs.refusals.length > 0 &&
    needs.refusals.every(({ name, field }) => name === 'signature-needed' || field === 'signedBy');
  const sign = async (signedBy: Signature): Promise<void> => {
    setSigning(true);
    try {
      await sendSigned(act, signedBy);
    } finally {
      setSigning(false);
    }
  };
  return (
    <section aria-label={`To settle: ${act.name}`} style={{ marginBottom: '2rem' }}>
      <Note tone="caution">
        <h2>What was written here</h2>
        <p>
          <Written act={act} />
        </p>
        <h2>What the notes say</h2>
        <p>{needs.says}</p>
        <ul>
          {needs.refusals.map(({ name, says, remedy }) => (
            <li key={`${name} ${says}`}>
              {says} {remedy !== undefined && <span className="quiet">({remedy})</span>}
            </li>
          ))}
          {needs.missed.map(({ id, text, by, recordedAt }) => (
            <li key={id}>
              {text}{' '}
              <span className="quiet">
                ({by}, {momentInWords(recordedAt, unit?.zone)})
              </span>
            </li>
          ))}
        </ul>
        {act.patient !== undefined && (
          <p>
            <Link to="/people/$patient/visit" params={{ patient: act.patient }} className="finger">
              Look at the visit
            </Link>
          </p>
        )}
      </Note>
      {onlyToSign && act.patient !== undefined ? (
        <SignHere toSign={{ patient: act.patient, send: (signedBy) => void sign(signedBy) }} busy={signing} />
      ) : (
        <>
          <TextField
            label="Send it all the same: why it stands"
            help={
              act.patient === undefined
                ? undefined
                : 'It is written into the notes beside it, with what stood against it.'
            }
            at="sendBecause"
            value={sendBecause}
            onChange={setSendBecause}
          />
          <Button size="big" disabled={sendBecause.trim() === ''} onClick={() => void sendAllTheSame()}>
            I have read it: send mine
          </Button>
        </>
      )}
      {act.patient !== undefined && <LetGo act={act} patient={act.patient} />}
    </section>
  );
}

async function seenNow(patient: string): Promise<Record<string, number>> {
  const { seq } = await queries.fetchQuery({ ...visit(patient), staleTime: 0 });
  return { [`patient/${patient}`]: seq };
}

/** It is not taken in: that it was written, and why it does not stand, is an entry of the person. */
function LetGo({ act, patient }: { act: WaitingAct; patient: string }) {
  const { unit } = useUnit();
  const [because, setBecause] = useState('');
  const letGo = useAct(() => void waitNoMore(act.id).then(sendWaiting));
  return (
    <>
      <TextField
        label="Or let it go: why it does not stand"
        help="It is written into the notes as not taken in, with this reason."
        at="line.body.because"
        value={because}
        onChange={setBecause}
      />
      <Outcome of={letGo} />
      <Button
        size="big"
        busy={letGo.busy}
        disabled={because.trim() === ''}
        onClick={() =>
          void letGo.send({
            name: 'record',
            patient,
            line: {
              kind: 'not-taken-in',
              body: { what: actInWords(act.act), wroteAt: act.wroteAt, because: because.trim() },
              effectiveAt: localMoment(reckonedServerTime(), unit?.zone ?? 'Europe/London'),
            },
          })
        }
      >
        Let mine go
      </Button>
    </>
  );
}
