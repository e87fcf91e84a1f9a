import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { SessionView } from '@twelvemonth/exchange';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { session } from '../server/queries.ts';
import { longDay } from '../words/dates.ts';
import { counted, dotted } from '../words/texts.ts';
import { ArrivalList } from './ArrivalList.tsx';
import { CancelSession } from './CancelSession.tsx';
import { CouldCome } from './CouldCome.tsx';
import { Standby } from './Standby.tsx';
import { ToDaySheet } from './ToDaySheet.tsx';

export function SessionScreen() {
  const { session: id } = useParams({ from: '/sessions/$session' });
  const asked = useQuery(session(id));
  return (
    <Awaited query={asked} what="the list">
      {(data) => <Sheet data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: SessionView }) {
  const trouble = data.list.flatMap(({ who }) =>
    who !== undefined && who.verdict !== 'ready' && who.outcome === 'not here yet' ? [who] : [],
  );
  return (
    <Page
      title={longDay(data.on)}
      sub={dotted(
        data.unitName,
        `${data.opensAt} to ${data.closesAt}`,
        `${data.taken} of ${counted(data.places, 'place')} taken`,
      )}
      acts={
        <>
          <Button onClick={() => window.print()}>Print this list</Button>
          {!data.cancelled && <ToDaySheet session={data.session} />}
          {!data.cancelled && (
            <Link to="/sessions/$session/day" params={{ session: data.session }}>
              open or close
            </Link>
          )}
          {!data.cancelled && (
            <Link to="/sessions/$session/times" params={{ session: data.session }}>
              plan the times
            </Link>
          )}
          <Link to="/sessions">all sessions</Link>
        </>
      }
    >
      {data.cancelled && (
        <Note tone="stop" speaks="at once">
          This session is cancelled.
        </Note>
      )}
      {trouble.length > 0 && (
        <Note tone="caution">
          <strong>{counted(trouble.length, 'person is', 'people are')} not ready for this date as things stand.</strong>{' '}
          Their lines below say why; a moved place or a step done in time helps.
        </Note>
      )}
      <ArrivalList session={data} />
      {!data.cancelled && data.taken < data.places && <Standby key={data.session} session={data} />}
      {!data.cancelled && data.taken < data.places && <CouldCome session={data} />}
      {!data.cancelled && <CancelSession session={data} />}
    </Page>
  );
}
