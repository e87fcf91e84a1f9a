/** Rows as aligned columns of plain text. */
export function columnsText(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [header, ...rows];
  const widths = header.map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  return all
    .map((row) =>
      row
        .map((cell, column) => (column === row.length - 1 ? cell : cell.padEnd(widths[column] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export const jsonText = (value: unknown): string => JSON.stringify(value, undefined, 2);
