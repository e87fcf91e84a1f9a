/** A derived row as the store keeps it, told structurally: this package knows no store. */
export type RowTable = 'person' | 'standing' | 'place' | 'dose' | 'task' | 'session';
export type Row = {
  readonly table: RowTable;
  readonly key: string;
  readonly columns: Readonly<Record<string, string | number | null>>;
};
