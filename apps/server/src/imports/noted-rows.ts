/** What became of a file, kept in the register's own notes: its run, the rows that wait, and those that no longer do. */
import { type Author, factsOf } from '@twelvemonth/clinical';
import type { RegisterMapping } from '@twelvemonth/exchange';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import { waitingIn } from '../register/waiting-rows.ts';
import { idFrom } from './ids.ts';

export type NotedRow = {
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly problems: readonly {
    readonly column: string;
    readonly problem: string;
    readonly says: string;
    readonly remedy: string;
  }[];
};

export type Ran = {
  readonly file: string;
  readonly unit: string;
  readonly fingerprint: string;
  readonly mapping: RegisterMapping;
  readonly rows: number;
  readonly taken: number;
  readonly waiting: readonly NotedRow[];
};

/** Notes the run, unless nothing came of it that is not noted already. Rows that waited and no longer do are settled. */
export async function noteRun(atHand: AtHand, ran: Ran, by: Author): Promise<Refused | undefined> {
  const register = await atHand.notes.of('register', ran.unit);
  const before = factsOf(register, 'row-waiting').filter(({ body }) => body.fingerprint === ran.fingerprint);
  const known = new Set(before.map(({ body }) => body.row));
  const fresh = ran.waiting.filter(({ row }) => !known.has(row));
  const notedBefore = factsOf(register, 'import-run').some(({ body }) => body.fingerprint === ran.fingerprint);
  if (!notedBefore || ran.taken > 0 || fresh.length > 0) {
    const run = {
      file: ran.file,
      fingerprint: ran.fingerprint,
      mapping: JSON.stringify(ran.mapping),
      rows: ran.rows,
      taken: ran.taken,
      waiting: fresh.length,
      known: Math.max(0, ran.rows - ran.taken - ran.waiting.length),
    };
    const waiting = fresh.map(({ row, cells, problems }) => ({
      fingerprint: ran.fingerprint,
      row,
      cells,
      problems: problems.map(({ column, problem, says, remedy }) => ({ column, problem, says, remedy })),
    }));
    const id = idFrom(`note import|${ran.unit}|${register.lastSeq}|${JSON.stringify(run)}`);
    const noted = await doAct(atHand, { id, act: { name: 'note import', register: ran.unit, run, waiting }, by });
    if (noted instanceof Refused) return noted;
  }
  const stillWaiting = new Set(ran.waiting.map(({ row }) => row));
  for (const { row, fingerprint } of waitingIn(register)) {
    if (fingerprint !== ran.fingerprint || stillWaiting.has(row)) continue;
    const settled = await settle(atHand, ran.unit, { fingerprint, row, outcome: 'taken in' }, by);
    if (settled instanceof Refused) return settled;
  }
  return undefined;
}

export async function settle(
  atHand: AtHand,
  register: string,
  body: {
    readonly fingerprint: string;
    readonly row: number;
    readonly outcome: 'taken in' | 'left out';
    readonly reason?: string;
  },
  by: Author,
): Promise<Refused | undefined> {
  const answer = await doAct(atHand, {
    id: idFrom(`settle row|${register}|${JSON.stringify(body)}`),
    act: { name: 'settle row', register, body },
    by,
  });
  return answer instanceof Refused ? answer : undefined;
}
