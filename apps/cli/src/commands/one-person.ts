/** Two notes that may be one person's: shown side by side, and what somebody says of them. */
import { randomUUID } from 'node:crypto';
import {
  type Act,
  type Compared,
  type Identifier,
  type SubjectRecord,
  comparedBy,
  newestAnswers,
  shortDate,
  sideBySide,
  subjectId,
} from '@twelvemonth/clinical';
import { routes } from '@twelvemonth/exchange';
import type { StoreReader } from '@twelvemonth/store';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { exitCodes, misused } from '../ending.ts';
import { findPerson } from '../find-person.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { readPerson } from '../read-person.ts';
import { passwordVariable, signedIn, usualServer } from '../server-calls.ts';

const sayings = ['may-be-one', 'one', 'confirm', 'two', 'apart'] as const;
type Saying = (typeof sayings)[number];

export const onePerson: Command = {
  summary: "two people's notes side by side: one person or two",
  help: `twelvemonth one-person PATIENT OTHER [options]
twelvemonth one-person PATIENT OTHER --say WHAT --reason TEXT --username NAME [options]

Without --say it reads both notes and shows what agrees and what differs. With --say it goes through the running server,
signed by the person who signs in; the password is asked, or taken from ${passwordVariable}.

  --say may-be-one   nobody is sure yet: neither is ready until somebody says
  --say one          they are one person; the notes of PATIENT are kept. Takes two people: another one confirms
  --say confirm      the second person confirms; from then on the two are read as one
  --say two          they are two people
  --say apart        they were read as one and should not be (OTHER by the id of their notes)
  --identifiers LIST what agrees (for two: what differs), with commas: ${comparedBy.join(', ')}
  --reason TEXT      how you know
  --username NAME    who signs
  --server URL       the running server (${usualServer})
  --json             the comparison as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      say: { type: 'string' },
      identifiers: { type: 'string' },
      reason: { type: 'string' },
      username: { type: 'string' },
      server: { type: 'string', default: usualServer },
      json: { type: 'boolean', default: false },
    });
    const [one, two, ...more] = positionals;
    if (one === undefined || two === undefined || more.length > 0)
      throw misused('Say PATIENT and OTHER; a number with spaces stands in quotation marks.');
    const apart = values.say === 'apart';
    const found = await withNotes(values, output, async (reader) => {
      const these = await recordFor(reader, one);
      return { these, other: apart ? two : await recordFor(reader, two) };
    });
    const { these, other } = found;
    if (values.say === undefined) {
      if (typeof other === 'string') throw new Error('a comparison without the other notes');
      output.out(values.json ? jsonText(sideBySide(these, other)) : comparisonText(these, other));
      return exitCodes.done;
    }
    const act = actFor(sayingOf(values.say), {
      patient: subjectId(these.subject),
      other: typeof other === 'string' ? other : subjectId(other.subject),
      identifiers: identifiersIn(values.identifiers),
      reason: values.reason,
    });
    if (values.username === undefined) throw misused('Say who signs with --username.');
    const session = await signedIn(values.server, values.username);
    try {
      output.out((await session.post(routes.act, { id: randomUUID(), act })).says);
    } finally {
      await session.end();
    }
    return exitCodes.done;
  },
};

async function recordFor(reader: StoreReader, said: string): Promise<SubjectRecord> {
  const of = await findPerson(reader, [said]);
  return (await readPerson(reader, of, await reader.ledger(of))).record;
}

function comparisonText(these: SubjectRecord, other: SubjectRecord): string {
  const row = ({ identifier, these: one, other: two, says }: Compared): string[] => [
    identifier,
    one ?? 'not recorded',
    two ?? 'not recorded',
    says,
  ];
  const answer = newestAnswers(these).find(({ body }) => body.other === subjectId(other.subject));
  const said =
    answer === undefined
      ? 'Nobody has said whether they are one person or two.'
      : `${answer.body.answer} (${answer.author.staff}, ${shortDate(answer.on)}): ${answer.body.reason}`;
  return `${columnsText(['', subjectId(these.subject), subjectId(other.subject), ''], sideBySide(these, other).map(row))}\n\n${said}`;
}

function sayingOf(text: string): Saying {
  const saying = sayings.find((one) => one === text);
  if (saying === undefined) throw misused(`--say ${text} is none of ${sayings.join(', ')}.`);
  return saying;
}

function identifiersIn(text: string | undefined): readonly Identifier[] {
  if (text === undefined) return [];
  return text.split(',').map((one) => {
    const identifier = comparedBy.find((known) => known === one.trim());
    if (identifier === undefined) throw misused(`"${one.trim()}" is none of ${comparedBy.join(', ')}.`);
    return identifier;
  });
}

function actFor(
  saying: Saying,
  said: {
    readonly patient: string;
    readonly other: string;
    readonly identifiers: readonly Identifier[];
    readonly reason: string | undefined;
  },
): Act {
  const { patient, other, identifiers, reason } = said;
  if (reason === undefined) throw misused('Say how you know with --reason.');
  if (saying !== 'may-be-one' && saying !== 'apart' && identifiers.length === 0)
    throw misused('Say what you compared with --identifiers.');
  const about = { patient, other, reason };
  switch (saying) {
    case 'may-be-one':
      return { name: 'may be one', ...about };
    case 'one':
      return { name: 'say one person', ...about, agree: identifiers };
    case 'confirm':
      return { name: 'confirm one person', ...about, agree: identifiers };
    case 'two':
      return { name: 'say two people', ...about, differ: identifiers };
    case 'apart':
      return { name: 'read apart', ...about };
  }
}
