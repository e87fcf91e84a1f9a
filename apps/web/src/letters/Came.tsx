import { Note } from '../paper/Note.tsx';
import type { Many } from './use-many.ts';

/** What came of one press for a list: how many are done, and each that is not, with its reason. */
export function Came({ of, busy }: { of: Many['progress']; busy: boolean }) {
  if (of === undefined || busy) return null;
  return (
    <Note tone={of.left.length === 0 ? 'done' : 'caution'} speaks="politely">
      <p>
        {of.done - of.left.length} of {of.of} done.
      </p>
      {of.left.length > 0 && (
        <ul>
          {of.left.map((says) => (
            <li key={says}>{says}</li>
          ))}
        </ul>
      )}
    </Note>
  );
}
