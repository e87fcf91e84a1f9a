import type { DecidingView } from '@twelvemonth/exchange';
import { shortDay } from '../words/dates.ts';
import css from './Deciding.module.css';

/** What the person said matters to them, first of all; on paper room to write it. */
export function WhatMatters({ talks }: { talks: DecidingView['talks'] }) {
  const said = talks.filter(({ matters }) => matters !== undefined);
  return (
    <section aria-labelledby="matters">
      <h2 id="matters">What matters to you</h2>
      {said.length === 0 ? (
        <p className="quiet screenOnly">Nobody has written it down yet. Ask first, then look at numbers.</p>
      ) : (
        <ul className={css['plain']}>
          {said.map(({ entry, matters, on }) => (
            <li key={entry}>
              “{matters}” <span className="quiet">({shortDay(on)})</span>
            </li>
          ))}
        </ul>
      )}
      <p className="paperOnly">_______________________________________________________________________</p>
    </section>
  );
}
