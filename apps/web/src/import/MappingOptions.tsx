import type { RegisterMapping } from '@twelvemonth/exchange';
import css from './Import.module.css';

type Props = { readonly mapping: RegisterMapping; readonly change: (mapping: RegisterMapping) => void };

const separators = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'upright bar' } as const;

/** How this file writes what every file writes: separators, decimals, dates, blanks. */
export function MappingOptions({ mapping, change }: Props) {
  return (
    <div className={css['options']}>
      <label>
        Name of this mapping
        <input value={mapping.name} onChange={(event) => change({ ...mapping, name: event.target.value })} />
      </label>
      <label>
        Columns are separated by
        <select
          value={mapping.separator}
          onChange={(event) => change({ ...mapping, separator: event.target.value as RegisterMapping['separator'] })}
        >
          {Object.entries(separators).map(([value, says]) => (
            <option key={value} value={value}>
              {says}
            </option>
          ))}
        </select>
      </label>
      <label>
        Decimal sign
        <select
          value={mapping.decimal}
          onChange={(event) => change({ ...mapping, decimal: event.target.value as RegisterMapping['decimal'] })}
        >
          <option value=".">point: 2.20</option>
          <option value=",">comma: 2,20</option>
        </select>
      </label>
      <label>
        Dates in figures
        <select
          value={mapping.dateOrder}
          onChange={(event) => change({ ...mapping, dateOrder: event.target.value as RegisterMapping['dateOrder'] })}
        >
          <option value="day month year">day month year</option>
          <option value="month day year">month day year</option>
          <option value="year month day">year month day</option>
          <option value="not known">not told by the file: choose</option>
        </select>
      </label>
      <label>
        The doses in this file were given
        <select
          value={mapping.dosesGiven}
          onChange={(event) => change({ ...mapping, dosesGiven: event.target.value as RegisterMapping['dosesGiven'] })}
        >
          <option value="this service">here: it is our own list</option>
          <option value="elsewhere">elsewhere: it is another hospital's list</option>
        </select>
      </label>
      <label>
        Rows of one person
        <select
          value={mapping.rowsPerPerson}
          onChange={(event) =>
            change({ ...mapping, rowsPerPerson: event.target.value as RegisterMapping['rowsPerPerson'] })
          }
        >
          <option value="one">one row a person</option>
          <option value="several">several, told together by number</option>
        </select>
      </label>
      <label>
        Words that mean nothing is known
        <input
          value={mapping.blanks.join(', ')}
          onChange={(event) =>
            change({
              ...mapping,
              blanks: event.target.value
                .split(',')
                .map((word) => word.trim())
                .filter((word) => word !== ''),
            })
          }
        />
      </label>
    </div>
  );
}
