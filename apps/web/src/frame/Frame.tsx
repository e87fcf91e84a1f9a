import { useQuery } from '@tanstack/react-query';
import { Outlet } from '@tanstack/react-router';
import { Suspense, lazy, useEffect, useState } from 'react';
import { AnaphylaxisCard } from '../anaphylaxis/AnaphylaxisCard.tsx';
import { useCardOpen } from '../anaphylaxis/card-open.ts';
import { ToAnaphylaxisCard } from '../anaphylaxis/ToAnaphylaxisCard.tsx';
import { ToCall } from '../call/ToCall.tsx';
import { useCallOpen } from '../call/call-open.ts';
import { onLeft } from '../server/leaving.ts';
import { me, signedOut } from '../server/queries.ts';
import { SyncState } from '../offline/SyncState.tsx';
import { useKeepDay } from '../offline/keep-day.ts';
import { useLive } from '../server/live.ts';
import { SignInPlace } from '../sign-in/SignInPlace.tsx';
import { WritesAmerican } from '../words/american.ts';
import { Banners } from './Banners.tsx';
import { Desk } from './Desk.tsx';
import { useFetchScreens } from './fetch-screens.ts';
import { useFollowFocus } from './follow-focus.ts';
import css from './Frame.module.css';
import { LeftBehindNotes } from './LeftBehindNotes.tsx';
import { useMay } from './may.ts';
import { Opening } from './Opening.tsx';
import { Side } from './Side.tsx';
import { Search } from './search/Search.tsx';
import { useUnit } from './unit.ts';

const CallPlace = lazy(async () => ({ default: (await import('../call/CallPlace.tsx')).CallPlace }));

/**
 * The frame around every screen. When nobody is at the desk the screens stay mounted, out of sight, so that a form being filled
 * in survives a lock, an expired session and a change of person. The anaphylaxis card stands outside all of that: it shows
 * whoever is at the desk, or nobody, and before the server has answered.
 */
export function Frame() {
  const asked = useQuery(me);
  const [changingFrom, setChangingFrom] = useState<string>();
  const [wasHere, setWasHere] = useState(false);
  const staff = asked.data?.staff;
  const signedIn = staff !== undefined;
  if (signedIn && !wasHere) setWasHere(true);
  const changing = signedIn && changingFrom === staff;
  const may = useMay();
  const american = useUnit().unit?.letters?.language === 'en-US';
  useLive(signedIn);
  useEffect(() => onLeft(signedOut), []);
  useKeepDay();
  useFollowFocus();
  useFetchScreens(signedIn);
  const callOpen = useCallOpen() && may('write advice call');
  const [hadCall, setHadCall] = useState(false);
  if (callOpen && !hadCall) setHadCall(true);
  const cardOpen = useCardOpen();
  const card = cardOpen ? (
    <WritesAmerican value={american}>
      <AnaphylaxisCard />
    </WritesAmerican>
  ) : (
    <ToAnaphylaxisCard />
  );
  if (asked.data === undefined && asked.error === null)
    return (
      <>
        <Opening />
        {card}
      </>
    );
  const away = !signedIn || changing;
  const out = away || cardOpen;
  return (
    <>
      {away && (
        <div hidden={cardOpen}>
          <SignInPlace wasHere={wasHere} stay={changing ? () => setChangingFrom(undefined) : undefined} />
        </div>
      )}
      {wasHere && (
        <div className={css['frame']} hidden={out} inert={out} style={out ? { display: 'none' } : undefined}>
          <a className={css['skip']} href="#content">
            Skip to the page
          </a>
          <Side />
          <div className={css['body']}>
            <Banners />
            <div className={css['top']}>
              {may('search') && <Search />}
              {may('write advice call') && <ToCall />}
              {may('visit') && <SyncState />}
              <Desk change={() => setChangingFrom(staff)} />
            </div>
            <main id="content" className={css['main']} tabIndex={-1}>
              <LeftBehindNotes />
              <div hidden={callOpen} inert={callOpen} style={callOpen ? { display: 'none' } : { display: 'contents' }}>
                <WritesAmerican value={american}>
                  <Outlet />
                </WritesAmerican>
              </div>
              {(callOpen || hadCall) && (
                <div hidden={!callOpen} inert={!callOpen} style={callOpen ? undefined : { display: 'none' }}>
                  <Suspense>
                    <WritesAmerican value={american}>
                      <CallPlace />
                    </WritesAmerican>
                  </Suspense>
                </div>
              )}
            </main>
          </div>
        </div>
      )}
      {card}
    </>
  );
}
