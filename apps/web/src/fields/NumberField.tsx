import { useState } from 'react';
import css from './Field.module.css';
import { Field, type FieldWords } from './Field.tsx';
import { unsendable } from './unsendable.ts';

type Props = FieldWords & {
  readonly value: number | undefined;
  readonly onChange: (value: number | undefined) => void;
  /** Written after the field: "mmHg", "doses". */
  readonly unit?: string | undefined;
};

const read = (typed: string): number | undefined => {
  const text = typed.trim().replace(',', '.');
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : undefined;
};

/** A count or a measured number that is stored as a number. Laboratory values keep their text: see QuantityField. */
export function NumberField({ value, onChange, unit, ...words }: Props) {
  const [typed, setTyped] = useState(value === undefined ? '' : String(value));
  const shown =
    read(typed) === value ? typed : value === undefined ? (read(typed) === undefined ? typed : '') : String(value);
  const unreadable = shown.trim() !== '' && read(shown) === undefined ? 'Figures only.' : undefined;
  return (
    <Field {...words} trouble={words.trouble ?? unreadable}>
      {(wired) => (
        <div className={css['row']}>
          <input
            {...wired}
            ref={unsendable(unreadable)}
            className={`${css['input']} ${css['short']}`}
            inputMode="decimal"
            autoComplete="off"
            value={shown}
            onChange={(event) => {
              setTyped(event.target.value);
              onChange(read(event.target.value));
            }}
          />
          {unit !== undefined && <span>{unit}</span>}
        </div>
      )}
    </Field>
  );
}
