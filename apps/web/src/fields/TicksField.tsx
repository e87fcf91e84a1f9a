import css from './Field.module.css';
import type { FieldWords } from './Field.tsx';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { FieldGroup } from './FieldGroup.tsx';

type Props<Value extends string> = FieldWords & {
  readonly value: readonly Value[];
  readonly onChange: (value: readonly Value[]) => void;
  readonly options: readonly { readonly value: Value; readonly says?: string }[];
  readonly size?: 'usual' | 'big';
};

/** Any of several. */
export function TicksField<Value extends string>({ value, onChange, options, size = 'usual', ...words }: Props<Value>) {
  return (
    <FieldGroup {...words}>
      <div className={`${css['choices']} ${size === 'big' ? css['big'] : ''}`}>
        {options.map((option) => (
          <label key={option.value} className={css['choice']}>
            <input
              type="checkbox"
              checked={value.includes(option.value)}
              onChange={(event) =>
                onChange(event.target.checked ? [...value, option.value] : value.filter((v) => v !== option.value))
              }
            />
            <InUnitWords>{option.says ?? option.value}</InUnitWords>
          </label>
        ))}
      </div>
    </FieldGroup>
  );
}
