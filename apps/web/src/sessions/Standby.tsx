import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { SessionView, StandbyView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useMay } from '../frame/may.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { Note } from '../paper/Note.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import { standby } from '../server/queries.ts';
import { useAct } from '../server/use-act.ts';
import { dayInWords } from '../words/dates.ts';
import { counted, dotted, unbroken } from '../words/texts.ts';
import css from './Sessions.module.css';
import { InUnitWords } from '../words/InUnitWords.tsx';

type Row = StandbyView['list'][number];

/** A place that came free: who is ready for it as things stand, with bloods that hold, and has none earlier. One press gives it. */
export function Standby({ session }: { session: SessionView }) {
  const [isAsked, setAsked] = useState(false);
  return (
    <section aria-labelledby="standby">
      <h2 id="standby">A place that came free</h2>
      {isAsked ? (
        <List id={session.session} />
      ) : (
        <p className="screenOnly">
          <Button onClick={() => setAsked(true)}>Who could have it at once</Button>
        </p>
      )}
    </section>
  );
}

function List({ id }: { id: string }) {
  const asked = useQuery(standby(id));
  return (
    <Awaited query={asked} what="who could come">
      {({ says, list, place, session }) => (
        <>
          {says !== undefined && <Note>{says}</Note>}
          {says === undefined && list.length === 0 && (
            <p>
              <InUnitWords>
                Nobody could have it at once: ready for that date as things stand, with bloods that hold, and no earlier
                place.
              </InUnitWords>
            </p>
          )}
          {list.length > 0 && (
            <>
              <p className="quiet">
                <InUnitWords>
                  Ready for that date as things stand, with bloods that hold: the most urgent first, then the longest
                  past due. How far they live and which weekday they prefer are not in the notes, so neither is weighed:
                  ask when you ring. Whoever has a later place gives that up.
                </InUnitWords>
              </p>
              <table className={`stacks ${css['list']}`}>
                <thead>
                  <tr>
                    <th scope="col">who</th>
                    <th scope="col">due</th>
                    <th scope="col">telephone</th>
                    <th scope="col">
                      <span className="unseen">act</span>
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {list.map((row) => (
                    <StandbyRow key={row.patient} row={row} session={session} place={place} />
                  ))}
                </tbody>
              </table>
            </>
          )}
        </>
      )}
    </Awaited>
  );
}

function dueWords(days: number): string {
  if (days === 0) return 'due on that day';
  return days > 0 ? `${counted(days, 'day')} past due` : `${counted(-days, 'day')} before it is due`;
}

type RowProps = { readonly row: Row; readonly session: string; readonly place: StandbyView['place'] };

function StandbyRow({ row, session, place }: RowProps) {
  const { patient, name, tier, daysPastDue, from, telephone, needs, seq } = row;
  const may = useMay();
  const attempt = useAct(undefined, { [`patient/${patient}`]: seq });
  const give = (): void => {
    if (place === undefined) return;
    void attempt.send(
      from === undefined
        ? { name: 'book', patient, session, place: place.place }
        : {
            name: 'move',
            patient,
            from: from.session,
            to: session,
            place: place.place,
            reason: 'a place came free earlier, and they were rung',
            askedBy: 'the unit',
          },
    );
  };
  return (
    <>
      <tr>
        <th scope="row">
          <Link to="/people/$patient" params={{ patient }}>
            {name}
          </Link>
          <div className={css['detail']}>{dotted(tier !== 'other' && tier, ...needs)}</div>
        </th>
        <td data-head="due">
          {dueWords(daysPastDue)}
          {from !== undefined && <div className={css['detail']}>has a place on {unbroken(dayInWords(from.on))}</div>}
        </td>
        <td data-head="telephone">{telephone === undefined ? 'no number in the notes' : unbroken(telephone)}</td>
        <td style={{ textAlign: 'end' }}>
          {place !== undefined && may('book') ? (
            <Button size="slim" busy={attempt.busy} onClick={give}>
              Give the place at {place.arriveAt}
              <span className="unseen"> to {name}</span>
            </Button>
          ) : (
            <Link
              to="/people/$patient/book"
              params={{ patient }}
              search={{ session }}
              className={buttonLook('quiet', 'slim')}
            >
              Book by hand<span className="unseen"> {name}</span>
            </Link>
          )}
        </td>
      </tr>
      {(attempt.refusals.length > 0 || attempt.trouble !== undefined || attempt.missed.length > 0) && (
        <tr>
          <td colSpan={4}>
            <Outcome of={attempt} />
          </td>
        </tr>
      )}
    </>
  );
}
