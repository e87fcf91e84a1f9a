import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { SessionPlanningView } from '@twelvemonth/exchange';
import { type LikelyFinish as Finish, type RestRead, noDayChanges, readAnyDay, restOfDay } from '@twelvemonth/planning';
import { useEffect, useMemo, useState } from 'react';
import { Awaited } from '../paper/Awaited.tsx';
import { Note } from '../paper/Note.tsx';
import { sessionPlanning } from '../server/queries.ts';
import { usePlanner } from '../sessions/times/use-planner.ts';

const effort = 1_000;

/** When the day will likely be over, from what has happened by now. Asked for by a press: it takes a tablet a moment. */
export function LikelyFinish({ session }: { session: string }) {
  const asked = useQuery(sessionPlanning(session));
  return (
    <Awaited query={asked} what="the day">
      {(data) => <Answer key={data.today?.time} data={data} />}
    </Awaited>
  );
}

/** What is left of the day, or why nothing can be said of it. */
function restOf(data: SessionPlanningView): RestRead {
  const read = data.day === undefined ? undefined : readAnyDay(data.day);
  if (read === undefined || !read.ok || data.today === undefined)
    return { ok: false, says: data.says ?? 'This day cannot be planned.' };
  const told = new Map(data.told.map(({ name, arrives }) => [name, arrives]));
  return restOfDay(read.day, told, data.today.soFar, data.today.time, noDayChanges);
}

function Answer({ data }: { data: SessionPlanningView }) {
  const { ask } = usePlanner();
  const read = useMemo(() => restOf(data), [data]);
  const [finish, setFinish] = useState<Finish>();
  useEffect(() => {
    if (!read.ok) return;
    ask({ asks: 'finish', rest: read.rest, effort }, (answer) => {
      if (answer.says === 'finish') setFinish(answer.finish);
    });
  }, [ask, read]);
  if (!read.ok) return <Note>{read.says}</Note>;
  if (finish === undefined) return <p aria-live="polite">Trying out the rest of the day …</p>;
  const { half, nineInTen, closes, withoutPlace } = finish;
  return (
    <Note tone={withoutPlace > 0 || nineInTen > closes ? 'caution' : 'quiet'} speaks="politely">
      <p>
        As likely as not over by <strong>{half}</strong>, nine times in ten by <strong>{nineInTen}</strong>; the unit
        closes at {closes}. From what had happened by {data.today?.time}, if everybody still expected comes, with the
        staff and chairs the unit plans with
        {data.hasUsualSettings ? ' (starting values: it has not written its own)' : ''}.
      </p>
      {withoutPlace > 0 && (
        <p>
          <strong>Not everybody can be seen within the day.</strong>
        </p>
      )}
      <p>
        <Link to="/sessions/$session/times" params={{ session: data.session }} className="finger">
          Plan the rest of the day
        </Link>
      </p>
    </Note>
  );
}
