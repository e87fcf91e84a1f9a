/** The head of a list of people: what its columns are called; a column without visible words has one for a screen reader. */
export type Column = string | { readonly unseen: string };

export function TableHead({ columns }: { readonly columns: readonly Column[] }) {
  return (
    <thead>
      <tr>
        {columns.map((column) =>
          typeof column === 'string' ? (
            <th key={column} scope="col">
              {column}
            </th>
          ) : (
            <th key={column.unseen} scope="col">
              <span className="unseen">{column.unseen}</span>
            </th>
          ),
        )}
      </tr>
    </thead>
  );
}
