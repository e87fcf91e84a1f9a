import { useState } from 'react';
import { TextField } from '../../fields/TextField.tsx';
import type { FieldWords } from '../../fields/Field.tsx';
import { useDateOrder } from '../../words/american.ts';
import { dayInWords } from '../../words/dates.ts';
import { readExpiry } from '../read-expiry.ts';

type Props = FieldWords & { readonly value: string | undefined; readonly onChange: (date: string | undefined) => void };

export function ExpiryField({ value, onChange, ...words }: Props) {
  const order = useDateOrder();
  const [typed, setTyped] = useState('');
  const unreadable =
    typed.trim() !== '' && value === undefined && typed.trim().length >= 6
      ? `Write month and year (04 2028) or the whole date (${order === 'day first' ? '30 4' : '4 30'} 2028).`
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
          onChange(readExpiry(text, order));
        }}
      />
      {value !== undefined && <p aria-live="polite">may be used until {dayInWords(value)}</p>}
    </>
  );
}
