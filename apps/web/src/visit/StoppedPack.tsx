import type { VisitView } from '@twelvemonth/exchange';
import { Note } from '../paper/Note.tsx';
import { sentence } from '../words/texts.ts';

export const stoppedWords = {
  prepared: 'The pack prepared here is of a stopped batch.',
  runs: 'What runs now is of a stopped batch.',
  'stands still': 'What stands still here is of a stopped batch.',
  given: 'What they had today is of a stopped batch.',
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
