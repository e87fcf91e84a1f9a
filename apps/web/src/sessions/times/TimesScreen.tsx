import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { SessionPlanningView } from '@twelvemonth/exchange';
import {
  type Day,
  type DayAnswer,
  type Plan,
  boundText,
  broken,
  movedBy,
  objectiveOf,
  objectiveText,
  readAnyDay,
} from '@twelvemonth/planning';
import { useEffect, useMemo, useState } from 'react';
import { Awaited } from '../../paper/Awaited.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Page } from '../../paper/Page.tsx';
import { sessionPlanning } from '../../server/queries.ts';
import { longDay } from '../../words/dates.ts';
import { PlannedVisits } from './PlannedVisits.tsx';
import css from './Times.module.css';
import { TryOut } from './TryOut.tsx';
import { usePlanner } from './use-planner.ts';

const effort = 4_000;

/** The times of a session, planned: a proposal to look at, to move by hand and to try out. Nobody is told by it. */
export function TimesScreen() {
  const { session: id } = useParams({ from: '/sessions/$session/times' });
  const asked = useQuery(sessionPlanning(id));
  return (
    <Awaited query={asked} what="the session">
      {(data) => <Sheet data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: SessionPlanningView }) {
  const read = useMemo(() => (data.day === undefined ? undefined : readAnyDay(data.day)), [data.day]);
  return (
    <Page
      title={`Times for ${longDay(data.on)}`}
      sub={data.unitName}
      acts={
        <>
          <Button onClick={() => window.print()}>Print</Button>
          <Link to="/sessions/$session" params={{ session: data.session }}>
            the list
          </Link>
        </>
      }
    >
      <div className={css['about']}>
        <p>A proposal: nobody is booked or told by it.</p>
        {data.hasUsualSettings && (
          <Note tone="caution">
            The unit has not written its own minutes and staff for planning: starting values stand in (common practice,
            no source).
          </Note>
        )}
      </div>
      {read === undefined ? (
        <Note>{data.says}</Note>
      ) : read.ok ? (
        <Planned day={read.day} told={data.told} />
      ) : (
        <Note tone="stop">{read.problems.map(({ at, says }) => `${at}: ${says}.`).join(' ')}</Note>
      )}
    </Page>
  );
}

function Planned({ day, told }: { day: Day; told: SessionPlanningView['told'] }) {
  const planner = usePlanner();
  const [answer, setAnswer] = useState<DayAnswer>();
  const [plan, setPlan] = useState<Plan>();
  const { ask, working, stop } = planner;
  useEffect(() => {
    ask({ asks: 'plan', day, effort }, (says) => {
      if (says.says !== 'planned') return;
      setAnswer(says.answer);
      setPlan(says.answer.kind === 'planned' ? says.answer.plan : undefined);
    });
  }, [ask, day]);
  const times = useMemo(() => new Map(told.map(({ name, arrives }) => [name, arrives])), [told]);
  if (answer === undefined)
    return (
      <p aria-live="polite">
        {working === undefined ? 'Stopped: nothing was planned.' : 'Planning the day … '}
        {working !== undefined && (
          <Button size="slim" onClick={stop}>
            Stop
          </Button>
        )}
      </p>
    );
  if (answer.kind !== 'planned' || plan === undefined) return <Impossible answer={answer} />;
  const says = broken(day, plan);
  const isMoved = plan !== answer.plan;
  return (
    <>
      <div className={css['about']}>
        <p>{objectiveText(day, objectiveOf(day, plan))}</p>
        {!isMoved && <p className="quiet">{boundText(day, answer.objective, answer.bound, answer.isProven)}</p>}
        <div aria-live="polite">
          {says.length === 0 ? (
            <Note tone="done">Plan checker: every rule is kept.</Note>
          ) : (
            <Note tone="stop">
              <strong>Plan checker:</strong>
              <ul>
                {says.map((one) => (
                  <li key={one.says}>{one.says}</li>
                ))}
              </ul>
            </Note>
          )}
        </div>
        {isMoved && (
          <p className="screenOnly">
            <Button onClick={() => setPlan(answer.plan)}>Back to the proposed times</Button>
          </p>
        )}
        <p className="quiet">
          Filled: a nurse is needed. Framed: the infusion, with the chair’s number. Dashed: the watch. A thin line:
          waiting.
        </p>
      </div>
      <PlannedVisits
        day={day}
        plan={plan}
        told={times}
        onMove={(visit, ticks) => setPlan(movedBy(day, plan, visit, ticks))}
      />
      <TryOut day={day} plan={plan} planner={planner} />
    </>
  );
}

function Impossible({ answer }: { answer: DayAnswer }) {
  if (answer.kind === 'planned') return null;
  return (
    <Note tone="stop">
      <strong>
        {answer.isProven ? 'This day is impossible:' : 'No plan was found; it is not proven that there is none:'}
      </strong>
      <ul>
        {answer.reasons.map(({ says }) => (
          <li key={says}>{says}</li>
        ))}
      </ul>
      {answer.remedies.length > 0 && (
        <>
          <p>Any one of these would be enough:</p>
          <ul>
            {answer.remedies.map(({ says }) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </>
      )}
    </Note>
  );
}
