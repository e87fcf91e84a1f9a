import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { SessionPlanningView } from '@twelvemonth/exchange';
import { type Day, type DayAnswer, readAnyDay } from '@twelvemonth/planning';
import { useEffect, useMemo, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { Awaited } from '../../paper/Awaited.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { Page } from '../../paper/Page.tsx';
import { sessionPlanning } from '../../server/queries.ts';
import { longDay } from '../../words/dates.ts';
import { RestOfDay } from '../rest/RestOfDay.tsx';
import { DrawnDay } from './DrawnDay.tsx';
import css from './Times.module.css';
import { type Planner, usePlanner } from './use-planner.ts';

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
        <Parts data={data} day={read.day} />
      ) : (
        <Note tone="stop">{read.problems.map(({ at, says }) => `${at}: ${says}.`).join(' ')}</Note>
      )}
    </Page>
  );
}

const whole = 'the whole day';
const rest = 'the rest of the day, from now';

/** On the day itself the rest of it, once somebody is there; the whole day before. */
function Parts({ data, day }: { data: SessionPlanningView; day: Day }) {
  const planner = usePlanner();
  const { today } = data;
  const [part, setPart] = useState(() => (today?.soFar.some(({ state }) => state !== 'expected') ? rest : whole));
  const told = useMemo(() => new Map(data.told.map(({ name, arrives }) => [name, arrives])), [data.told]);
  return (
    <>
      {today !== undefined && (
        <div className="screenOnly">
          <ChoiceField
            label="Plan"
            at="part"
            value={part}
            onChange={(value) => {
              planner.stop();
              setPart(value ?? whole);
            }}
            options={[{ value: whole }, { value: rest }]}
          />
        </div>
      )}
      {today !== undefined && part === rest ? (
        <RestOfDay data={data} today={today} day={day} told={told} planner={planner} />
      ) : (
        <Planned day={day} told={told} planner={planner} />
      )}
    </>
  );
}

function Planned({ day, told, planner }: { day: Day; told: ReadonlyMap<string, string>; planner: Planner }) {
  const [planned, setPlanned] = useState<{ readonly answer: DayAnswer; readonly onTime: string | undefined }>();
  const { ask, working, stop } = planner;
  useEffect(() => {
    ask({ asks: 'plan', day, effort }, (says) => {
      if (says.says !== 'planned') return;
      setPlanned(says);
    });
  }, [ask, day]);
  if (planned === undefined)
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
  const { answer, onTime } = planned;
  if (answer.kind !== 'planned') return <Impossible answer={answer} />;
  return (
    <DrawnDay
      key={JSON.stringify(answer.plan)}
      day={day}
      answer={answer}
      onTime={onTime}
      told={told}
      planner={planner}
    />
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
