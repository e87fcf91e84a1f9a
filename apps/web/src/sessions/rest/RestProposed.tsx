import {
  type RestOfDay,
  type RestProposal,
  brokenInDrawing,
  clockAt,
  leavesAt,
  objectiveOf,
  seenIn,
  stillToCome,
  toTell,
} from '@twelvemonth/planning';
import { useReducer } from 'react';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { counted } from '../../words/texts.ts';
import { ChairBoard } from '../board/ChairBoard.tsx';
import { CheckerSays } from '../board/CheckerSays.tsx';
import { ChosenVisit } from '../board/ChosenVisit.tsx';
import { drawingAfter, drawingFrom } from '../board/drawing-state.ts';
import { oneLine, visitWords } from '../board/visit-words.ts';
import css from './Rest.module.css';
import { TellThem } from './TellThem.tsx';

type Props = {
  readonly session: string;
  readonly rest: RestOfDay;
  readonly proposal: RestProposal;
  /** By name. */
  readonly patients: ReadonlyMap<string, string>;
  readonly told: ReadonlyMap<string, string>;
};

/** A proposal for the rest of the day: who is told what and why, and the board on which it can still be changed by hand. */
export function RestProposed({ session, rest, proposal, patients, told }: Props) {
  const { day, now: moment, isHere } = rest;
  const [state, act] = useReducer(drawingAfter, undefined, () => drawingFrom(day, proposal.drawn));
  const { now, held, chosen, past } = state;
  const said = stillToCome(brokenInDrawing(day, now), moment);
  const inHand = held === undefined ? undefined : visitWords(day, now, held.visit);
  const nameOf = (visit: number): string => day.visits[visit]?.name ?? '';
  const last = Math.max(...seenIn(day, now.plan).map(({ visit, times }) => leavesAt(visit, times)), 0);
  const moved = toTell(rest, now.plan)
    .map(({ visit, from, to, because }) => ({
      name: nameOf(visit),
      patient: patients.get(nameOf(visit)),
      from: told.get(nameOf(visit)) ?? clockAt(day, from),
      to: clockAt(day, to),
      because,
    }))
    // Whose new time is written down has been told it.
    .filter(({ from, to }) => from !== to);
  return (
    <>
      <p>
        {counted(day.visits.length, 'person is', 'people are')} still to be seen or finished. The last leaves at{' '}
        {clockAt(day, last)}; the unit closes at {clockAt(day, day.closes)}. Waiting from now on, all together:{' '}
        {objectiveOf(day, now.plan).wait * day.minutesPerTick} minutes.
      </p>
      {proposal.lost.length > 0 && (
        <Note tone="stop">
          <strong>No place today any more for {proposal.lost.map(nameOf).join(', ')}.</strong> Book another day with
          each of them.
          {proposal.enough.length > 0 && (
            <>
              {' '}
              Any one of these would be enough to see everyone:
              <ul>
                {proposal.enough.map((one) => (
                  <li key={one}>{one}</li>
                ))}
              </ul>
            </>
          )}
        </Note>
      )}
      {proposal.stuck.length > 0 && (
        <Note tone="stop">
          <strong>Here, and not finished within the day: {proposal.stuck.map(nameOf).join(', ')}.</strong> A longer day
          or more hands are needed for them now.
        </Note>
      )}
      <TellThem session={session} moved={moved} />
      <ChairBoard state={state} said={said} act={act} moment={moment} />
      <CheckerSays said={said} holding={inHand === undefined ? undefined : oneLine(inHand)} />
      {past.length > 0 && (
        <div className={`${css['acts']} screenOnly`}>
          <Button onClick={() => act({ does: 'undo' })}>Undo</Button>
        </div>
      )}
      {chosen !== undefined && (
        <ChosenVisit
          day={day}
          drawn={now}
          visit={chosen}
          told={isHere[chosen] === true ? undefined : told.get(nameOf(chosen))}
          isHere={isHere[chosen] === true}
          act={act}
        />
      )}
    </>
  );
}
