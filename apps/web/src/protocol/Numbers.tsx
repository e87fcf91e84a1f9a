import { inUsUnits, numberGroups, numberKeyNames } from '@twelvemonth/clinical';
import { sentence } from '../words/texts.ts';
import css from './Protocol.module.css';
import type { VersionView } from './Version.tsx';

export const numbersAnchor = (title: string): string => `numbers-${title.toLowerCase().replaceAll(' ', '-')}`;

/** Every number that decides, by what it decides: what it means, its value and unit, where it comes from and how well that was read. */
export function Numbers({ version }: { version: VersionView }) {
  return (
    <>
      <h3 id="numbers">Numbers</h3>
      {numberGroups.map(({ title, keys }) => {
        const names = new Set<string>(keys);
        return <Group key={title} title={title} numbers={version.numbers.filter(({ key }) => names.has(key))} />;
      })}
    </>
  );
}

/** As a US unit would read it. */
function american({ key, value }: VersionView['numbers'][number]) {
  const named = numberKeyNames.find((one) => one === key);
  const says = named === undefined || value === undefined ? undefined : inUsUnits(named, value);
  return says === undefined ? null : <div className="quiet small">{says}</div>;
}

function Group({ title, numbers }: { title: string; numbers: VersionView['numbers'] }) {
  return (
    <table className={`stacks ${css['numbers']}`} id={numbersAnchor(title)}>
      <caption>
        <h4>{title}</h4>
      </caption>
      <thead>
        <tr>
          <th scope="col">what it means</th>
          <th scope="col">value</th>
          <th scope="col">source</th>
          <th scope="col">status</th>
        </tr>
      </thead>
      <tbody>
        {numbers.map((number) => (
          <tr key={number.key}>
            <th scope="row" style={{ fontWeight: 400 }}>
              {sentence(number.means)}
            </th>
            <td className={css['value']}>
              {number.value === undefined ? (
                <span className={css['empty']}>
                  empty{number.suggestion === undefined ? '' : `, suggested ${number.suggestion}`}
                </span>
              ) : (
                number.value
              )}{' '}
              {number.unit}
              {american(number)}
            </td>
            <td className="small">{number.source}</td>
            <td className="small">{number.status}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
