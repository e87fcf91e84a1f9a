import { useId } from 'react';
import css from './Field.module.css';
import type { FieldWords } from './Field.tsx';
import { FieldGroup } from './FieldGroup.tsx';
import { useWritesAmerican } from '../words/american.ts';
import { unitInWords } from '../words/units.ts';
import type { TypedQuantity } from './typed-quantity.ts';

type Props = FieldWords & {
  readonly value: TypedQuantity;
  readonly onChange: (value: TypedQuantity) => void;
  readonly units: readonly string[];
};

/** What laboratories, scales and rulers of the United States report in (clinical fact sheet 2f). */
const usUnits: ReadonlySet<string> = new Set(['mg/dL', 'ng/mL', 'g/dL', 'pg/mL', 'lb', 'in']);

/** A measured value exactly as it was reported. "<20" keeps its sign; the unit is chosen each time, and the one used in the country stands first. */
export function QuantityField({ value, onChange, units, ...words }: Props) {
  const id = useId();
  const firstThere = useWritesAmerican() ? units.filter((unit) => usUnits.has(unit)) : [];
  return (
    <FieldGroup {...words}>
      <div className={css['row']}>
        <select
          className={css['input']}
          style={{ width: '4.6rem' }}
          aria-label={`${words.label}: sign`}
          value={value.comparator}
          onChange={(event) => onChange({ ...value, comparator: event.target.value as TypedQuantity['comparator'] })}
        >
          <option value="">=</option>
          <option value="<">&lt;</option>
          <option value="<=">≤</option>
          <option value=">">&gt;</option>
          <option value=">=">≥</option>
        </select>
        <input
          className={css['input']}
          style={{ width: '7rem' }}
          aria-label={`${words.label}: value`}
          inputMode="decimal"
          autoComplete="off"
          value={value.value}
          onChange={(event) => onChange({ ...value, value: event.target.value.replace(',', '.') })}
        />
        <span className={css['choices']}>
          {[...firstThere, ...units.filter((unit) => !firstThere.includes(unit))].map((unit) => (
            <label key={unit} className={css['choice']}>
              <input
                type="radio"
                name={id}
                checked={value.unit === unit}
                onChange={() => onChange({ ...value, unit })}
              />
              {unitInWords(unit)}
            </label>
          ))}
        </span>
      </div>
    </FieldGroup>
  );
}
