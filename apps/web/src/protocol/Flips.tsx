import { Link } from '@tanstack/react-router';
import { useId } from 'react';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Protocol.module.css';
import { type FlipsAsked, useFlips } from './use-flips.ts';

/** Whose verdict or window would be another if this sheet were in force today. Told while it is worked out. */
export function Flips({
  unit,
  asked,
  level = 'h3',
}: {
  unit: string;
  asked: FlipsAsked | undefined;
  level?: 'h2' | 'h3';
}) {
  const { now, stop } = useFlips(unit, asked);
  const id = useId();
  const Heading = level;
  return (
    <section aria-labelledby={id} className="screenOnly">
      <Heading id={id}>Who flips</Heading>
      {asked === undefined ? (
        <p className="quiet">Decide the empty numbers first: with a gap nobody can be compared.</p>
      ) : (
        <>
          {now.error !== undefined && <Trouble error={now.error} />}
          {now.error === undefined && (
            <output className={css['progress']}>
              {now.state === 'asking' &&
                (now.of === undefined ? 'comparing everyone …' : `comparing: ${now.compared} of ${now.of} …`)}
              {now.state === 'stopped' && `stopped after ${now.compared} of ${now.of ?? 'everyone'}`}
              {now.state === 'done' &&
                `${counted(now.compared, 'person', 'people')} compared; ${
                  now.flips.length === 0
                    ? 'nobody’s verdict or window would change.'
                    : `${counted(now.flips.length, 'person', 'people')} would flip:`
                }`}{' '}
              {now.state === 'asking' && (
                <Button size="slim" onClick={stop}>
                  Stop
                </Button>
              )}
            </output>
          )}
          {now.flips.length > 0 && <FlipsTable flips={now.flips} />}
        </>
      )}
    </section>
  );
}

function FlipsTable({ flips }: { flips: ReturnType<typeof useFlips>['now']['flips'] }) {
  return (
    <table className="stacks">
      <thead>
        <tr>
          <th scope="col">who</th>
          <th scope="col">on</th>
          <th scope="col">now</th>
          <th scope="col">under this version</th>
        </tr>
      </thead>
      <tbody>
        {flips.map((flip) => (
          <tr key={flip.patient}>
            <th scope="row">
              <Link to="/people/$patient" params={{ patient: flip.patient }}>
                {flip.name}
              </Link>
            </th>
            <td>{dayInWords(flip.on)}</td>
            <td>
              {flip.verdictChanges ? flip.from : 'the verdict stays'}
              {flip.windowFrom !== undefined && <span className="quiet">; window {flip.windowFrom}</span>}
            </td>
            <td>
              {flip.verdictChanges ? flip.to : flip.from}
              {flip.windowTo !== undefined && <span className="quiet">; window {flip.windowTo}</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
