import type { Drawing } from '@twelvemonth/charts';

/** The table a picture also is. */
export function TableOf({ table }: { table: Drawing['table'] }) {
  return (
    <div className="scroll">
      <table className="stacks">
        <caption className="unseen">{table.caption}</caption>
        <thead>
          <tr>
            {table.head.map((title) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, column) => (
                // oxlint-disable-next-line react/no-array-index-key -- columns never move: their place is their identity
                <td key={column} data-head={table.head[column]}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
