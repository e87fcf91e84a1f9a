import type { Sentence } from '@twelvemonth/planning';
import { useEffect, useState } from 'react';
import { Note } from '../../paper/Note.tsx';
import { Why } from '../../paper/Why.tsx';
import css from './Board.module.css';

/** Milliseconds a hand has to rest before what the checker says is read out: who drags is not flooded. */
const restMilliseconds = 700;
const toldAtOnce = 4;

type Props = {
  readonly said: readonly Sentence[];
  /** The visit in the hand, in words; undefined when nothing is held. */
  readonly holding: string | undefined;
};

/** What the plan checker says of the drawing, shown at once and read out when the hand rests. */
export function CheckerSays({ said, holding }: Props) {
  const says = [...new Set(said.map((one) => one.says))];
  const more = says.length - 1;
  const verdict =
    says.length === 0
      ? 'Plan checker: every rule is kept.'
      : `Plan checker: ${says[0]}${more > 0 ? ` And ${more} more.` : ''}`;
  const spoken = holding === undefined ? verdict : `${holding}. ${verdict}`;
  const [readOut, setReadOut] = useState('');
  useEffect(() => {
    const resting = setTimeout(() => setReadOut(spoken), restMilliseconds);
    return () => clearTimeout(resting);
  }, [spoken]);
  return (
    <>
      <section aria-label="Plan checker" className={holding === undefined ? css['says'] : css['inHand']}>
        {says.length === 0 ? (
          <Note tone="done">Plan checker: every rule is kept.</Note>
        ) : holding === undefined ? (
          <Note tone="stop">
            <strong>Plan checker:</strong>
            <ul>
              {says.slice(0, toldAtOnce).map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ul>
            {says.length > toldAtOnce && (
              <Why about="what the plan checker says" word={`${says.length - toldAtOnce} more`}>
                <ul>
                  {says.slice(toldAtOnce).map((one) => (
                    <li key={one}>{one}</li>
                  ))}
                </ul>
              </Why>
            )}
          </Note>
        ) : (
          <Note tone="stop">{verdict}</Note>
        )}
      </section>
      <p className="unseen" aria-live="polite">
        {readOut}
      </p>
    </>
  );
}
