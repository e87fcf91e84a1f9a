import type { VisitView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { sentence } from '../words/texts.ts';

export const stoppedWords = {
  prepared: 'The pack that is prepared is stopped.',
  runs: 'The pack that runs now is stopped.',
  'stands still': 'The pack whose drip stands still is stopped.',
  given: 'The pack they had today is stopped.',
} as const satisfies Record<NonNullable<VisitView['stoppedPack']>['state'], string>;

/** The batch was recalled, or put aside, after the pack was prepared: told at the chair at once. */
export function StoppedPack({ stopped }: { stopped: NonNullable<VisitView['stoppedPack']> }) {
  return (
    <div style={{ marginBottom: '0.8rem' }}>
      <Note tone="stop" speaks="at once">
        <p>
          <strong>{stoppedWords[stopped.state]}</strong> {sentence(stopped.says)}.
        </p>
        <p>{stopped.whatNow}</p>
      </Note>
    </div>
  );
}
