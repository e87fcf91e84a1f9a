import { useQuery } from '@tanstack/react-query';
import { Link, Navigate, useSearch } from '@tanstack/react-router';
import type { TodayView } from '@twelvemonth/exchange';
import { Suspense, lazy, memo, useDeferredValue, useState } from 'react';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useMay } from '../frame/may.ts';
import { useServiceToday, useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { Page } from '../paper/Page.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { HeldByPharmacy } from '../pharmacy/HeldByPharmacy.tsx';
import { me, today } from '../server/queries.ts';
import { ToDaySheet } from '../sessions/ToDaySheet.tsx';
import { longDay, shortDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';
import { Chairs } from './Chairs.tsx';
import { InTheUnit } from './InTheUnit.tsx';
import { Instead } from './Instead.tsx';
import { NextActs } from './NextActs.tsx';
import { OtherSessions, SessionState } from './SessionState.tsx';
import { StoppedPacks } from './StoppedPacks.tsx';
import { TroubleAhead } from './TroubleAhead.tsx';
import { WorkPiles } from './WorkPiles.tsx';
import css from './Today.module.css';

export function TodayScreen() {
  const { unit } = useUnit();
  const date = useServiceToday();
  const may = useMay();
  const asked = useQuery({ ...today(unit?.unit), enabled: unit !== undefined && may('today') });
  if (!may('today')) return <Navigate to="/settings" />;
  if (unit === undefined) {
    return (
      <Page title={longDay(date)}>
        <NoUnitYet />
      </Page>
    );
  }
  return (
    <Awaited query={asked} what="today">
      {(data) => <Sheet data={data} />}
    </Awaited>
  );
}

/** Today's while it lasts; the evening before it is the next one's. */
function DaySheets({ data: { session, sessionState, nextSession } }: { data: TodayView }) {
  const isToday = session !== undefined && (sessionState === 'not opened' || sessionState === 'open');
  return (
    <>
      {isToday && <ToDaySheet session={session} />}
      {nextSession !== undefined && (
        <ToDaySheet session={nextSession.session} says={`Day sheet of ${shortDay(nextSession.on)}`} />
      )}
    </>
  );
}

const inWords = ({ counts, finishEarliest }: TodayView): string =>
  dotted(
    `${counts.listed} on the list`,
    counts.gone > 0 && `${counts.gone} gone home`,
    counts.here > 0 && `${counts.here} here now`,
    counts.late > 0 && `${counts.late} late`,
    finishEarliest !== undefined && `the last can leave at ${finishEarliest} at the earliest`,
  );

/** Whose people the lists show: everybody's, or those the person at the desk looks after. */
function WhoseList({ data, whose }: { data: TodayView; whose: 'mine' | undefined }) {
  const mine = useQuery(me).data?.staff;
  if (whose === undefined && !data.visits.some(({ nurse }) => nurse !== undefined && nurse.staff === mine)) return null;
  return (
    <nav aria-label="Whose people" className={`screenOnly ${css['whose']}`}>
      <Link
        to="/"
        search={{}}
        aria-current={whose === undefined ? 'true' : undefined}
        className={buttonLook(whose === undefined ? 'act' : 'quiet')}
      >
        everybody
      </Link>
      <Link
        to="/"
        search={{ whose: 'mine' }}
        aria-current={whose === 'mine' ? 'true' : undefined}
        className={buttonLook(whose === 'mine' ? 'act' : 'quiet')}
      >
        mine
      </Link>
    </nav>
  );
}

/** Its planner is fetched when it is asked for. */
const Likely = lazy(async () => ({ default: (await import('./LikelyFinish.tsx')).LikelyFinish }));

function WhenOver({ session }: { session: string }) {
  const [asked, setAsked] = useState(false);
  return (
    <div className="screenOnly">
      <Button tone="plain" aria-expanded={asked} onClick={() => setAsked(!asked)}>
        When shall we likely be finished?
      </Button>
      {asked && (
        <Suspense fallback={<p>Trying out the rest of the day …</p>}>
          <Likely session={session} />
        </Suspense>
      )}
    </div>
  );
}

/** Each is drawn anew only where something in it has changed. */
const [ChairBoard, Ahead, Held, Piles] = [memo(Chairs), memo(TroubleAhead), memo(HeldByPharmacy), memo(WorkPiles)];

function Sheet({ data }: { data: TodayView }) {
  const { whose } = useSearch({ from: '/' });
  const mine = useQuery(me).data?.staff;
  // What is next first; everybody's line a moment after it, so that neither holds a slow tablet up.
  const settled = useDeferredValue(data);
  const ofMine = ({ visits }: TodayView): TodayView['visits'] =>
    whose === undefined ? visits : visits.filter(({ nurse }) => nurse?.staff === mine);
  const shown = new Set(ofMine(data).map(({ patient }) => patient));
  const next = data.next.filter(({ patient }) => shown.has(patient));
  return (
    <Page
      title={longDay(data.date)}
      sub={data.session === undefined ? `${data.unitName} · no session today` : `${data.unitName} · ${inWords(data)}`}
      acts={<DaySheets data={data} />}
    >
      {data.session === undefined && (
        <Empty says="No session today.">
          {data.nextSession === undefined ? (
            <p>
              None is planned yet. The first step: <Link to="/sessions/plan">plan a session</Link>.
            </p>
          ) : (
            <p>
              The next one is{' '}
              <Link to="/sessions/$session" params={{ session: data.nextSession.session }}>
                {longDay(data.nextSession.on)}
              </Link>
              .
            </p>
          )}
        </Empty>
      )}
      <div className={css['session']}>
        <SessionState data={data} />
        {data.session !== undefined && data.finishEarliest !== undefined && <WhenOver session={data.session} />}
      </div>
      <OtherSessions data={data} />
      {data.stoppedPacks.length > 0 && <StoppedPacks packs={data.stoppedPacks} />}
      <WhoseList data={data} whose={whose} />
      <div className="screenOnly">
        {next.length > 0 && (
          <NextActs
            next={next}
            here={new Set(data.visits.filter(({ steps }) => steps[0]?.state === 'done').map(({ patient }) => patient))}
          />
        )}
        <Instead data={data} />
      </div>
      {settled.visits.length > 0 && <InTheUnit data={settled} visits={ofMine(settled)} />}
      <div className="screenOnly">
        <ChairBoard visits={settled.visits} chairs={settled.chairs} />
      </div>
      {settled.trouble.length > 0 && <Ahead trouble={settled.trouble} />}
      {settled.heldByPharmacy.length > 0 && <Held held={settled.heldByPharmacy} />}
      <Piles work={settled.work} today={settled.date} />
    </Page>
  );
}
