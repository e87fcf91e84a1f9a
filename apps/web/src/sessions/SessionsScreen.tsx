import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { addDays, day, plainDate } from '@twelvemonth/clinical';
import { useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useServiceToday, useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { sessions } from '../server/queries.ts';
import { SessionsTable } from './SessionsTable.tsx';

const daysAhead = 400;
const daysBack = 60;

export function SessionsScreen() {
  const { unit } = useUnit();
  const today = useServiceToday();
  const [past, setPast] = useState(false);
  const from = past ? plainDate(addDays(day(today), -daysBack)) : today;
  const asked = useQuery({
    ...sessions(unit?.unit, from, plainDate(addDays(day(today), daysAhead))),
    enabled: unit !== undefined,
  });
  return (
    <Page
      title="Sessions"
      sub={unit?.name}
      acts={
        <>
          <Button onClick={() => window.print()}>Print</Button>
          <Link to="/suggest-places" className={buttonLook()}>
            Suggest places
          </Link>
          <Link to="/look-ahead" className={buttonLook()}>
            Look ahead
          </Link>
          <Link to="/sessions/plan" className={buttonLook('act')}>
            Plan a session
          </Link>
        </>
      }
    >
      {unit === undefined ? (
        <NoUnitYet />
      ) : (
        <Awaited query={asked} what="sessions">
          {({ sessions: rows }) =>
            rows.length === 0 ? (
              <Empty says="No session is planned.">
                <p>
                  The first step: <Link to="/sessions/plan">plan one</Link>. Its places are then offered to people whose
                  window holds the date.
                </p>
              </Empty>
            ) : (
              <SessionsTable rows={rows} today={today} />
            )
          }
        </Awaited>
      )}
      <p className="screenOnly" style={{ marginTop: '1rem' }}>
        <Button size="slim" aria-pressed={past} onClick={() => setPast(!past)}>
          {past ? 'Only from today' : 'Also the last two months'}
        </Button>
      </p>
    </Page>
  );
}
