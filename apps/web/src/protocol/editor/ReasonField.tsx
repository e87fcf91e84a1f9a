import { TextField } from '../../fields/TextField.tsx';
import { type Draft, setReason } from './draft.ts';

/** Asked for once something without a source of its own has been changed. */
export function ReasonField({ draft, path, changed }: { draft: Draft; path: string; changed: boolean }) {
  if (!changed) return null;
  return (
    <TextField
      label="Where this comes from"
      at={`reasons.${path}`}
      value={draft.sheet.reasons?.[path] ?? ''}
      onChange={(text) => setReason(draft, path, text)}
    />
  );
}
