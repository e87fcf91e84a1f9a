import { sentence } from '../words/texts.ts';
import css from './Protocol.module.css';
import type { VersionView } from './Version.tsx';

/** Every number that decides: what it means, its value and unit, where it comes from and how well that was read. */
export function Numbers({ version }: { version: VersionView }) {
  return (
    <>
      <h3>Numbers</h3>
      <table className={`stacks ${css['numbers']}`}>
        <thead>
          <tr>
            <th scope="col">what it means</th>
            <th scope="col">value</th>
            <th scope="col">source</th>
            <th scope="col">status</th>
          </tr>
        </thead>
        <tbody>
          {version.numbers.map((number) => (
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
              </td>
              <td className="small">{number.source}</td>
              <td className="small">{number.status}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
