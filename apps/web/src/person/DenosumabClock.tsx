import type { DenosumabView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';

const words: Readonly<Record<DenosumabView['tier'], string>> = {
  running: 'Denosumab is still working',
  'on the worklist': 'Denosumab: find the replacement now',
  'first in line': 'Denosumab: first in line',
  alarm: 'Denosumab is late: alarm',
  'highest alarm': 'Denosumab is very late: highest alarm',
};

/** A denosumab that waits for its successor. Nothing of such a person waits. */
export function DenosumabClock({ clock }: { clock: DenosumabView }) {
  const alarm = clock.tier === 'alarm' || clock.tier === 'highest alarm';
  return (
    <Note tone={alarm ? 'stop' : clock.tier === 'running' ? 'quiet' : 'caution'}>
      <p>
        <strong>{words[clock.tier]}.</strong> {clock.says}.
      </p>
      {clock.prescriberToday !== undefined && (
        <p>
          <strong>{clock.prescriberToday}.</strong>
        </p>
      )}
      {clock.ask.length > 0 && <p>Ask: {clock.ask.join(' ')}</p>}
    </Note>
  );
}
