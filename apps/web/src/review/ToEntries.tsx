import { Link } from '@tanstack/react-router';

/** To the entry a line rests on, in the person's notes; the newest where it rests on several. */
export function ToEntries({ entries, patient, about }: { entries: readonly string[]; patient: string; about: string }) {
  const newest = entries[entries.length - 1];
  if (newest === undefined) return null;
  return (
    <Link className="screenOnly small" to="/people/$patient" params={{ patient }} hash={`entry-${newest}`}>
      in the notes<span className="unseen">: {about}</span>
    </Link>
  );
}
