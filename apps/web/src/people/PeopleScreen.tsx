import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useDeferredValue, useMemo } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { Empty } from '../paper/Empty.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { people } from '../server/queries.ts';
import type { AnswerOf } from '../server/paths.ts';
import { counted } from '../words/texts.ts';
import { without } from '../words/without.ts';
import { PeopleTable } from './PeopleTable.tsx';
import { StandingFilters } from './StandingFilters.tsx';
import { isOrder, narrowed, ordered, orders } from './people-order.ts';
import css from './People.module.css';

export function PeopleScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...people(unit?.unit), enabled: unit !== undefined });
  return (
    <Page
      title="People"
      sub={unit?.name}
      acts={
        <>
          <Button onClick={() => window.print()}>Print this list</Button>
          <Link to="/people/new" className={buttonLook('act')}>
            Register someone
          </Link>
        </>
      }
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="the register">
          {(data) => <Register data={data} />}
        </Awaited>
      )}
    </Page>
  );
}

function Register({ data }: { data: AnswerOf<'people'> }) {
  const { standing, verdict, sort } = useSearch({ from: '/people' });
  const navigate = useNavigate({ from: '/people' });
  const order = isOrder(sort) ? sort : 'by date';
  const rows = useMemo(
    () => ordered(narrowed(data.people, { standing, verdict }), order),
    [data, standing, verdict, order],
  );
  // Another order is another fifty rows: drawn in pieces, so that the screen goes on answering meanwhile.
  const drawn = useDeferredValue(rows);
  if (data.total === 0) {
    return (
      <Empty says="Nobody is on the register of this unit.">
        <p>
          The first step: <Link to="/people/new">register someone who was referred</Link>, or{' '}
          <Link to="/import">bring in the register you keep now</Link>.
        </p>
      </Empty>
    );
  }
  return (
    <>
      {data.unaccounted > 0 && (
        <Note tone="stop" speaks="at once">
          {counted(data.unaccounted, 'person is', 'people are')} not accounted for: nobody owns what happens next. Tell
          the service lead now.
        </Note>
      )}
      <StandingFilters standings={data.standings} total={data.total} chosen={standing} />
      <div className={css['tools']}>
        <label className="screenOnly">
          Order:{' '}
          <select
            value={order}
            onChange={(event) => void navigate({ search: (before) => ({ ...before, sort: event.target.value }) })}
          >
            {Object.entries(orders).map(([value, says]) => (
              <option key={value} value={value}>
                {says}
              </option>
            ))}
          </select>
        </label>
        <label className="screenOnly">
          Verdict today:{' '}
          <select
            value={verdict ?? ''}
            onChange={(event) =>
              void navigate({
                search: (before) =>
                  event.target.value === '' ? without(before, 'verdict') : { ...before, verdict: event.target.value },
              })
            }
          >
            <option value="">any</option>
            {['ready', 'not ready', 'cannot say', 'does not apply'].map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
        <output className="quiet">
          {counted(rows.length, 'person', 'people')}
          {standing === undefined ? '' : `, ${standing}`}
        </output>
      </div>
      <PeopleTable rows={drawn} />
    </>
  );
}
