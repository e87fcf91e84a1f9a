import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { addDays, day, plainDate } from '@twelvemonth/clinical';
import type { PersonView, SessionRow } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useServiceToday, useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Empty } from '../paper/Empty.tsx';
import { sessions } from '../server/queries.ts';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Booking.module.css';

/** How far ahead places are looked for when the window has no end. */
const daysAhead = 240;

type Props = {
  readonly person: PersonView;
  readonly chosen: string | undefined;
  readonly choose: (session: string) => void;
};

/** Sessions with free places: first those inside the window; the others on demand, because the check will name the trouble. */
export function SessionChoice({ person, chosen, choose }: Props) {
  const today = useServiceToday();
  const { unit } = useUnit();
  const [outside, setOutside] = useState(false);
  const [everyUnit, setEveryUnit] = useState(false);
  const window = person.readiness?.window;
  const asked = useQuery(
    sessions(
      everyUnit ? undefined : person.unit === '' ? unit?.unit : person.unit,
      today,
      plainDate(addDays(day(today), daysAhead)),
    ),
  );
  const inside = (row: SessionRow): boolean =>
    window !== undefined && row.on >= window.first && (window.last === undefined || row.on <= window.last);
  return (
    <section aria-labelledby="sessions">
      <h2 id="sessions">Sessions with free places</h2>
      <Awaited query={asked} what="sessions">
        {({ sessions: rows }) => {
          const open = rows.filter((row) => !row.cancelled && row.on >= today && (outside || inside(row)));
          return (
            <>
              {open.length === 0 && (
                <Empty
                  says={
                    window === undefined
                      ? 'There is no window yet, so no session lies inside it.'
                      : 'No session with a free place lies inside the window.'
                  }
                >
                  <p>
                    Look outside the window, at another unit, or <Link to="/sessions/plan">plan a session</Link>.
                  </p>
                </Empty>
              )}
              <ul className={css['choices']}>
                {open.map((row) => {
                  const free = row.places - row.taken;
                  return (
                    <li key={row.session}>
                      <button
                        type="button"
                        className={css['session']}
                        aria-pressed={row.session === chosen}
                        disabled={free <= 0}
                        onClick={() => choose(row.session)}
                      >
                        <strong>{dayInWords(row.on)}</strong>
                        <span>
                          {row.unitName} · {free <= 0 ? 'full' : `${free} of ${counted(row.places, 'place')} free`}
                        </span>
                        {!inside(row) && <span>outside the window</span>}
                      </button>
                    </li>
                  );
                })}
              </ul>
            </>
          );
        }}
      </Awaited>
      <p style={{ display: 'flex', flexWrap: 'wrap', gap: '0.6rem', marginTop: '0.8rem' }}>
        <Button size="slim" aria-pressed={outside} onClick={() => setOutside(!outside)}>
          {outside ? 'Only inside the window' : 'Also outside the window'}
        </Button>
        <Button size="slim" aria-pressed={everyUnit} onClick={() => setEveryUnit(!everyUnit)}>
          {everyUnit ? 'Only this unit' : 'Every unit'}
        </Button>
      </p>
    </section>
  );
}
