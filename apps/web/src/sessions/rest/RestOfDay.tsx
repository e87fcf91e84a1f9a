import type { SessionPlanningView } from '@twelvemonth/exchange';
import { type Day, type RestOfDay as Rest, type RestProposal, restOfDay } from '@twelvemonth/planning';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import type { Planner } from '../times/use-planner.ts';
import { ChangesForm } from './ChangesForm.tsx';
import { type ChangesTyped, changesOf, notTimes } from './changes-state.ts';
import css from './Rest.module.css';
import { RestProposed } from './RestProposed.tsx';

const effort = 3_000;

type Props = {
  readonly data: SessionPlanningView;
  readonly today: NonNullable<SessionPlanningView['today']>;
  readonly day: Day;
  /** By name: the time each has been told. */
  readonly told: ReadonlyMap<string, string>;
  readonly planner: Planner;
};

type Answered = { readonly seen: string; readonly time: string; readonly rest: Rest; readonly proposal: RestProposal };

/** The rest of a day that has begun, planned again from what has really happened. */
export function RestOfDay({ data, today, day, told, planner }: Props) {
  const first = (of: 'nurses' | 'chairs' | 'checkers'): number => Math.max(0, ...day[of]);
  const [typed, setTyped] = useState<ChangesTyped>({
    nurses: first('nurses'),
    chairs: first('chairs'),
    checkers: first('checkers'),
    comes: {},
    longer: {},
  });
  const [answered, setAnswered] = useState<Answered>();
  const [says, setSays] = useState<string>();
  const { ask, working, stop } = planner;
  // What was looked at when the rest was planned: entries written since do not change it under the reader's eyes.
  const seen = JSON.stringify([today.soFar, data.told]);
  const wrong = notTimes(typed);
  const plan = (): void => {
    if (wrong.length > 0) return;
    const read = restOfDay(day, told, today.soFar, today.time, changesOf(typed));
    setSays(read.ok ? undefined : read.says);
    setAnswered(undefined);
    if (!read.ok) return;
    const { rest } = read;
    ask({ asks: 'rest', rest, effort }, (answer) => {
      if (answer.says === 'rest') setAnswered({ seen, time: today.time, rest, proposal: answer.proposal });
    });
  };
  const planNow = useRef(plan);
  useEffect(() => planNow.current(), []);
  const isPlanning = working?.asks === 'rest';
  return (
    <section aria-labelledby="rest">
      <h2 id="rest">The rest of the day, from {today.time} on</h2>
      <p className="quiet">
        What has begun stays. Then as few people as possible are told another time. Nobody is told by this: you tell
        them, and write it down.
      </p>
      <div className="screenOnly">
        <ChangesForm typed={typed} onChange={setTyped} soFar={today.soFar} told={told} time={today.time} />
        <div className={css['acts']}>
          {isPlanning ? (
            <Button onClick={stop}>Stop planning</Button>
          ) : (
            <Button tone="act" onClick={plan} disabled={wrong.length > 0}>
              Plan the rest again
            </Button>
          )}
        </div>
      </div>
      {isPlanning && <p aria-live="polite">Planning the rest of the day …</p>}
      {says !== undefined && <Note>{says}</Note>}
      {answered !== undefined && (
        <>
          {answered.seen !== seen && (
            <Note tone="caution" speaks="politely">
              Something has happened since {answered.time}: plan the rest again.
            </Note>
          )}
          <RestProposed
            key={JSON.stringify(answered.proposal.drawn.plan)}
            session={data.session}
            rest={answered.rest}
            proposal={answered.proposal}
            patients={new Map(data.told.map(({ name, patient }) => [name, patient]))}
            told={told}
          />
        </>
      )}
    </section>
  );
}
