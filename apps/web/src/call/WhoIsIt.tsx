import { useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { useFound } from '../frame/search/use-found.ts';
import { useConnection } from '../server/connection.ts';
import { Button } from '../paper/Button.tsx';
import { bornShort } from '../words/dates.ts';
import { dotted, unbroken } from '../words/texts.ts';
import css from './Call.module.css';
import { useFoundToday } from './listed-today.ts';

export type Known = { readonly patient: string; readonly name: string };

/** Whom a call is about: found by what the caller says, chosen with one tap, each with a second identifier. */
export function WhoIsIt({ choose, notFound }: { choose: (known: Known) => void; notFound?: () => void }) {
  const [typed, setTyped] = useState('');
  const isAway = useConnection().awaySince !== undefined;
  const { found, settled } = useFound(isAway ? '' : typed);
  const foundToday = useFoundToday(isAway ? typed : '');
  return (
    <>
      <TextField
        label="Whom is it about?"
        help="Name, number or birth date. Ask for two of them."
        at="patient"
        value={typed}
        onChange={setTyped}
        first
      />
      <ul className={css['found']} aria-label="Found">
        {found.map(({ patient, name, number, born }) => (
          <li key={patient}>
            <Button size="big" onClick={() => choose({ patient, name })}>
              {name}
              <span className={css['second']}>{dotted(`born ${bornShort(born)}`, unbroken(number))}</span>
            </Button>
          </li>
        ))}
      </ul>
      {isAway && (
        <>
          <p className="quiet">The server cannot be reached: only today’s list is searched.</p>
          <ul className={css['found']} aria-label="Found on today’s list">
            {foundToday.map(({ patient, name, number }) => (
              <li key={patient}>
                <Button size="big" onClick={() => choose({ patient, name })}>
                  {name}
                  <span className={css['second']}>{unbroken(number)}</span>
                </Button>
              </li>
            ))}
          </ul>
        </>
      )}
      {settled && found.length === 0 && <output>Nobody is found by that.</output>}
      {notFound !== undefined && (
        <p>
          <Button size="big" onClick={notFound}>
            Not found here: write the call all the same
          </Button>
        </p>
      )}
    </>
  );
}
