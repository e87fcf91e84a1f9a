/** What became of a file that was brought in: its run, the rows that wait, and how each was settled. */
import { subject } from '../ledger/subject.ts';
import { factsOf } from '../record/patient-record.ts';
import type { ActNamed } from './act.ts';
import { draftNow } from './draft.ts';
import { recordIn } from './ledgers.ts';
import { fieldWrong } from './check-fields.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideNoteImport(act: ActNamed<'note import'>, now: Surroundings): Decided {
  const of = subject('register', act.register);
  const refusals =
    act.run.waiting === act.waiting.length
      ? []
      : [
          fieldWrong(
            'run.waiting',
            `${act.run.waiting} rows are said to wait and ${act.waiting.length} are given`,
            'every waiting row is kept',
          ),
        ];
  return decided(refusals, () => [
    draftNow(of, 'import-run', act.run, now),
    ...act.waiting.map((row) => draftNow(of, 'row-waiting', row, now)),
  ]);
}

export function decideSettleRow(act: ActNamed<'settle row'>, now: Surroundings): Decided {
  const of = subject('register', act.register);
  const record = recordIn(now, of);
  const same = (row: { fingerprint: string; row: number }): boolean =>
    row.fingerprint === act.body.fingerprint && row.row === act.body.row;
  const refusals: Refusal[] = [];
  if (!factsOf(record, 'row-waiting').some(({ body }) => same(body)))
    refusals.push(refusal('row-unknown', `Row ${act.body.row} of that file does not wait.`, { field: 'body.row' }));
  if (factsOf(record, 'row-settled').some(({ body }) => same(body)))
    refusals.push(refusal('row-already-settled', `Row ${act.body.row} was settled before.`, { field: 'body.row' }));
  if (act.body.outcome === 'left out' && act.body.reason === undefined)
    refusals.push(fieldWrong('body.reason', 'a row is left out for a reason', 'why it is not taken in'));
  return decided(refusals, () => [draftNow(of, 'row-settled', act.body, now)]);
}
