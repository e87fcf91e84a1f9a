/** A row that waits: tried again with corrected cells, or left out with the reason. */
import { type Author, factsOf } from '@twelvemonth/clinical';
import {
  type AcceptAnswer,
  type WaitingRow,
  registerMapping,
  type settleRowBody,
  tryAgain,
} from '@twelvemonth/exchange';
import type { z } from 'zod';
import type { AtHand } from '../at-hand.ts';
import { Refused, notHere } from '../problem.ts';
import { waitingIn } from '../register/waiting-rows.ts';
import { everyoneKnown, written } from './bring-in.ts';
import { idFrom } from './ids.ts';
import { settle } from './noted-rows.ts';

type Settling = z.infer<typeof settleRowBody>;

export async function waitingRowsOf({ notes }: AtHand): Promise<WaitingRow[]> {
  return (await notes.all('register')).flatMap((record) =>
    waitingIn(record).map(({ fingerprint, row, since, file, body }) => ({
      register: record.subject.slice('register/'.length),
      fingerprint,
      file,
      row,
      cells: { ...body.cells },
      problems: body.problems.map((problem) => ({ ...problem })),
      since,
    })),
  );
}

const nothing: AcceptAnswer = { taken: 0, people: 0, facts: 0, alreadyHere: 0, waiting: 0 };

export async function settleRow(atHand: AtHand, asked: Settling, by: Author): Promise<AcceptAnswer | Refused> {
  const register = await atHand.notes.of('register', asked.register);
  const waiting = waitingIn(register).filter(({ fingerprint }) => fingerprint === asked.fingerprint);
  if (asked.outcome === 'left out') {
    const { fingerprint, row, reason } = asked;
    return (
      (await settle(atHand, asked.register, { fingerprint, row, outcome: 'left out', reason }, by)) ?? {
        ...nothing,
        waiting: waiting.length - 1,
      }
    );
  }
  if (!waiting.some(({ row }) => row === asked.row)) return notHere('waiting row');
  const unit = await atHand.units.named(asked.register);
  const run = factsOf(register, 'import-run').findLast(({ body }) => body.fingerprint === asked.fingerprint);
  if (unit === undefined || run === undefined) return notHere('file');
  const tried = tryAgain({
    mapping: registerMapping.parse(JSON.parse(run.body.mapping)),
    waiting: waiting.map(({ row, body }) => ({ row, cells: body.cells })),
    row: asked.row,
    cells: asked.cells,
    ...(asked.sameAs === undefined ? {} : { sameAs: asked.sameAs }),
    ...(asked.notTheSame === undefined ? {} : { notTheSame: asked.notTheSame }),
    known: await everyoneKnown(atHand),
    today: unit.today,
    unit: asked.register,
    fingerprint: asked.fingerprint,
    // Other cells are another attempt: it must not be taken for the first one sent twice.
    idFrom: (text) => idFrom(`${text}|${JSON.stringify(asked.cells)}`),
  });
  if (tried.outcome === 'still waits') {
    const reasons = tried.problems.map(({ problem, says, remedy, column }) => ({
      name: problem,
      says,
      remedy,
      field: `cells.${column}`,
    }));
    return new Refused(422, 'still-waits', 'The row still cannot be taken in.', { reasons });
  }
  const refused = tried.outcome === 'proposed' ? await written(atHand, tried.proposal, by) : undefined;
  if (refused !== undefined) return refused;
  const rows = tried.outcome === 'proposed' ? tried.proposal.rows : tried.rows;
  for (const row of waiting.filter((one) => rows.includes(one.row))) {
    const settled = await settle(
      atHand,
      asked.register,
      { fingerprint: row.fingerprint, row: row.row, outcome: 'taken in' },
      by,
    );
    if (settled !== undefined) return settled;
  }
  const left = waiting.filter((one) => !rows.includes(one.row)).length;
  return tried.outcome === 'proposed'
    ? {
        taken: rows.length,
        people: 1,
        facts: tried.proposal.facts,
        alreadyHere: tried.proposal.alreadyHere,
        waiting: left,
      }
    : { ...nothing, alreadyHere: rows.length, waiting: left };
}
