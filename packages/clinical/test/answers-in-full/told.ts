/**
 * Cases as text, and what one requirement answers about them over a year and a half, word for word: every span with its verdict,
 * its working and what may be done about it. Asked on Wednesday 25 November 2026 under the teaching protocol, unless a case says
 * otherwise.
 */
import { readFileSync } from 'node:fs';
import {
  type Day,
  type Entry,
  type Evidence,
  type Judgement,
  type Path,
  type Protocol,
  type ProtocolSheet,
  type RequirementId,
  addDays,
  entriesFromDrafts,
  evidenceOf,
  plainDate,
  parseLedger,
  protocolFrom,
  recordOf,
  requirementIds,
  requirements,
  teachingSheet,
  underRegimen,
} from '@twelvemonth/clinical';
import { asked } from '../person.ts';

const DAYS = 560;

export type ToldCase = {
  readonly requirement: RequirementId;
  readonly evidence: Evidence;
  readonly entries: readonly Entry[];
  readonly protocol: Protocol;
  readonly expected: string;
};

/** "== vitamin-d: title; {"hipRepairNeedsLoading":true}; under a-regimen", the notes, "--", the answer. */
export function caseFrom(text: string): ToldCase {
  const [head = '', ...rest] = text.split('\n');
  const [name = '', ...options] = head.split('; ');
  const [id = ''] = name.split(': ');
  const requirement = requirementIds.find((one) => one === id);
  if (requirement === undefined) throw new Error(`no such requirement: ${id}`);
  const [notes = '', expected = ''] = rest.join('\n').split(/\n--(?:\n|$)/);
  const read = parseLedger(notes);
  if (!read.ok) throw new Error(`${head}: ${JSON.stringify(read.problems)}`);
  const entries = entriesFromDrafts(read.drafts, { start: '2020-01-01T00:00:00.000Z' });
  const change = options.find((one) => one.startsWith('{'));
  const sheet: ProtocolSheet = {
    ...teachingSheet,
    ...(change === undefined ? {} : (JSON.parse(change) as Partial<ProtocolSheet>)),
  };
  const made = protocolFrom(sheet);
  if (!('protocol' in made)) throw new Error('the sheet has an empty number');
  return {
    requirement,
    entries,
    evidence: evidenceOf(recordOf('patient/person', entries), asked),
    protocol: underRegimen(made.protocol, options.find((one) => one.startsWith('under '))?.slice('under '.length)),
    expected: expected.trim(),
  };
}

/** The cases of a file, as text: the first line names the requirement and the case. */
export const casesIn = (file: string): readonly string[] =>
  readFileSync(new URL(`./${file}`, import.meta.url), 'utf8')
    .split('\n== ')
    .slice(1);

export const judgeOf = ({ requirement, evidence, protocol }: ToldCase, change: Partial<Evidence> = {}) =>
  requirements[requirement].judge({ ...evidence, ...change }, protocol);

export const days = (): readonly Day[] => Array.from({ length: DAYS }, (_, ahead) => addDays(asked, ahead));

/** What is said of one day: verdict, cause and working. */
function saidOf(one: ToldCase, judged: Judgement): string {
  const { verdict, cause, nearLimit, exception } = judged;
  const { says, inputs, formulas, thresholds, cautions } = judged.working();
  const line = (entry: string | undefined): string =>
    entry === undefined ? '' : ` (entry ${one.entries.findIndex(({ id }) => id === entry) + 1})`;
  return [
    `${verdict.toUpperCase()} ${cause}${nearLimit ? ', near the limit' : ''}${exception === undefined ? '' : ` by exception${line(exception)}`}`,
    `   ${says}`,
    ...inputs.map(
      ({ label, text, on, entry }) =>
        `   - ${label}: ${text}${on === undefined ? '' : `, ${plainDate(on)}`}${line(entry)}`,
    ),
    ...formulas.map(({ name, put, gives, source }) => `   = ${name}: ${put} = ${gives} [${source}]`),
    ...thresholds.map((limit) =>
      'key' in limit ? `   # ${limit.key}` : `   # ${limit.label}: ${limit.text} [${limit.source}]`,
    ),
    ...cautions.map((caution) => `   ! ${caution}`),
  ].join('\n');
}

function pathOf(path: Path, one: ToldCase): string {
  if (path.is === 'ready') return 'nothing to do';
  if (path.is === 'waiting') return `wait: ${path.what}`;
  if (path.is === 'blocked')
    return `${path.by.who}, ${path.by.step}: ${path.by.what}${path.by.settled === undefined ? '; no date even then' : ''}`;
  return JSON.stringify(path.needs, (key, value: unknown) =>
    ['notBefore', 'first', 'last'].includes(key)
      ? plainDate(value as Day)
      : key === 'results'
        ? (value as string[]).map((id) => `entry ${one.entries.findIndex((entry) => entry.id === id) + 1}`)
        : value,
  );
}

/** The same, but for the days of a step that moves along with the day asked about. */
const apartFromSteps = (said: string): string => said.replaceAll(/"(first|last|notBefore)":"[\d-]+"/g, '');

/** Every span, oldest first: its first day, then what is said; with the days on which it begins. */
export function answerInFull(one: ToldCase): { readonly text: string; readonly begins: readonly Day[] } {
  const judge = judgeOf(one);
  const lines: string[] = [];
  const begins: Day[] = [];
  let before = '';
  const known = new Map<Judgement, string>();
  for (const day of days()) {
    const judged = judge.on(day);
    const why = known.get(judged) ?? saidOf(one, judged);
    known.set(judged, why);
    const said = `${why}\n   > ${pathOf(judge.path(day), one)}`;
    if (apartFromSteps(said) !== before) {
      lines.push(`${plainDate(day)} ${said}`);
      begins.push(day);
    }
    before = apartFromSteps(said);
  }
  return { text: lines.join('\n'), begins };
}
