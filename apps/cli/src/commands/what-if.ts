/** The past months, had another rule sheet been in force. Counts only; nothing is written. */
import {
  type Day,
  type OtherOutcome,
  type Protocol,
  type WhatIfSum,
  addMonths,
  contextsThen,
  isPlainDate,
  day,
  nothingSummed,
  plainDate,
  protocolVersions,
  recordOf,
  starterProtocols,
  subject,
  summedWith,
  whatIf,
} from '@twelvemonth/clinical';
import { type StoreReader, ledgersOfPerson, ledgersOfService } from '@twelvemonth/store';
import { todayIn } from '../clock.ts';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, type Output, readOptions, wholeOption } from '../command.ts';
import { answeredNo, exitCodes, misused } from '../ending.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { protocolOrMisused, sheetFromFile } from '../rule-sheet.ts';
import { allUnits } from '../units.ts';
import { type UnitWords, wordsOf } from '../unit-words.ts';

const usualMonths = '12';
const mostMonths = 120;

export const whatIfCommand: Command = {
  summary: 'past months under another rule sheet',
  help: `twelvemonth what-if (--sheet FILE | --version NAME) [options]

Decides the goes and put-offs of the past months again, from what was known then, as if another rule sheet had been in force:
doses it would have put off, bloods drawn again, days of delay; and doses put off that it would have let go. Nothing is written.

  --sheet FILE       a rule sheet as JSON
  --version NAME     a version in the notes, adopted or not
  --unit UNIT        which unit; needed if there are several
  --months N         how far back (${usualMonths})
  --today DATE       counted back from this day
  --list             each decision that would have come out otherwise
  --json             all of it as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      sheet: { type: 'string' },
      version: { type: 'string' },
      unit: { type: 'string' },
      months: { type: 'string', default: usualMonths },
      today: { type: 'string' },
      list: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const months = wholeOption('months', values.months, 1, mostMonths);
    if (values.today !== undefined && !isPlainDate(values.today)) throw misused('--today is a date, YYYY-MM-DD.');
    const today = values.today === undefined ? undefined : day(values.today);
    return withNotes(values, output, async (reader) => {
      const unit = await unitMeant(reader, values.unit);
      const draft = await draftMeant(reader, unit.id, values, output);
      const until = today ?? todayIn(unit.zone);
      const asked = { unit: unit.id, draft, from: addMonths(until, -months), until };
      const { sum, others } = await everyone(reader, asked);
      if (values.json)
        output.out(
          jsonText({ from: plainDate(asked.from), until: plainDate(until), version: draft.version, ...sum, others }),
        );
      else {
        output.out(unit.words(told(sum, asked)));
        if (values.list && others.length > 0)
          output.out(
            columnsText(
              ['patient', 'on', 'would have been', 'because', unit.words('bloods again'), 'delay'],
              others.map(({ patient, on, kind, because, bloodsAgain, delayDays }) => [
                patient,
                on,
                kind,
                because,
                bloodsAgain ? 'yes' : '',
                delayDays === undefined ? 'no date' : `${delayDays} days`,
              ]),
            ),
          );
      }
      return exitCodes.done;
    });
  },
};

async function unitMeant(
  reader: StoreReader,
  named: string | undefined,
): Promise<{ id: string; zone: string; words: UnitWords }> {
  const units = await allUnits(reader);
  const ids = [...units.keys()];
  const id = named ?? (ids.length === 1 ? ids[0] : undefined);
  const found = id === undefined ? undefined : units.get(id);
  if (id === undefined || found === undefined)
    throw ids.length === 0
      ? answeredNo('No unit is described in the notes.')
      : misused(`Say which unit: ${ids.join(', ')}.`);
  return { id, zone: found.unit.zone, words: wordsOf(found.unit) };
}

async function draftMeant(
  reader: StoreReader,
  unit: string,
  { sheet, version }: { readonly sheet?: string; readonly version?: string },
  output: Output,
): Promise<Protocol> {
  if ((sheet === undefined) === (version === undefined))
    throw misused('Say which sheet: --sheet FILE or --version NAME.');
  if (sheet !== undefined) {
    const read = sheetFromFile(sheet, output);
    return protocolOrMisused(read.sheet, read.added);
  }
  const of = subject('protocol', unit);
  const found =
    protocolVersions(recordOf(of, await reader.ledger(of))).findLast((one) => one.version === version) ??
    starterProtocols
      .map((starter) => ({ version: starter.version, sheet: starter, added: [] }))
      .find((one) => one.version === version);
  if (found?.sheet === undefined) throw misused(`No version is called "${version}", or it cannot be read.`);
  return protocolOrMisused(found.sheet, found.added);
}

async function everyone(
  reader: StoreReader,
  asked: { unit: string; draft: Protocol; from: Day; until: Day },
): Promise<{ sum: WhatIfSum; others: readonly OtherOutcome[] }> {
  const service = await ledgersOfService(reader);
  const contexts = contextsThen();
  const others: OtherOutcome[] = [];
  let sum = nothingSummed;
  for (const of of await reader.subjects('patient')) {
    const found = whatIf(of, await ledgersOfPerson(reader, of, service), contexts, asked);
    sum = summedWith(sum, found);
    others.push(...found.others);
  }
  return { sum, others };
}

const told = (sum: WhatIfSum, { from, until, draft }: { from: Day; until: Day; draft: Protocol }): string =>
  [
    `${plainDate(from)} to ${plainDate(until)} under ${draft.version}: ${sum.decisions} decisions`,
    `doses given that would have been put off   ${sum.putOff}`,
    `  of them with blood to be drawn again      ${sum.bloodsAgain}`,
    `  of them without a date                    ${sum.withoutDate}`,
    `  days of delay, all together               ${sum.delayDays} (longest ${sum.longestDelayDays})`,
    `doses put off that would have been ready    ${sum.ready}`,
  ].join('\n');
