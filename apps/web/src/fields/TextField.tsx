import css from './Field.module.css';
import { Field, type FieldWords } from './Field.tsx';

type Props = FieldWords & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly lines?: 'one' | 'several';
  readonly type?: 'text' | 'password' | 'tel' | 'email';
  readonly autoComplete?: string;
  readonly short?: boolean;
  readonly inputMode?: 'text' | 'numeric' | 'decimal';
  /** The one field a person came for: it has the focus when the form opens. */
  readonly first?: boolean;
};

export function TextField({
  value,
  onChange,
  lines = 'one',
  type = 'text',
  autoComplete = 'off',
  short = false,
  inputMode,
  first = false,
  ...words
}: Props) {
  return (
    <Field {...words}>
      {(wired) =>
        lines === 'several' ? (
          <textarea
            {...wired}
            className={css['input']}
            value={value}
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <input
            {...wired}
            className={`${css['input']} ${short ? css['short'] : ''}`}
            type={type}
            inputMode={inputMode}
            value={value}
            autoComplete={autoComplete}
            // The one field a person came for; never in the middle of a page.
            // oxlint-disable-next-line jsx-a11y/no-autofocus -- only for the one field a person came for
            autoFocus={first}
            onChange={(event) => onChange(event.target.value)}
          />
        )
      }
    </Field>
  );
}
