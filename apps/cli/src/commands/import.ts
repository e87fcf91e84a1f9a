/** Brings a register in: first as a suggestion how to read it, then as what it would write, then through the server. */
import { basename } from 'node:path';
import {
  type DryRunAnswer,
  type RegisterMapping,
  dryRun,
  dryRunAnswerOf,
  knownPerson,
  routes,
  suggestMapping,
} from '@twelvemonth/exchange';
import {
  type Day,
  type Entry,
  type Subject,
  type SubjectRecord,
  inOrderOfWriting,
  readIn,
  readInThese,
  recordOf,
  subjectId,
} from '@twelvemonth/clinical';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, type Output, dateOption, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { type PlaceOptions, placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { readPerson } from '../read-person.ts';
import { fingerprintOf, idFrom, mappingIn, registerText, tableIn } from '../register-file.ts';
import { passwordVariable, signedIn, usualServer } from '../server-calls.ts';
import { allUnits } from '../units.ts';

export const importRegister: Command = {
  summary: 'a list of people: first as proposals',
  help: `twelvemonth import FILE --suggest-mapping > mapping.json
twelvemonth import FILE --mapping mapping.json --dry-run [options]
twelvemonth import FILE --mapping mapping.json --username NAME [options]

FILE is a register as CSV. A mapping says what each column means and in which unit; look through the suggested one before
using it: what it only supposed stands on standard error. --dry-run reads the notes and writes nothing. Without it the file is
brought in through the running server, signed by the person who signs in; the password is asked, or taken from
${passwordVariable}. Rows that cannot be taken in wait there; nothing of a person is written while a row of theirs waits.
Ends with 1 if the mapping lacks something or a row waits.

  --mapping FILE     how the columns are read, as JSON
  --suggest-mapping  print a mapping to begin with
  --dry-run          say what would be written and what would wait
  --unit ID          the unit new people are referred to (the only one, if there is one)
  --username NAME    who signs the import
  --server URL       the running server (${usualServer})
  --today DATE       with --dry-run: the day asked on (today at the unit)
  --json             the whole answer as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      mapping: { type: 'string' },
      'suggest-mapping': { type: 'boolean', default: false },
      'dry-run': { type: 'boolean', default: false },
      unit: { type: 'string' },
      username: { type: 'string' },
      server: { type: 'string', default: usualServer },
      today: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw misused('Name one file.');
    const text = registerText(path, output.aside);
    if (values['suggest-mapping']) return suggest(path, text, output);
    if (values.mapping === undefined)
      throw misused('Say how the columns are read with --mapping; --suggest-mapping prints one to begin with.');
    const file: RegisterFile = { name: basename(path), text, mapping: mappingIn(values.mapping) };
    if (values['dry-run'])
      return tryOut(
        file,
        { place: values, unit: values.unit, today: dateOption('today', values.today), json: values.json },
        output,
      );
    const { username } = values;
    if (username === undefined)
      throw misused('Say who signs the import with --username, or try it out with --dry-run.');
    return bringIn(file, { server: values.server, username, unit: values.unit, json: values.json }, output);
  },
};

type RegisterFile = { readonly name: string; readonly text: string; readonly mapping: RegisterMapping };

function suggest(path: string, text: string, { out, aside }: Output): number {
  const { mapping, doubts } = suggestMapping(tableIn(text, undefined), basename(path));
  out(jsonText(mapping));
  for (const { column, says } of doubts) aside(column === undefined ? says : `${column}: ${says}`);
  return exitCodes.done;
}

async function tryOut(
  file: RegisterFile,
  options: {
    readonly place: PlaceOptions;
    readonly unit: string | undefined;
    readonly today: Day | undefined;
    readonly json: boolean;
  },
  output: Output,
): Promise<number> {
  return withNotes(options.place, output, async (reader) => {
    const units = await allUnits(reader);
    const id = oneUnit(options.unit, [...units.keys()]);
    const found = units.get(id);
    if (found === undefined) throw new Error(`a unit that is there and not there: ${id}`);
    const known: NonNullable<ReturnType<typeof knownPerson>>[] = [];
    const know = (of: Subject, entries: readonly Entry[], record: SubjectRecord): void => {
      const person = knownPerson(subjectId(of), entries, record);
      if (person !== undefined) known.push(person);
    };
    const together: Subject[] = [];
    await reader.everyLedger('patient', (of, entries) => {
      const record = recordOf(of, entries);
      if (readInThese(record).length > 0) together.push(of);
      else if (readIn(record) === undefined) know(of, entries, record);
    });
    for (const of of together) {
      const { ledgers, record } = await readPerson(reader, of, await reader.ledger(of));
      know(of, inOrderOfWriting(ledgers), record);
    }
    const table = tableIn(file.text, file.mapping);
    const fingerprint = fingerprintOf(file.text);
    const run = dryRun({
      table,
      mapping: file.mapping,
      known,
      today: options.today ?? found.today,
      unit: id,
      fingerprint,
      idFrom,
    });
    const answer = dryRunAnswerOf({ file: file.name, fingerprint, table, mapping: file.mapping, run, doubts: [] });
    output.out(options.json ? jsonText(answer) : answerText(answer));
    return answer.mappingProblems.length > 0 || answer.counts.rowsWaiting > 0 ? exitCodes.no : exitCodes.done;
  });
}

function oneUnit(asked: string | undefined, units: readonly string[]): string {
  const [only, ...others] = units;
  if (asked !== undefined && units.includes(asked)) return asked;
  if (asked !== undefined || only === undefined || others.length > 0)
    throw misused(`Choose the unit with --unit (${units.join(', ') || 'none is described yet'}).`);
  return only;
}

async function bringIn(
  file: RegisterFile,
  options: {
    readonly server: string;
    readonly username: string;
    readonly unit: string | undefined;
    readonly json: boolean;
  },
  output: Output,
): Promise<number> {
  const session = await signedIn(options.server, options.username);
  try {
    const unit =
      options.unit ??
      oneUnit(
        undefined,
        (await session.status()).units.map((one) => one.unit),
      );
    const body = { file: file.name, text: file.text, mapping: file.mapping, unit };
    const tried = await session.post(routes.dryRun, body);
    if (tried.mappingProblems.length > 0) {
      output.out(answerText(tried));
      return exitCodes.no;
    }
    const taken = await session.post(routes.accept, { ...body, fingerprint: tried.fingerprint });
    output.out(
      options.json
        ? jsonText(taken)
        : `taken in: ${taken.taken} rows, ${taken.people} people, ${taken.facts} facts; already here: ${taken.alreadyHere}; waiting: ${taken.waiting} rows`,
    );
    return taken.waiting > 0 ? exitCodes.no : exitCodes.done;
  } finally {
    await session.end();
  }
}

function answerText(answer: DryRunAnswer): string {
  const { counts } = answer;
  const lines = [
    `${answer.rows} rows: ${counts.newPeople} new people, ${counts.knownPeople} known, ${counts.newFacts} new facts, ${counts.alreadyHere} already here, ${counts.rowsWaiting} rows wait`,
    ...answer.mappingProblems.map(
      ({ column, says, remedy }) => `mapping${column === undefined ? '' : `, ${column}`}: ${says}; ${remedy}`,
    ),
  ];
  if (answer.problems.length > 0) {
    lines.push(
      '',
      columnsText(
        ['row', 'column', 'cell', '', 'says', 'remedy'],
        answer.problems.map((one) => [
          String(one.row),
          one.column,
          one.cell.replaceAll(/\s+/g, ' ').slice(0, 24),
          one.blocks ? 'waits' : 'remark',
          one.says,
          one.remedy,
        ]),
      ),
    );
  }
  for (const { who, isNew, lines: said } of answer.preview)
    lines.push('', `${who}${isNew ? ', new' : ''}`, ...said.map((line) => `  ${line}`));
  return lines.join('\n');
}
