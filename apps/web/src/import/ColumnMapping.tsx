import { type DryRunAnswer, type Meaning, type RegisterMapping, meanings } from '@twelvemonth/exchange';
import { unitInWords } from '../words/units.ts';
import css from './Import.module.css';
import { unitsForMeaning } from './meaning-units.ts';

type Props = {
  readonly columns: DryRunAnswer['columns'];
  readonly mapping: RegisterMapping;
  readonly change: (mapping: RegisterMapping) => void;
};

/** Each column with a few of its cells: what it means and, where it carries a number, its unit. */
export function ColumnMapping({ columns, mapping, change }: Props) {
  const set = (column: string, meaning: Meaning, unit: string | undefined): void => {
    const next = { column, meaning, ...(unit === undefined ? {} : { unit }) };
    const known = mapping.columns.some((each) => each.column === column);
    change({
      ...mapping,
      columns: known
        ? mapping.columns.map((each) => (each.column === column ? next : each))
        : [...mapping.columns, next],
    });
  };
  return (
    <table className={`stacks ${css['mapping']}`}>
      <thead>
        <tr>
          <th scope="col">column</th>
          <th scope="col">some of its cells</th>
          <th scope="col">means</th>
          <th scope="col">unit</th>
        </tr>
      </thead>
      <tbody>
        {columns.map(({ column, samples }) => {
          const now = mapping.columns.find((each) => each.column === column);
          const meaning = now?.meaning ?? 'ignore';
          const units = unitsForMeaning(meaning);
          return (
            <tr key={column}>
              <th scope="row">{column}</th>
              <td className={css['samples']}>{samples.slice(0, 3).join(' · ')}</td>
              <td>
                <select
                  aria-label={`Meaning of ${column}`}
                  value={meaning}
                  onChange={(event) => set(column, event.target.value as Meaning, undefined)}
                >
                  {meanings.map((each) => (
                    <option key={each} value={each}>
                      {each === 'ignore' ? 'leave out' : each}
                    </option>
                  ))}
                </select>
              </td>
              <td>
                {units.length > 0 && (
                  <select
                    aria-label={`Unit of ${column}`}
                    value={now?.unit ?? ''}
                    onChange={(event) =>
                      set(column, meaning, event.target.value === '' ? undefined : event.target.value)
                    }
                  >
                    <option value="">in the cells, or not known</option>
                    {units.map((unit) => (
                      <option key={unit} value={unit}>
                        {unitInWords(unit)}
                      </option>
                    ))}
                  </select>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
