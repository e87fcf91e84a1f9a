/**
 * Rows kept beside the ledgers so that lists are quick. They are never the truth: a subject's rows are made again from its
 * whole ledger whenever it grows, and `rebuild` makes all of them again.
 */
import type { Subject } from '@twelvemonth/clinical';
import { derivedTables, type DerivedQuery, type DerivedRow, type DerivedTable, type StoredRow } from './contract.ts';

export const derivedTableNames = Object.keys(derivedTables) as DerivedTable[];
export const columnsOf = (table: DerivedTable): string[] => Object.keys(derivedTables[table]);

/** The columns lists are read by; every list is also reachable by subject. */
const indexed: Readonly<Record<DerivedTable, readonly (readonly string[])[]>> = {
  person: [['number_digits'], ['unit']],
  standing: [
    ['standing', 'on_day'],
    ['owner', 'unit'],
  ],
  place: [['session'], ['on_day']],
  dose: [['batch'], ['on_day']],
  task: [['unit', 'due_day']],
  session: [['unit', 'on_day'], ['on_day']],
};

/** `textType` is how the database spells a text that sorts by code point, as JavaScript and SQLite do. */
export function derivedTableDefinitions(textType: string, integerType: string, options = ''): string[] {
  return derivedTableNames.flatMap((table) => {
    const columns = Object.entries(derivedTables[table]).map(
      ([name, type]) => `${quoted(name)} ${type === 'text' ? textType : integerType}`,
    );
    return [
      `create table ${quoted(table)} (subject ${textType} not null, key ${textType} not null, ${columns.join(', ')}, primary key (subject, key))${options}`,
      ...indexed[table].map(
        (names) =>
          `create index ${quoted(`${table}_by_${names.join('_')}`)} on ${quoted(table)} (${names.map(quoted).join(', ')})`,
      ),
    ];
  });
}

export const quoted = (name: string): string => `"${name}"`;

/** A row's values in the order of its table's columns. A column left out is null; one that does not exist is a defect. */
export function valuesOf(row: DerivedRow): (string | number | null)[] {
  const names = columnsOf(row.table);
  const unknown = Object.keys(row.columns).find((name) => !names.includes(name));
  if (unknown !== undefined) throw new Error(`derived table ${row.table} has no column ${unknown}`);
  return names.map((name) => row.columns[name] ?? null);
}

const identity = (row: Pick<DerivedRow, 'table' | 'key'>): string => `${row.table}\n${row.key}`;

export type DerivedChanges = {
  readonly remove: readonly DerivedRow[];
  readonly add: readonly DerivedRow[];
  /** Rows that stay with other values, and which of their columns are other. */
  readonly change: readonly { readonly row: DerivedRow; readonly columns: readonly string[] }[];
};

/** What must change so that the stored rows are the wanted ones; what stays as it is costs nothing. */
export function derivedChanges(stored: readonly DerivedRow[], wanted: readonly DerivedRow[]): DerivedChanges {
  const before = new Map(stored.map((row) => [identity(row), row]));
  const after = new Map(wanted.map((row) => [identity(row), row]));
  if (after.size !== wanted.length) throw new Error('a projection made two derived rows with the same table and key');
  const change = wanted.flatMap((row) => {
    const was = before.get(identity(row));
    const columns = was === undefined ? [] : differingColumns(was, row);
    return columns.length === 0 ? [] : [{ row, columns }];
  });
  return {
    remove: stored.filter((row) => !after.has(identity(row))),
    add: wanted.filter((row) => !before.has(identity(row))),
    change,
  };
}

function differingColumns(was: DerivedRow, is: DerivedRow): string[] {
  const [before, after] = [valuesOf(was), valuesOf(is)];
  return columnsOf(is.table).filter((_, index) => before[index] !== after[index]);
}

export const derivedRowOf = (table: DerivedTable, row: StoredRow): DerivedRow => ({
  table,
  key: row.key,
  columns: Object.fromEntries(columnsOf(table).map((name) => [name, row[name] ?? null])),
});

/** SQL for a query; `marker(n)` is how the database writes its nth parameter, `position` its function "where in this text". */
export type Dialect = {
  readonly marker: (n: number) => string;
  readonly position: (inText: string, text: string) => string;
};
export type Sql = { readonly text: string; readonly values: (string | number)[] };

export function rowsSql(query: DerivedQuery, dialect: Dialect): Sql {
  const filter = whereSql(query, dialect);
  const order = [...(query.orderBy ?? []), 'subject', 'key'].map((name) => `${column(query.table, name)} nulls first`);
  const limit = query.limit === undefined ? '' : ` limit ${whole(query.limit)}`;
  const columns = ['subject', 'key', ...columnsOf(query.table)].map(quoted).join(', ');
  return {
    text: `select ${columns} from ${quoted(query.table)}${filter.text} order by ${order.join(', ')}${limit}`,
    values: filter.values,
  };
}

export function countSql(query: Pick<DerivedQuery, 'table' | 'where'>, dialect: Dialect): Sql {
  const filter = whereSql(query, dialect);
  return { text: `select count(*) as n from ${quoted(query.table)}${filter.text}`, values: filter.values };
}

function whereSql(query: DerivedQuery, dialect: Dialect): Sql {
  const values: (string | number)[] = [];
  const parameter = (value: string | number): string => dialect.marker(values.push(value));
  const conditions = Object.entries(query.where ?? {}).map(([name, value]) =>
    value === null ? `${column(query.table, name)} is null` : `${column(query.table, name)} = ${parameter(value)}`,
  );
  if (query.between !== undefined) {
    const { from, until } = query.between;
    conditions.push(`${column(query.table, query.between.column)} between ${parameter(from)} and ${parameter(until)}`);
  }
  if (query.contains !== undefined && query.contains.text !== '') {
    conditions.push(
      `${dialect.position(column(query.table, query.contains.column), parameter(query.contains.text))} > 0`,
    );
  }
  return { text: conditions.length === 0 ? '' : ` where ${conditions.join(' and ')}`, values };
}

function column(table: DerivedTable, name: string): string {
  if (name !== 'subject' && name !== 'key' && !Object.hasOwn(derivedTables[table], name))
    throw new Error(`derived table ${table} has no column ${name}`);
  return quoted(name);
}

const whole = (limit: number): number => {
  if (!Number.isSafeInteger(limit) || limit < 0) throw new TypeError(`a limit is a whole number, not ${limit}`);
  return limit;
};

/** The range of names that begin with `kind/`: '0' is the character after '/'. */
export const kindRange = (kind: string): readonly [from: Subject, before: Subject] => [
  `${kind}/` as Subject,
  `${kind}0` as Subject,
];
