import { Link, useParams } from '@tanstack/react-router';
import { useRef } from 'react';
import { Button } from '../paper/Button.tsx';
import { Page } from '../paper/Page.tsx';
import { addressOf } from '../server/paths.ts';
import css from '../visit/Letter.module.css';

/** The day sheet as it will be printed: the list, and a card for each person to lie at the chair. */
export function DaySheetScreen() {
  const { session } = useParams({ from: '/sessions/$session/sheet' });
  const frame = useRef<HTMLIFrameElement>(null);
  return (
    <Page
      title="Day sheet"
      sub="On paper for when the network is down: printed the evening before, and again when the session opens."
      acts={
        <>
          <Button tone="act" size="big" onClick={() => frame.current?.contentWindow?.print()}>
            Print the day sheet
          </Button>
          <Link to="/sessions/$session/paper" params={{ session }}>
            type it in
          </Link>
          <Link to="/sessions/$session/day" params={{ session }}>
            the session
          </Link>
        </>
      }
    >
      <iframe
        ref={frame}
        className={css['letter']}
        title="Day sheet"
        src={addressOf('daySheet', { session })}
        sandbox="allow-same-origin allow-modals"
      />
    </Page>
  );
}
