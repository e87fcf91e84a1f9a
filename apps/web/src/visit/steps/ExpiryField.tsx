import { dayFromCivil, daysInMonth, plainDate } from '@twelvemonth/clinical';
import { useState } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import type { FieldWords } from '../../fields/Field.tsx';
import { dayInWords, readTypedDate } from '../../words/dates.ts';

/** Reads an expiry as packs print it: a whole date, or month and year, which hold until the month's last day. */
export function readExpiry(typed: string): string | undefined {
  const month = /^\s*(\d{1,2})\s*[ ./-]\s*(\d{4})\s*$/.exec(typed);
  if (month === null) return readTypedDate(typed, '2999-12-31');
  const [m, y] = [Number(month[1]), Number(month[2])];
  return m < 1 || m > 12 ? undefined : plainDate(dayFromCivil(y, m, daysInMonth(y, m)));
}

type Props = FieldWords & { readonly value: string | undefined; readonly onChange: (date: string | undefined) => void };

export function ExpiryField({ value, onChange, ...words }: Props) {
  const [typed, setTyped] = useState('');
  const unreadable =
    typed.trim() !== '' && value === undefined && typed.trim().length >= 6
      ? 'Write month and year (04 2028) or the whole date (30 4 2028).'
      : undefined;
  return (
    <>
      <TextField
        {...words}
        help="As printed: month and year, or the whole date."
        short
        trouble={unreadable}
        value={typed}
        onChange={(text) => {
          setTyped(text);
          onChange(readExpiry(text));
        }}
      />
      {value !== undefined && <p aria-live="polite">may be used until {dayInWords(value)}</p>}
    </>
  );
}
