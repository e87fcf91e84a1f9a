/** Rows of a register that could not be taken in and that nobody has settled yet. */
import { type Fact, type SubjectRecord, factsOf } from '@twelvemonth/clinical';

export type WaitingRow = {
  readonly fingerprint: string;
  readonly row: number;
  readonly since: string;
  readonly body: Fact<'row-waiting'>['body'];
  readonly file: string;
};

const key = (fingerprint: string, row: number): string => `${fingerprint} ${row}`;

export function waitingIn(register: SubjectRecord): WaitingRow[] {
  const settled = new Set(factsOf(register, 'row-settled').map(({ body }) => key(body.fingerprint, body.row)));
  const files = new Map(factsOf(register, 'import-run').map(({ body }) => [body.fingerprint, body.file]));
  return factsOf(register, 'row-waiting')
    .filter(({ body }) => !settled.has(key(body.fingerprint, body.row)))
    .map(({ body, recordedAt }) => ({
      fingerprint: body.fingerprint,
      row: body.row,
      since: recordedAt,
      body,
      file: files.get(body.fingerprint) ?? '',
    }));
}
