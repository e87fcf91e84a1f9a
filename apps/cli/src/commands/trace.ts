/** Batch trace from the notes on disk, also when no server runs: who had a batch, or which batches a person had. */
import {
  type SubjectRecord,
  type BatchInPerson,
  type Fact,
  batchSubject,
  batchesOf,
  dosesWithoutBatch,
  entryText,
  isBatch,
  isToldBefore,
  latest,
  plainDate,
  recordOf,
  shortDate,
  stopOf,
  subjectId,
  toTellOf,
  toldOf,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { answeredNo, exitCodes, misused } from '../ending.ts';
import { findPerson } from '../find-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { readPerson } from '../read-person.ts';

export const traceCommand: Command = {
  summary: 'who had a batch, or which batches a person had',
  help: `twelvemonth trace --batch BATCH [options]
twelvemonth trace --person PATIENT [options]

Both ways, from the notes of people: every dose and every pack opened, wherever it was given, and who has been told.
Ends with 1 where nobody had the batch, or the person had none.

  --batch BATCH      as printed on the pack; spaces and small letters make no difference
  --person PATIENT   the number or the id of their notes
  --json             the rows as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values } = readOptions(args, {
      ...placeOptions,
      batch: { type: 'string' },
      person: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    const { batch, person } = values;
    if ((batch === undefined) === (person === undefined)) throw misused('Say either --batch or --person.');
    return withNotes(values, output, async (reader) => {
      const rows =
        batch === undefined ? await ofPerson(reader, person ?? '') : await ofBatch(reader, batch, output.aside);
      const [first] = rows;
      if (values.json) output.out(jsonText(rows));
      else if (first !== undefined)
        output.out(
          columnsText(
            Object.keys(first),
            rows.map((row) => Object.values(row)),
          ),
        );
      if (first === undefined)
        throw answeredNo(batch === undefined ? 'No batch stands in these notes.' : 'Nobody had it.');
      return exitCodes.done;
    });
  },
};

type Row = Readonly<Record<string, string>>;

const whatOf = ({ dose }: BatchInPerson): string =>
  dose === undefined ? 'pack opened, no dose in the notes' : entryText(dose);

async function ofBatch(reader: StoreReader, batch: string, aside: (text: string) => void): Promise<readonly Row[]> {
  const of = batchSubject(batch);
  const said = recordOf(of, await reader.ledger(of));
  const stop = toTellOf(said);
  for (const fact of said.all) aside(`${shortDate(fact.on)}: ${entryText(fact)}`);
  const rows: { readonly on: number; readonly row: Row }[] = [];
  await reader.everyLedger('patient', (subject, entries) => {
    const record = recordOf(subject, entries);
    for (const here of batchesOf(record).filter((one) => isBatch(one.batch, batch)))
      rows.push({ on: here.on, row: personRow(record, here, batch, stop) });
  });
  return rows.toSorted((a, b) => b.on - a.on).map(({ row }) => row);
}

function personRow(
  record: SubjectRecord,
  here: BatchInPerson,
  batch: string,
  stop: Fact<'batch-stopped'> | undefined,
): Row {
  const identity = latest(record, 'identity')?.body;
  const told = toldOf(record, batch);
  return {
    on: plainDate(here.on),
    number: identity?.number ?? subjectId(record.subject),
    name: identity === undefined ? 'no name recorded' : `${identity.given} ${identity.family}`,
    telephone: latest(record, 'contact')?.body.telephone ?? 'no telephone',
    what: whatOf(here),
    told:
      told === undefined
        ? 'not told'
        : `told ${shortDate(told.on)}, ${told.body.how}${isToldBefore(told, stop) ? ': before it was stopped as it is now' : ''}`,
  };
}

async function ofPerson(reader: StoreReader, person: string): Promise<readonly Row[]> {
  const of = await findPerson(reader, [person]);
  const { record } = await readPerson(reader, of, await reader.ledger(of));
  const rows: Row[] = [];
  for (const one of batchesOf(record)) {
    const subject = batchSubject(one.batch);
    const stop = stopOf(recordOf(subject, await reader.ledger(subject)), one.preparation?.body.scan?.productNumber);
    rows.push({
      on: plainDate(one.on),
      batch: one.batch,
      what: whatOf(one),
      stopped: stop === undefined ? 'not stopped' : `${stop.body.why}: ${stop.body.reason}`,
    });
  }
  for (const dose of dosesWithoutBatch(record))
    rows.push({ on: plainDate(dose.on), batch: 'not in the notes', what: entryText(dose), stopped: 'not known' });
  return rows;
}
