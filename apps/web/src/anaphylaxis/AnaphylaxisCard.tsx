import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Fragment, useLayoutEffect, useRef } from 'react';
import { DemoMark } from '../frame/DemoMark.tsx';
import { Button } from '../paper/Button.tsx';
import { buttonLook } from '../paper/button-look.ts';
import { status } from '../server/queries.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';
import css from './AnaphylaxisCard.module.css';
import {
  type CardLine,
  callForHelp,
  cardLines,
  guidelineDecides,
  notFirst,
  sourceInFull,
  thinkOfIt,
} from './card-lines.ts';
import { cardHash } from './card-open.ts';

const Source = ({ of }: { of: CardLine }) => <small className={css['source']}>({of.source})</small>;

/** As the settings of each unit say, where this page has heard them; otherwise room to write it by hand. */
function EmergencyNumber() {
  const units = useQuery({ ...status, enabled: false }).data?.units ?? [];
  const known = units.filter(({ emergencyNumber }) => emergencyNumber !== undefined);
  if (known.length === 0)
    return (
      <>
        {' '}
        The settings of the unit hold none. By hand: <span className={css['byHand']} aria-hidden="true" />
      </>
    );
  return known.map(({ unit, name, emergencyNumber }) => (
    <Fragment key={unit}>
      {' '}
      {name}: <strong>{emergencyNumber}</strong>.
    </Fragment>
  ));
}

/** The card in place of every screen. It asks the server nothing, so it shows without a session and without a network. */
export function AnaphylaxisCard() {
  const place = useRef<HTMLElement>(null);
  const demo = useQuery({ ...status, enabled: false }).data?.demo === true;
  useLayoutEffect(() => {
    const { title } = document;
    const top = window.scrollY;
    const had = document.activeElement;
    document.title = 'Anaphylaxis card · Twelvemonth';
    place.current?.focus();
    window.scrollTo({ top: 0 });
    return () => {
      document.title = title;
      // Once what was hidden is back.
      requestAnimationFrame(() => {
        if (had instanceof HTMLElement) had.focus({ preventScroll: true });
        window.scrollTo({ top });
      });
    };
  }, []);
  return (
    <main className={css['card']} id={cardHash} ref={place} tabIndex={-1}>
      <header className={css['head']}>
        <h1>Anaphylaxis</h1>
        <div className={`${css['acts']} screenOnly`}>
          <Button size="big" onClick={() => window.print()}>
            Print this card
          </Button>
          <Link to="." search hash="" resetScroll={false} className={buttonLook('quiet', 'big')}>
            Back to where you were
          </Link>
        </div>
      </header>
      {demo && <DemoMark />}
      <p className={css['first']}>{guidelineDecides}</p>
      <p className={css['think']}>
        {thinkOfIt.does} <Source of={thinkOfIt} />
      </p>
      <ol className={css['lines']}>
        {cardLines.map((line) => (
          <li key={line.does}>
            <strong>
              <InUnitWords>{line.does}</InUnitWords>.
            </strong>{' '}
            <InUnitWords>{line.detail}</InUnitWords>
            {line.does === callForHelp && <EmergencyNumber />} <Source of={line} />
          </li>
        ))}
      </ol>
      <p>
        {notFirst.does} <Source of={notFirst} />
      </p>
      <p className={css['full']}>{sourceInFull}</p>
    </main>
  );
}
