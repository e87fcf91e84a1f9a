import { Note } from '../../paper/Note.tsx';

/** What to know before a needle goes in. */
export const AtTheNeedle = ({ lines }: { lines: readonly string[] }) => (
  <Note tone="caution">
    {lines.map((line) => (
      <p key={line}>{line}</p>
    ))}
  </Note>
);
