/** Readiness of a ledger written as text, without any service: by the teaching sheet or a sheet from a file. */
import { readFileSync } from 'node:fs';
import {
  type BodyOfKind,
  type Day,
  type DecisionContext,
  type Entry,
  type Protocol,
  type Question,
  type SubjectRecord,
  day,
  dayFromCivil,
  entriesFromDrafts,
  everyDay,
  parseLedger,
  plural,
  quantityText,
  recordOf,
  teachingSheet,
  unitsOf,
  verdicts,
} from '@twelvemonth/clinical';
import { todayIn } from './clock.ts';
import { jsonText } from './columns.ts';
import type { Output } from './command.ts';
import { cannotOpen, exitCodes, misused } from './ending.ts';
import { protocolOrMisused, sheetFromFile } from './rule-sheet.ts';
import { type Answer, answerJson, answerOf, answerText, isReady } from './readiness-answer.ts';

export type LedgerAsked = {
  readonly ledger: string;
  readonly protocol: string | undefined;
  readonly on: Day | undefined;
  readonly today: Day | undefined;
  readonly json: boolean;
};

export function readinessOfLedger(asked: LedgerAsked, output: Output): number {
  const context: DecisionContext = {
    protocols: [{ from: dayFromCivil(1800, 1, 1), protocol: protocolOf(asked.protocol, output) }],
    calendar: everyDay,
  };
  const { entries, questions } = ledgerOf(asked.ledger);
  for (const says of unitsThatDoNotFit(entries)) output.aside(says);
  output.aside(
    asked.protocol === undefined
      ? 'by the teaching sheet: never for a real person'
      : `by the sheet ${asked.protocol}; any day is a blood day`,
  );
  if (asked.on === undefined && asked.today === undefined && questions.length > 0)
    return answerQuestions(entries, questions, context, asked.json, output);
  const today = asked.today ?? asked.on ?? todayIn('Europe/London');
  const answer = answerOf({ record: recordAt(entries), context, today, on: asked.on ?? today });
  output.out(asked.json ? jsonText(answerJson(answer)) : answerText(answer));
  return isReady(answer) ? exitCodes.done : exitCodes.no;
}

function textOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw cannotOpen(`The file ${path} cannot be read.`);
  }
}

function protocolOf(path: string | undefined, output: Output): Protocol {
  if (path === undefined) return protocolOrMisused(teachingSheet);
  const { sheet, added } = sheetFromFile(path, output);
  return protocolOrMisused(sheet, added);
}

function ledgerOf(path: string): { readonly entries: readonly Entry[]; readonly questions: readonly Question[] } {
  const parsed = parseLedger(textOf(path));
  if (!parsed.ok)
    throw misused(
      `${path} cannot be read:\n${parsed.problems.map(({ line, says, remedy }) => `  line ${line}: ${says}; ${remedy}`).join('\n')}\n`,
    );
  const [first] = parsed.drafts;
  if (first === undefined) throw misused(`${path} holds no entry.`);
  if (parsed.drafts.some((draft) => draft.subject !== first.subject))
    throw misused(`${path} holds the notes of more than one subject.`);
  return {
    entries: entriesFromDrafts(parsed.drafts, { start: '2000-01-01T00:00:00.000Z' }),
    questions: parsed.questions,
  };
}

/** Kept as it was written and used by nothing: a person is asked which unit was meant. */
const unitsThatDoNotFit = (entries: readonly Entry[]): readonly string[] =>
  entries.flatMap(({ kind, body, effectiveAt }) => {
    if (kind !== 'result') return [];
    const { analyte, quantity } = body as BodyOfKind<'result'>;
    const units: readonly string[] = unitsOf[analyte];
    return units.includes(quantity.unit)
      ? []
      : [
          `${effectiveAt}: ${analyte} ${quantityText(quantity)} decides nothing: it is not reported in ${quantity.unit}. Is it ${plural(units)}?`,
        ];
  });

const recordAt = (entries: readonly Entry[], knownAt?: string): SubjectRecord =>
  recordOf(entries[0]?.subject ?? 'patient/person', entries, knownAt === undefined ? {} : { knownAt });

type Answered = {
  readonly question: Question;
  readonly answer: Answer;
  readonly as: 'as expected' | 'not as expected' | 'not compared';
};

/** Answers what the file asks. An expectation that is a verdict is compared; ends with 1 if one is not met. */
function answerQuestions(
  entries: readonly Entry[],
  questions: readonly Question[],
  context: DecisionContext,
  json: boolean,
  output: Output,
): number {
  const answered = questions
    .filter((question) => question.asks === 'readiness')
    .map((question): Answered => {
      const on = day(question.on);
      const today = question.today === undefined ? on : day(question.today);
      const answer = answerOf({ record: recordAt(entries, question.knownBy), context, today, on });
      return { question, answer, as: comparison(question.expected, answer) };
    });
  if (json)
    output.out(
      jsonText(
        answered.map(({ question, answer, as }) => ({
          line: question.line,
          expected: question.expected,
          outcome: as,
          ...answerJson(answer),
        })),
      ),
    );
  else
    for (const { question, answer, as } of answered)
      output.out(
        `line ${question.line}: on ${answer.view.on}: ${answer.view.headlineOn}${as === 'not compared' ? '' : `; ${as}${as === 'not as expected' ? `: ${question.expected}` : ''}`}`,
      );
  const compared = answered.filter(({ as }) => as !== 'not compared');
  if (compared.length > 0) return compared.every(({ as }) => as === 'as expected') ? exitCodes.done : exitCodes.no;
  return answered.every(({ answer }) => isReady(answer)) ? exitCodes.done : exitCodes.no;
}

/** What is expected begins with a verdict; what follows after a colon or a semicolon is for the reader. */
function comparison(expected: string | undefined, { view }: Answer): Answered['as'] {
  const verdict = verdicts.find(
    (candidate) =>
      expected === candidate ||
      expected?.startsWith(`${candidate}:`) === true ||
      expected?.startsWith(`${candidate};`) === true ||
      expected?.startsWith(`${candidate},`) === true,
  );
  if (verdict === undefined) return 'not compared';
  return verdict === view.verdictOn ? 'as expected' : 'not as expected';
}
