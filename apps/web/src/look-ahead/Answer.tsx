import { type AheadCase, needsFor, needsSays, sessionHolds } from '@twelvemonth/planning';
import { Note } from '../paper/Note.tsx';
import { counted } from '../words/texts.ts';
import type { Ahead } from './use-ahead.ts';

const percent = 100;
const one = (value: number): string => value.toFixed(1);

const heldBy = {
  places: 'the places told',
  nurses: 'the minutes of the nurses at the chairs',
  chairs: 'the minutes of the chairs',
} as const;

type Props = {
  readonly of: AheadCase;
  readonly answer: NonNullable<Ahead['answer']>;
  readonly targetWeeks: number;
  readonly inOf100: number;
};

/** First of all: whether the wait recovers, and whether it keeps to the target. */
export function Headline({ of: { offer }, answer, targetWeeks, inOf100 }: Props) {
  const { found, chance, needed } = answer;
  const keeps = chance * percent >= inOf100;
  return (
    <Note tone={found.recovers ? (keeps ? 'done' : 'caution') : 'stop'}>
      <p>
        <strong>{found.says}</strong> {keeps ? 'The target is kept' : 'The target is not kept'}: in{' '}
        {Math.round(chance * percent)} of 100 futures nobody who joins in the third year waits longer than{' '}
        {counted(targetWeeks, 'week')}; aimed at {inOf100}.{' '}
        {needed === undefined
          ? 'No number of places was found that keeps to it.'
          : `Enough would be ${counted(needed, 'place')} a week; there are ${one(offer.placesPerWeek)}.`}
      </p>
    </Note>
  );
}

/** What the places that keep to the target take, and what holds a session as it is. */
export function Needs({ of: { service }, answer: { needed } }: Pick<Props, 'of' | 'answer'>) {
  const needs = needed === undefined ? undefined : needsFor(service, needed);
  const holds = sessionHolds(service);
  return (
    <>
      {needed !== undefined && needs !== undefined && (
        <p>
          {counted(needed, 'place')} a week would be enough. {needsSays(needs)}
        </p>
      )}
      <p className="quiet">
        A session holds {counted(Math.floor(holds.visits), 'visit')}: {heldBy[holds.heldBy]} allow no more. Places told,
        on average: {one(holds.by.places)}. The minutes of the nurses would be enough for {holds.by.nurses} at most,
        those of the chairs for {holds.by.chairs}.
      </p>
    </>
  );
}
