import type { ClockView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

const words: Readonly<Record<ClockView['tier'], (medicine: string) => string>> = {
  running: (medicine) => `${medicine} is still working`,
  'on the worklist': (medicine) => `${medicine}: find what follows now`,
  'first in line': (medicine) => `${medicine}: first in line`,
  alarm: (medicine) => `What follows ${medicine} is late: alarm`,
  'highest alarm': (medicine) => `What follows ${medicine} is very late: highest alarm`,
};

const capitalised = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

/** A bone medicine that waits for its successor. Nothing of such a person waits. */
export function MedicineClock({ clock }: { clock: ClockView }) {
  const alarm = clock.tier === 'alarm' || clock.tier === 'highest alarm';
  return (
    <Note tone={alarm ? 'stop' : clock.tier === 'running' ? 'quiet' : 'caution'}>
      <p>
        <strong>{capitalised(words[clock.tier](clock.medicine))}.</strong> {capitalised(clock.says)}.
      </p>
      {clock.prescriberToday !== undefined && (
        <p>
          <strong>{capitalised(clock.prescriberToday)}.</strong>
        </p>
      )}
      {clock.ask.length > 0 && <p>Ask: {clock.ask.join(' ')}</p>}
    </Note>
  );
}
