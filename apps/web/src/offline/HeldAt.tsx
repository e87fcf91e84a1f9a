import type { VisitView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { timeOfDay } from '../words/dates.ts';
import { thisDevice } from './this-device.ts';

/** At which screen a running dose is written on, where that is not this one. */
export function HeldAt({ held, zone }: { held: NonNullable<VisitView['held']>; zone: string | undefined }) {
  const here = thisDevice();
  if (held.device === here.id) return null;
  const wasHere = held.takenFrom === here.id;
  return (
    <div style={{ marginBottom: '0.8rem' }}>
      <Note tone={wasHere ? 'caution' : 'quiet'} speaks="politely">
        {wasHere ? (
          <>
            <strong>Taken over at {held.name}</strong> at {timeOfDay(held.at, zone)} by {held.by}. Go on there.
          </>
        ) : (
          <>
            This drip is looked after at {held.name} since {timeOfDay(held.at, zone)} ({held.by}).
          </>
        )}{' '}
        You can pause it here at any time; to let it run again or finish it here, you take it over.
      </Note>
    </div>
  );
}
