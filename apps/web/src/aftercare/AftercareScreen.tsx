import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { AftercareRow, AftercareView } from '@twelvemonth/exchange';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { TableHead } from '../paper/TableHead.tsx';
import { aftercare } from '../server/queries.ts';
import { dayInWords, shortDay } from '../words/dates.ts';
import { counted, dotted, unbroken } from '../words/texts.ts';
import css from './Aftercare.module.css';
import { RedFlags } from './RedFlags.tsx';
import { weekdaysInWords } from './weekday-words.ts';

/** Who is to be asked how they are after a first dose, what was told and may not wait, and what a scheme may want to know of. */
export function AftercareScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...aftercare(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="Aftercare"
      sub="Everyone is asked how they are after a first dose: how they felt decides whether they come again."
      acts={<Button onClick={() => window.print()}>Print this list</Button>}
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the aftercare list">
          {(data) => <Lists data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function Lists({ data }: { data: AftercareView }) {
  const { people, redFlags, reports, asked } = data;
  const those = (when: AftercareRow['when']) => people.filter((row) => row.when === when);
  return (
    <>
      <Line of={data.adviceLine} />
      {redFlags.length > 0 && <RedFlags rows={redFlags} named />}
      {people.length === 0 && <Empty says="Nobody is to be asked in the coming week." />}
      <ToAsk id="overdue" title="Not asked in time" rows={those('overdue')} />
      <ToAsk id="today" title="To be asked today" rows={those('today')} />
      <ToAsk id="to-come" title="To come" rows={those('to come')} />
      {reports.length > 0 && (
        <section aria-labelledby="reports">
          <h2 id="reports">Severe reactions, not reported to a scheme ({reports.length})</h2>
          <ul className={css['list']}>
            {reports.map((row) => (
              <li key={row.reaction}>
                <Link to="/people/$patient" params={{ patient: row.patient }}>
                  {row.name}
                </Link>
                , {shortDay(row.on)}: {row.text}{' '}
                <Link
                  to="/people/$patient/report"
                  params={{ patient: row.patient }}
                  search={{ reaction: row.reaction }}
                  className="screenOnly"
                >
                  draft a report<span className="unseen"> about {row.name}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      {asked.length > 0 && (
        <section aria-labelledby="asked">
          <h2 id="asked">Asked in the last week ({asked.length})</h2>
          <ul className={css['list']}>
            {asked.map((row) => (
              <li key={row.entry}>
                <Link to="/people/$patient/aftercare" params={{ patient: row.patient }}>
                  {row.name}
                </Link>
                , {shortDay(row.on)}: {row.text} <span className={css['by']}>({row.by})</span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Line({ of }: { of: AftercareView['adviceLine'] }) {
  if (of === undefined)
    return (
      <Note tone="caution">
        <p>
          Nobody has said on which days the advice line is open. Until it stands under Settings every open day counts as
          one.
        </p>
      </Note>
    );
  return (
    <p className={css['line']}>
      Advice line: {weekdaysInWords(of.weekdays)}, {of.fromTime} to {of.untilTime}.{' '}
      {of.openToday ? 'Open today.' : <strong>Closed today.</strong>}
    </p>
  );
}

function ToAsk({ id, title, rows }: { id: string; title: string; rows: readonly AftercareRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>
        {title} ({rows.length})
      </h2>
      <table className={`stacks ${css['table']}`}>
        <TableHead columns={['who', 'first dose', 'ask on', 'tried so far', { unseen: 'acts' }]} />
        <tbody>
          {rows.map((row) => (
            <Row key={row.patient} row={row} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ row }: { row: AftercareRow }) {
  const { patient, name, number, telephone, speakTo, dose, attempts, lastAttempt, notAsked } = row;
  return (
    <tr>
      <th scope="row">
        <Link to="/people/$patient" params={{ patient }}>
          {name}
        </Link>
        <div className={css['detail']}>{dotted(unbroken(number), telephone ?? 'no telephone number')}</div>
        {speakTo.map((one) => (
          <div key={one} className={css['detail']}>
            {one}
          </div>
        ))}
      </th>
      <td>
        {dayInWords(dose.on)}
        <div className={css['detail']}>{dose.medicine}</div>
      </td>
      <td>
        {dayInWords(row.tryOn)}
        <div className={css['detail']}>
          {dotted(
            row.by === row.tryOn ? undefined : `by ${dayInWords(row.by)}`,
            row.contact > 1 && 'second time: the line was closed on the third day',
          )}
        </div>
      </td>
      <td>
        {attempts === 0 ? 'not called yet' : `${counted(attempts, 'call')} in vain`}
        {lastAttempt !== undefined && <div className={css['detail']}>{lastAttempt}</div>}
        {notAsked !== undefined && <div className={css['detail']}>asked in part; not asked: {notAsked}</div>}
      </td>
      <td className={css['acts']}>
        <Link className="screenOnly nowrap" to="/people/$patient/aftercare" params={{ patient }}>
          ask<span className="unseen"> {name}</span>
        </Link>
      </td>
    </tr>
  );
}
