import { useId } from 'react';
import css from './Field.module.css';
import { Field, type FieldWords } from './Field.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { FieldGroup } from './FieldGroup.tsx';

export type Option<Value extends string = string> = { readonly value: Value; readonly says?: string };

type Props<Value extends string> = FieldWords & {
  readonly value: Value | undefined;
  readonly onChange: (value: Value | undefined) => void;
  readonly options: readonly Option<Value>[];
  readonly size?: 'usual' | 'big';
  /** More options than this go into a list. */
  readonly openUpTo?: number;
};

const mostButtons = 8;

/** One of several, nothing preset. Up to eight stand open side by side; more go into a list, or stand in columns where they are to be told apart at a glance. */
export function ChoiceField<Value extends string>({
  value,
  onChange,
  options,
  size = 'usual',
  openUpTo = mostButtons,
  ...words
}: Props<Value>) {
  const name = useId();
  if (options.length > openUpTo) {
    return (
      <Field {...words}>
        {(wired) => (
          <select
            {...wired}
            className={css['input']}
            value={value ?? ''}
            onChange={(event) => onChange(options.find((o) => o.value === event.target.value)?.value)}
          >
            <option value="">choose</option>
            {options.map((option) => (
              <option key={option.value} value={option.value}>
                <InUnitWords>{option.says ?? option.value}</InUnitWords>
              </option>
            ))}
          </select>
        )}
      </Field>
    );
  }
  return (
    <FieldGroup {...words}>
      <div
        className={`${css['choices']} ${options.length > mostButtons ? css['columns'] : ''} ${size === 'big' ? css['big'] : ''}`}
      >
        {options.map((option) => (
          <label key={option.value} className={css['choice']}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={value === option.value}
              onChange={() => onChange(option.value)}
            />
            <InUnitWords>{option.says ?? option.value}</InUnitWords>
          </label>
        ))}
      </div>
    </FieldGroup>
  );
}
