import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { DemoMark } from '../frame/DemoMark.tsx';
import { Awaited } from '../paper/Awaited.tsx';
import { status } from '../server/queries.ts';
import { FirstAdministrator } from './FirstAdministrator.tsx';
import { SignInForm } from './SignInForm.tsx';
import css from './SignIn.module.css';

/** What stands in place of the screens while nobody is at the desk. `stay` is there when someone else may take over. */
export function SignInPlace({ stay, wasHere }: { stay?: (() => void) | undefined; wasHere: boolean }) {
  const asked = useQuery(status);
  useEffect(() => {
    document.title = 'Sign in · Twelvemonth';
    const place = window.scrollY;
    window.scrollTo({ top: 0 });
    return () => window.scrollTo({ top: place });
  }, []);
  return (
    <main className={css['place']}>
      <div className={css['sheet']}>
        <p className={css['brand']}>Twelvemonth</p>
        <Awaited query={asked} what="the service">
          {(data) => (
            <>
              {data.service !== 'Twelvemonth' && <p className="quiet">{data.service}</p>}
              <div style={{ marginBlock: '0.8rem 1.2rem' }}>{data.demo && <DemoMark />}</div>
              {data.needsFirstAdministrator ? (
                <FirstAdministrator />
              ) : (
                <SignInForm status={data} instead={stay} heading={wasHere ? 'Sign in again' : 'Sign in'} />
              )}
              {wasHere && <p className="quiet">What was being entered on this screen is kept until you are back.</p>}
            </>
          )}
        </Awaited>
      </div>
    </main>
  );
}
