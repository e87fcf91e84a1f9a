/** What a review of the course would have before it, on paper: the same sheet as the screen's. */
import {
  type Criterion,
  type ReviewSheet,
  plainDate,
  protocolInForceOn,
  recordOf,
  reviewSheetOf,
  shortDate,
  unitOfPatient,
  whyReviewed,
} from '@twelvemonth/clinical';
import { jsonText } from '../columns.ts';
import { type Command, dateOption, readOptions } from '../command.ts';
import { answeredNo, exitCodes } from '../ending.ts';
import { findPerson } from '../find-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { allUnits } from '../units.ts';

export const review: Command = {
  summary: 'what a review of the course would have before it',
  help: `twelvemonth review PATIENT [options]

PATIENT is the number or the id of their notes. Gathers doses, fractures, scans, markers and the rest, says what is missing,
and decides nothing. Ends with 1 if a review is asked for now.

  --today DATE       the day asked on (today at the unit)
  --json             the whole sheet as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      today: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    return withNotes(values, output, async (reader) => {
      const of = await findPerson(reader, positionals);
      const record = recordOf(of, await reader.ledger(of));
      const unit = (await allUnits(reader)).get(unitOfPatient(record));
      if (unit === undefined)
        throw answeredNo('This person belongs to no unit that is described in the notes: nothing can be said.');
      const today = dateOption('today', values.today) ?? unit.today;
      const protocol = protocolInForceOn(unit.context.protocols, today);
      if (protocol === undefined)
        throw answeredNo(`No protocol is in force at ${unit.unit.name}: nothing can be said.`);
      const sheet = reviewSheetOf(record, protocol, today);
      output.out(values.json ? jsonText(asJson(sheet)) : asText(sheet));
      return sheet.needed === undefined ? exitCodes.done : exitCodes.no;
    });
  },
};

const criterion = ({ asks, is, says, source }: Criterion): string => `  ${is}: ${asks} (${says}) [${source}]`;

function asText(sheet: ReviewSheet): string {
  const { needed, events, sections, failure, carryingOn, gaps } = sheet;
  return [
    `Review of the course, asked on ${shortDate(sheet.today)}: ${whyReviewed(sheet)}`,
    ...(needed === undefined || events.length < 2 ? [] : events.map(({ says }) => `  ${says}`)),
    ...sections.flatMap(({ title, lines, none }) => [
      title,
      ...(lines.length === 0 ? [`  ${none}`] : lines.map(({ says }) => `  ${says}`)),
    ]),
    `Has the treatment failed? ${failure.says}`,
    ...failure.criteria.map(criterion),
    'What speaks for carrying on',
    ...carryingOn.map(criterion),
    ...(gaps.length === 0 ? [] : ['What is missing', ...gaps.map(({ says, kind }) => `  ${says} (${kind})`)]),
    'A prescriber decides.',
  ].join('\n');
}

const asJson = ({ today, needed, events, sections, failure, carryingOn, gaps }: ReviewSheet) => ({
  today: plainDate(today),
  ...(needed === undefined ? {} : { needed: { ...needed, since: plainDate(needed.since) } }),
  events: events.map(({ on, says, entry }) => ({ on: plainDate(on), says, entry })),
  sections: sections.map(({ title, lines, none, source }) => ({
    title,
    lines: lines.map(({ says, entries }) => ({ says, entries })),
    none,
    source,
  })),
  failure,
  carryingOn,
  gaps,
});
