import { lineLookedAlong } from '@twelvemonth/clinical';
import { TicksField } from '../../fields/TicksField.tsx';

/** What whoever lets the drip run says with one tick, never preset. */
export function AlongTheLineTick({
  label,
  value,
  onChange,
}: {
  label: string;
  value: typeof lineLookedAlong | undefined;
  onChange: (value: typeof lineLookedAlong | undefined) => void;
}) {
  return (
    <TicksField
      label={label}
      help="A line that runs freely empties the bag in minutes; the clamp stays shut until the rate is set."
      at="alongTheLine"
      size="big"
      value={value === undefined ? [] : [value]}
      onChange={([looked]) => onChange(looked)}
      options={[{ value: lineLookedAlong, says: 'I looked: a vented set, no air in it, the clamp shut' }]}
    />
  );
}
