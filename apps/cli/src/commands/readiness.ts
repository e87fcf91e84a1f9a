/** The verdict for a date with its working: of one person, of everyone under care, or of a ledger written as text. */
import {
  type Day,
  type SubjectRecord,
  type Standing,
  readIn,
  readInThese,
  recordOf,
  standingOf,
  unitOfPatient,
  protocolInForceOn,
} from '@twelvemonth/clinical';
import type { StoreReader } from '@twelvemonth/store';
import { jsonText } from '../columns.ts';
import { type Command, type Output, dateOption, readOptions } from '../command.ts';
import { answeredNo, exitCodes, misused } from '../ending.ts';
import { findPerson } from '../find-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { type Answer, answerJson, answerOf, answerText, answersTable, isReady } from '../readiness-answer.ts';
import { readPerson } from '../read-person.ts';
import { readinessOfLedger } from '../readiness-of-ledger.ts';
import { wordsOf } from '../unit-words.ts';
import { type UnitContext, allUnits } from '../units.ts';

export const readinessCommand: Command = {
  summary: 'the verdict for a date, with its working',
  help: `twelvemonth readiness PATIENT [options]
twelvemonth readiness --all [options]
twelvemonth readiness --ledger FILE [options]

PATIENT is the number or the id of their notes. --all is everyone under care. --ledger reads notes written as text and needs
no service; without --on it answers the questions the file asks and compares them with what the file expects.
Ends with 0 if the dose may be given on the date to everyone asked about, as far as the notes can say, else with 1.

  --on DATE          the date of the dose (today, or the day asked on)
  --today DATE       the day asked on (today at the unit)
  --unit ID          only this unit's people
  --protocol FILE    with --ledger: the rule sheet, as JSON (the teaching sheet)
  --json             verdict, window, next steps and every requirement with its working
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      all: { type: 'boolean', default: false },
      ledger: { type: 'string' },
      protocol: { type: 'string' },
      on: { type: 'string' },
      today: { type: 'string' },
      unit: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    const asked = { on: dateOption('on', values.on), today: dateOption('today', values.today) };
    if (asked.on !== undefined && asked.today !== undefined && asked.on < asked.today)
      throw misused('--on lies before --today: a verdict is about that day or a later one.');
    if ([values.all, values.ledger !== undefined, positionals.length > 0].filter(Boolean).length !== 1)
      throw misused('Say one of: PATIENT, --all, --ledger FILE.');
    if (values.protocol !== undefined && values.ledger === undefined)
      throw misused('--protocol belongs to --ledger; people in the notes are judged by the protocol in force.');
    if (values.ledger !== undefined)
      return readinessOfLedger(
        { ...asked, ledger: values.ledger, protocol: values.protocol, json: values.json },
        output,
      );
    return withNotes(values, output, async (reader) => {
      const answers = values.all
        ? await ofEveryone(reader, { ...asked, unit: values.unit }, output)
        : [await ofOne(reader, positionals, asked)];
      if (values.json) output.out(jsonText(values.all ? answers.map(answerJson) : answers.map(answerJson)[0]));
      else output.out(values.all ? answersTable(answers) : answers.map(answerText).join('\n'));
      return answers.every(isReady) ? exitCodes.done : exitCodes.no;
    });
  },
};

type Dates = { readonly on: Day | undefined; readonly today: Day | undefined };

const answerFor = (record: SubjectRecord, { unit, context, today: now }: UnitContext, { on, today }: Dates): Answer => {
  const asked = today ?? now;
  if (on !== undefined && on < asked) throw misused(`--on lies before the day asked on: say --today too.`);
  const { says } = standingOf(record, protocolInForceOn(context.protocols, asked), asked);
  return answerOf({ record, context, today: asked, on: on ?? asked, standing: says, words: wordsOf(unit) });
};

async function ofOne(reader: StoreReader, words: readonly string[], dates: Dates): Promise<Answer> {
  const of = await findPerson(reader, words);
  const { record } = await readPerson(reader, of, await reader.ledger(of));
  const unit = (await allUnits(reader)).get(unitOfPatient(record));
  if (unit === undefined)
    throw answeredNo('This person belongs to no unit that is described in the notes: nothing can be said.');
  refuseWithoutProtocol(unit, dates);
  return answerFor(record, unit, dates);
}

function refuseWithoutProtocol({ unit, context, today: now }: UnitContext, { today }: Dates): void {
  if (protocolInForceOn(context.protocols, today ?? now) === undefined)
    throw answeredNo(`No protocol is in force at ${unit.name}: nothing can be said.`);
}

/** Care has ended, or has not begun here: no dose is thought of. */
const notUnderCare: ReadonlySet<Standing> = new Set(['died', 'closed', 'returned to referrer', 'transferred out']);

async function ofEveryone(
  reader: StoreReader,
  dates: Dates & { readonly unit: string | undefined },
  { aside }: Output,
): Promise<Answer[]> {
  const units = await allUnits(reader);
  if (dates.unit !== undefined && !units.has(dates.unit))
    throw misused(`There is no unit "${dates.unit}" (${[...units.keys()].join(', ')}).`);
  const answers: Answer[] = [];
  const unsaid = new Map<string, number>();
  const leaveOut = (why: string): void => void unsaid.set(why, (unsaid.get(why) ?? 0) + 1);
  const together: SubjectRecord[] = [];
  const answer = (record: SubjectRecord): void => {
    const id = unitOfPatient(record);
    if (dates.unit !== undefined && id !== dates.unit) return;
    const unit = units.get(id);
    if (unit === undefined) return leaveOut('belong to no unit that is described');
    const today = dates.today ?? unit.today;
    const protocol = protocolInForceOn(unit.context.protocols, today);
    if (protocol === undefined) return leaveOut(`are at ${unit.unit.name}, where no protocol is in force`);
    if (notUnderCare.has(standingOf(record, protocol, today).standing)) return leaveOut('are not under care');
    answers.push(answerFor(record, unit, { on: dates.on, today }));
  };
  await reader.everyLedger('patient', (of, entries) => {
    const record = recordOf(of, entries);
    if (readInThese(record).length > 0) together.push(record);
    else if (readIn(record) === undefined) answer(record);
  });
  for (const { subject: of } of together) answer((await readPerson(reader, of, await reader.ledger(of))).record);
  for (const [why, count] of unsaid) aside(`${count} ${why} and are left out`);
  aside(`${answers.length} under care, ${answers.filter(isReady).length} ready on the date`);
  return answers.toSorted((a, b) => a.number.localeCompare(b.number) || subjectIdOrder(a, b));
}

const subjectIdOrder = (a: Answer, b: Answer): number => (a.patient < b.patient ? -1 : a.patient > b.patient ? 1 : 0);
