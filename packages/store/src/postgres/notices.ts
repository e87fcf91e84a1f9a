/**
 * Commits of every server, told in order in this process. The database's own notification is only a hint that can be lost;
 * the table of commits is what is read, on every hint, after every reconnection and every fifteen seconds.
 */
import type { Client } from 'pg';
import type { Subject } from '@twelvemonth/clinical';
import { parseWrote } from '../commit-chain.ts';
import type { CommitNotice } from '../contract.ts';
import { connect, type PostgresConnection } from './connecting.ts';

const rereadEveryMs = 15_000;
const reconnectAfterMs = 1_000;
const commitsAtOnce = 500;

export type Notices = {
  /** A commit of this process, told at once if nothing came between. */
  readonly own: (notice: CommitNotice) => void;
  readonly close: () => Promise<void>;
};

export function followCommits(parts: {
  readonly connection: PostgresConnection;
  readonly from: number;
  readonly tell: (notice: CommitNotice) => void;
  /** Called whenever the database answered. */
  readonly reached: () => void;
}): Notices {
  let last = parts.from;
  let client: Client | undefined;
  let closed = false;
  let wanted = false;
  let running: Promise<void> = Promise.resolve();
  let reconnecting: NodeJS.Timeout | undefined;

  const catchUp = (): void => {
    if (wanted || closed) return;
    wanted = true;
    running = readToTheEnd(running);
  };

  const readToTheEnd = async (before: Promise<void>): Promise<void> => {
    await before;
    wanted = false;
    const open = client;
    if (open === undefined) return;
    try {
      while ((await readOn(open)) === commitsAtOnce);
      parts.reached();
    } catch {
      lost();
    }
  };

  const readOn = async (open: Client): Promise<number> => {
    const after = last;
    const notices = await commitsSince(open, after, commitsAtOnce);
    for (const notice of notices) {
      if (notice.commit <= last) continue;
      last = notice.commit;
      parts.tell(notice);
    }
    return notices.length;
  };

  const listen = async (): Promise<void> => {
    if (closed) return;
    try {
      const open = await connect({ ...parts.connection, query_timeout: rereadEveryMs }, ' listening');
      open.on('notification', catchUp);
      open.on('end', lost);
      open.on('error', lost);
      await open.query('listen twelvemonth_commit');
      if (closed) await open.end();
      else client = open;
      catchUp();
    } catch {
      lost();
    }
  };

  function lost(): void {
    if (closed || reconnecting !== undefined) return;
    const gone = client;
    client = undefined;
    gone?.removeListener('end', lost);
    void gone?.end().catch(() => undefined);
    reconnecting = setTimeout(() => {
      reconnecting = undefined;
      void listen();
    }, reconnectAfterMs);
    reconnecting.unref();
  }

  const listening = listen();
  const timer = setInterval(catchUp, rereadEveryMs);
  timer.unref();

  return {
    own: (notice) => {
      if (notice.commit !== last + 1) {
        catchUp();
        return;
      }
      last = notice.commit;
      parts.tell(notice);
    },
    close: async () => {
      closed = true;
      clearInterval(timer);
      clearTimeout(reconnecting);
      await listening;
      await running;
      await client?.end().catch(() => undefined);
    },
  };
}

async function commitsSince(client: Client, after: number, limit: number): Promise<CommitNotice[]> {
  const commits = await client.query<{ number: string; wrote: string[] | null; expired: Subject[] | null }>(
    `select c.number,
        (select array_agg(a.wrote order by a.position) from act a where a.commit_number = c.number) as wrote,
        (select array_agg(t.subject::text) from tombstone t where t.commit_number = c.number) as expired
      from commit_log c where c.number > $1 order by c.number limit $2`,
    [after, limit],
  );
  return commits.rows.map((row) => {
    const grown = new Map<Subject, number>((row.expired ?? []).map((subject) => [subject, 0]));
    for (const { subject, seq } of (row.wrote ?? []).flatMap(parseWrote)) grown.set(subject, seq);
    return { commit: Number(row.number), subjects: [...grown].map(([subject, seq]) => ({ subject, seq })) };
  });
}
