import { useNavigate, useSearch } from '@tanstack/react-router';
import {
  type Day,
  type DayAnswer,
  type Improved,
  boundText,
  brokenInDrawing,
  objectiveOf,
  objectiveText,
} from '@twelvemonth/planning';
import { useReducer, useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { ChairBoard } from '../board/ChairBoard.tsx';
import { CheckerSays } from '../board/CheckerSays.tsx';
import { ChosenVisit } from '../board/ChosenVisit.tsx';
import { drawingAfter, drawingOf } from '../board/drawing-state.ts';
import { oneLine, visitWords } from '../board/visit-words.ts';
import { PlannedVisits } from './PlannedVisits.tsx';
import css from './Times.module.css';
import { TryOut } from './TryOut.tsx';
import type { Planner } from './use-planner.ts';

const effort = 4_000;
const list = 'a list in order of coming';
const board = 'a board of chairs';

type Props = {
  readonly day: Day;
  readonly answer: Extract<DayAnswer, { kind: 'planned' }>;
  /** How often the plan as proposed ends on time, beside what the unit asks; undefined where nothing is asked. */
  readonly onTime: string | undefined;
  /** By name: the time each has been told. */
  readonly told: ReadonlyMap<string, string>;
  readonly planner: Planner;
};

/** A planned day in the hand: as a list or as a board of chairs, moved, locked, undone, planned again, tried out. */
export function DrawnDay({ day, answer, onTime, told, planner }: Props) {
  const [state, act] = useReducer(drawingAfter, undefined, () => drawingOf(day, answer.plan));
  const [refused, setRefused] = useState<Improved>();
  const { view } = useSearch({ from: '/sessions/$session/times' });
  const navigate = useNavigate({ from: '/sessions/$session/times' });
  const isBoard = view === 'board';
  const { now, proposed, past, held, chosen } = state;
  const said = brokenInDrawing(day, now);
  const isMoved = now.plan !== proposed.plan || now.chairs !== proposed.chairs;
  /** Nothing moved and nothing locked: there is nothing of one's own to plan around. */
  const isDrawn = isMoved || now.locks.some((lock) => lock !== undefined);
  const inHand = held === undefined ? undefined : visitWords(day, now, held.visit);
  const improve = (): void => {
    setRefused(undefined);
    planner.ask({ asks: 'improve', day, drawn: now, effort }, (says) => {
      if (says.says !== 'improved') return;
      if (says.improved.kind === 'improved') act({ does: 'draw', drawn: says.improved.drawn });
      else setRefused(says.improved);
    });
  };
  const isImproving = planner.working?.asks === 'improve';
  return (
    <>
      <div className={css['about']}>
        <p>{objectiveText(day, objectiveOf(day, now.plan))}</p>
        {!isMoved && onTime !== undefined && <p>{onTime}</p>}
        {!isMoved && <p className="quiet">{boundText(day, answer.objective, answer.bound, answer.isProven)}</p>}
        <div className="screenOnly">
          <ChoiceField
            label="Shown as"
            at="view"
            value={isBoard ? board : list}
            onChange={(value) => void navigate({ search: value === board ? { view: 'board' } : {}, replace: true })}
            options={[{ value: list }, { value: board }]}
          />
        </div>
        <div className={`${css['moves']} screenOnly`}>
          {past.length > 0 && <Button onClick={() => act({ does: 'undo' })}>Undo</Button>}
          {isMoved && (
            <Button onClick={() => act({ does: 'draw', drawn: { ...proposed, locks: now.locks } })}>
              Back to the proposed times
            </Button>
          )}
          {isImproving ? (
            <Button onClick={planner.stop}>Stop planning</Button>
          ) : (
            isDrawn && <Button onClick={improve}>Improve what I drew</Button>
          )}
        </div>
        {isImproving && <p aria-live="polite">Planning from this drawing; what is locked stays …</p>}
        {refused !== undefined && <NotImproved day={day} refused={refused} />}
      </div>
      {isBoard ? (
        <ChairBoard state={state} said={said} act={act} />
      ) : (
        <>
          <p className="quiet">
            Filled: a nurse is needed. Framed: the infusion, with the chair’s number. Dashed: the watch. A thin line:
            waiting.
          </p>
          <PlannedVisits
            day={day}
            drawn={now}
            told={told}
            onMove={(visit, ticks) => act({ does: 'move', visit, ticks, chairs: 0 })}
          />
        </>
      )}
      <CheckerSays said={said} holding={inHand === undefined ? undefined : oneLine(inHand)} />
      {isBoard && chosen !== undefined && (
        <ChosenVisit day={day} drawn={now} visit={chosen} told={told.get(day.visits[chosen]?.name ?? '')} act={act} />
      )}
      <TryOut day={day} plan={now.plan} planner={planner} />
    </>
  );
}

function NotImproved({ day, refused }: { day: Day; refused: Improved }) {
  if (refused.kind === 'improved') return null;
  return (
    <Note tone="stop" speaks="politely">
      {refused.kind === 'locks break rules' ? (
        <>
          <strong>Nothing was planned: what is locked breaks a rule by itself.</strong> Unlock one of them.
          <ul>
            {refused.said.map(({ says }) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </>
      ) : (
        <>
          <strong>Nothing was planned: beside what is locked there is no place for</strong>{' '}
          {refused.visits.map((visit) => day.visits[visit]?.name).join(', ')}. Unlock somebody, or see them on another
          day.
        </>
      )}
    </Note>
  );
}
