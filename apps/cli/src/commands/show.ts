/** A person's notes as text, as they are or as they were known at an earlier moment. */
import { type Subject, inOrderOfWriting, printLedger } from '@twelvemonth/clinical';
import { jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { instantOf } from '../clock.ts';
import { answeredNo, exitCodes, misused } from '../ending.ts';
import { findPerson } from '../find-person.ts';
import { readPerson } from '../read-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';

export const show: Command = {
  summary: "a person's notes, as text",
  help: `twelvemonth show PATIENT [options]

PATIENT is the number or the id of their notes.

  --known-at MOMENT  only what was written by then: 2026-11-20T17:00Z
  --written          say of each line when it was written
  --json             the entries as they are stored
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      'known-at': { type: 'string' },
      written: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
    });
    const said = values['known-at'];
    const knownAt = said === undefined ? undefined : instantOf(said);
    if (said !== undefined && knownAt === undefined)
      throw misused(`--known-at ${said} is not a moment: write it as 2026-11-20T17:00Z.`);
    return withNotes(values, output, async (reader) => {
      const of: Subject = await findPerson(reader, positionals);
      const { ledgers, record } = await readPerson(
        reader,
        of,
        await reader.ledger(of),
        knownAt === undefined ? {} : { knownAt },
      );
      const all = inOrderOfWriting(ledgers);
      const entries = knownAt === undefined ? all : all.filter((entry) => entry.recordedAt <= knownAt);
      if (entries.length === 0) throw answeredNo('Nothing had been written of this person by then.');
      output.out(
        values.json ? jsonText(entries) : printLedger(entries, { person: of, written: values.written }).trimEnd(),
      );
      for (const { identities } of record.together ?? [])
        output.aside(`read together with the notes of number ${identities.at(-1)?.number ?? 'not recorded'}`);
      if (entries.length < all.length) output.aside(`${all.length - entries.length} later entries are left out`);
      return exitCodes.done;
    });
  },
};
