import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { useUnit } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { me, queries, signing, visit } from '../server/queries.ts';
import { momentInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import { LetGo } from './LetGo.tsx';
import { SignWaiting, isToSign, toBeSigned } from './SignWaiting.tsx';
import { Written } from './Written.tsx';
import { type WaitingAct, letWait, useWaiting } from './waiting.ts';

/** What was written here and is not in the notes yet: what waits for the network, and what waits for a person. */
export function WaitingActsScreen() {
  const waiting = useWaiting();
  const staff = useQuery(me).data?.staff;
  const asksToSign = waiting.find(isToSign)?.patient;
  const shared = useQuery({ ...signing(asksToSign ?? ''), enabled: asksToSign !== undefined }).data;
  const toSign = shared === undefined ? [] : toBeSigned(waiting, shared.device === undefined ? staff : undefined);
  const needs = waiting.filter((act) => act.needs !== undefined && !isToSign(act));
  const rest = waiting.filter((act) => !needs.includes(act) && !toSign.includes(act));
  return (
    <Page
      title="Written here, not in the notes yet"
      sub="Kept on this device, sealed, until it is in the notes. It is sent under the name of whoever wrote it."
      acts={<Link to="/">today</Link>}
    >
      {waiting.length === 0 && <Empty says="Nothing waits: what was written here is in the notes." />}
      {toSign.length > 0 && <SignWaiting acts={toSign} />}
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

/** What the server said, the reasons it gave and what others wrote, in one text. */
const against = ({ says, refusals, missed }: NonNullable<WaitingAct['needs']>): string =>
  [says, ...refusals.map((one) => one.says), ...missed.map(({ text, by }) => `${text} (${by})`)]
    .join(' ')
    .slice(0, 2000);

/** What I wrote, what the notes say, and a choice: send it all the same, or let it go with a reason that is written down. */
function Conflict({ act, needs }: { act: WaitingAct; needs: WaitingAct['needs'] }) {
  const { unit } = useUnit();
  const [sendBecause, setSendBecause] = useState('');
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
      <TextField
        label="Send it all the same: why it stands"
        help={
          act.patient === undefined ? undefined : 'It is written into the notes beside it, with what stood against it.'
        }
        at="sendBecause"
        value={sendBecause}
        onChange={setSendBecause}
      />
      <Button size="big" disabled={sendBecause.trim() === ''} onClick={() => void sendAllTheSame()}>
        I have read it: send mine
      </Button>
      {act.patient !== undefined && <LetGo act={act} patient={act.patient} />}
    </section>
  );
}

async function seenNow(patient: string): Promise<Record<string, number>> {
  const { seq } = await queries.fetchQuery({ ...visit(patient), staleTime: 0 });
  return { [`patient/${patient}`]: seq };
}
