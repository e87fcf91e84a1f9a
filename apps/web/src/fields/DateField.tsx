import { addDays, day, plainDate } from '@twelvemonth/clinical';
import { useState } from 'react';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { useDateOrder } from '../words/american.ts';
import { dayInWords, readTypedDate, shortDay, unreadableDate } from '../words/dates.ts';
import css from './Field.module.css';
import { Field, type FieldWords } from './Field.tsx';
import { unsendable } from './unsendable.ts';

type Props = FieldWords & {
  /** `YYYY-MM-DD`; undefined while nothing usable is typed. */
  readonly value: string | undefined;
  readonly onChange: (value: string | undefined) => void;
  /** Buttons beside it. */
  readonly near?: 'past' | 'none';
};

/** A date typed day first, month first where that is how it is written, and read back in words with its weekday, so that a slip of a finger is seen. No calendar to aim at. */
export function DateField({ value, onChange, near = 'none', ...words }: Props) {
  const today = useServiceToday();
  const order = useDateOrder();
  const [typed, setTyped] = useState(value === undefined ? '' : shortDay(value));
  const [left, setLeft] = useState(false);
  const shownFor = typed.trim() === '' ? undefined : readTypedDate(typed, today, order);
  // A value set from outside (a form emptied, a date chosen elsewhere) replaces what was typed.
  const shown =
    value !== undefined && shownFor !== value
      ? shortDay(value)
      : value === undefined && shownFor !== undefined
        ? ''
        : typed;
  const cannotBeRead = typed.trim() !== '' && shownFor === undefined ? unreadableDate(typed, order) : undefined;
  const unreadable = left ? cannotBeRead : undefined;
  const take = (date: string): void => {
    setTyped(shortDay(date));
    onChange(date);
  };
  return (
    <Field {...words} trouble={words.trouble ?? unreadable}>
      {(wired) => (
        <div className={css['row']}>
          <input
            {...wired}
            ref={unsendable(cannotBeRead)}
            className={`${css['input']} ${css['short']}`}
            value={shown}
            placeholder={order === 'day first' ? 'day month year' : 'month day year'}
            autoComplete="off"
            onBlur={() => setLeft(true)}
            onChange={(event) => {
              setTyped(event.target.value);
              setLeft(false);
              onChange(readTypedDate(event.target.value, today, order));
            }}
          />
          {near === 'past' && (
            <>
              <Button size="slim" onClick={() => take(today)}>
                today
              </Button>
              <Button size="slim" onClick={() => take(plainDate(addDays(day(today), -1)))}>
                yesterday
              </Button>
            </>
          )}
          <span className={css['echo']} aria-live="polite">
            {value === undefined ? '' : dayInWords(value)}
          </span>
        </div>
      )}
    </Field>
  );
}
