import { TextField } from '../../fields/TextField.tsx';

/** A drip that ran too fast by the clock or by typed times: written as what it was. Stays once something stands in it. */
export function IncidentField({
  tooFast,
  onlyIf,
  value,
  onChange,
}: {
  tooFast: boolean;
  onlyIf: 'the times are right' | 'so much has run in this time';
  value: string;
  onChange: (value: string) => void;
}) {
  return tooFast || value !== '' ? (
    <TextField
      label="Incident: what happened, and whom you told"
      help={`Only if ${onlyIf}. The nurse in charge looks at it.`}
      at="incident"
      value={value}
      onChange={onChange}
    />
  ) : null;
}
