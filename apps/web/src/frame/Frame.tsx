import { useQuery } from '@tanstack/react-query';
import { Outlet } from '@tanstack/react-router';
import { useState } from 'react';
import { me } from '../server/queries.ts';
import { useLive } from '../server/live.ts';
import { SignInPlace } from '../sign-in/SignInPlace.tsx';
import { Banners } from './Banners.tsx';
import { Desk } from './Desk.tsx';
import { useFetchScreens } from './fetch-screens.ts';
import { useFollowFocus } from './follow-focus.ts';
import css from './Frame.module.css';
import { useMay } from './may.ts';
import { Side } from './Side.tsx';
import { Search } from './search/Search.tsx';

/**
 * The frame around every screen. When nobody is at the desk the screens stay mounted, out of sight, so that a form being filled
 * in survives a lock, an expired session and a change of person.
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
  useLive(signedIn);
  useFollowFocus();
  useFetchScreens(signedIn);
  if (asked.data === undefined && asked.error === null) return null;
  const away = !signedIn || changing;
  return (
    <>
      {away && <SignInPlace wasHere={wasHere} stay={changing ? () => setChangingFrom(undefined) : undefined} />}
      {wasHere && (
        <div className={css['frame']} hidden={away} inert={away} style={away ? { display: 'none' } : undefined}>
          <a className={css['skip']} href="#content">
            Skip to the page
          </a>
          <Side />
          <div className={css['body']}>
            <Banners />
            <div className={css['top']}>
              {may('search') && <Search />}
              <Desk change={() => setChangingFrom(staff)} />
            </div>
            <main id="content" className={css['main']} tabIndex={-1}>
              <Outlet />
            </main>
          </div>
        </div>
      )}
    </>
  );
}
