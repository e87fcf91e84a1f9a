/**
 * Reads a ledger as text. One entry a line, `;` begins a comment, questions stand among the entries. All mistakes are told
 * at once, each with its line, what is wrong and what to write instead; nothing is guessed.
 */
import { kindNamed, kindNames } from '../kinds/index.ts';
import type { Author } from '../ledger/entry.ts';
import { roles } from '../ledger/role.ts';
import { type Subject, parseSubject } from '../ledger/subject.ts';
import {
  type NotedDraft,
  labelOfSigned,
  referencesOf,
  staffOfRole,
  undated,
  usualPerson,
  usualZone,
  wordsAfter,
} from './draft-line.ts';
import { exampleOf, remedyFor } from './example-lines.ts';
import { takeForm } from './form.ts';
import { forms } from './forms.ts';
import {
  type LineScanner,
  atEnd,
  scannerOf,
  take,
  takeLabel,
  takeOneOf,
  takePlainWord,
  takeQuoted,
  takeWords,
  want,
  withoutComment,
} from './line-scanner.ts';
import { takeMoment } from './moment-text.ts';
import { type Question, looksLikeQuestion, takeQuestion } from './question.ts';
import { schemaOf, takeFields } from './value-text.ts';

export type NotationProblem = {
  /** Counted from 1. */
  readonly line: number;
  readonly says: string;
  /** What to write instead. */
  readonly remedy: string;
};

export type ParsedLedger =
  | { readonly ok: true; readonly drafts: readonly NotedDraft[]; readonly questions: readonly Question[] }
  | { readonly ok: false; readonly problems: readonly NotationProblem[] };

type Reading = {
  subject: Subject;
  zone: string;
  readonly drafts: NotedDraft[];
  readonly lineOf: Map<NotedDraft, number>;
  /** Written as they are stored: nothing about them is checked. */
  readonly raw: Set<NotedDraft>;
  readonly questions: Question[];
  readonly problems: NotationProblem[];
};

export function parseLedger(text: string): ParsedLedger {
  const reading: Reading = {
    subject: usualPerson,
    zone: usualZone,
    drafts: [],
    lineOf: new Map(),
    raw: new Set(),
    questions: [],
    problems: [],
  };
  text.split(/\r?\n/).forEach((raw, index) => {
    // What a question expects is kept to the line's end: sentences have semicolons.
    const line = looksLikeQuestion(raw) && raw.includes('->') ? raw : withoutComment(raw);
    if (line.trim() !== '') readLine(reading, line, index + 1);
  });
  checkLabels(reading);
  if (reading.problems.length > 0) return { ok: false, problems: reading.problems.toSorted((a, b) => a.line - b.line) };
  return { ok: true, drafts: reading.drafts, questions: reading.questions };
}

const wrong = (reading: Reading, line: number, says: string, remedy: string): undefined => {
  reading.problems.push({ line, says, remedy });
  return undefined;
};

/** "cannot read "umol" here: wanted ..." */
function stopped(scanner: LineScanner): string {
  const rest = scanner.text.slice(scanner.wantedAt).trim();
  const decisive = scanner.wanted.find((what) => /that exists|never guessed/.test(what));
  const wanted = decisive ?? [...new Set(scanner.wanted)].slice(0, 6).join(', or ');
  return rest === ''
    ? `the line ends too early: wanted ${wanted}`
    : `cannot read "${rest.slice(0, 60)}": wanted ${wanted}`;
}

function readLine(reading: Reading, text: string, line: number): void {
  if (looksLikeQuestion(text)) {
    const asked = takeQuestion(text, line, reading.zone);
    if ('question' in asked) reading.questions.push(asked.question);
    else wrong(reading, line, stopped(asked.scanner), 'readiness on 10 Mar 2026 -> ready');
    return;
  }
  const scanner = scannerOf(text);
  if (takeWords(scanner, 'notes of')) {
    const named = scanner.text.slice(scanner.at).trim();
    if (parseSubject(named) === undefined) wrong(reading, line, `not a name of notes: ${named}`, 'notes of patient/p1');
    else reading.subject = named as Subject;
    return;
  }
  if (takeWords(scanner, 'zone')) {
    reading.zone = scanner.text.slice(scanner.at).trim();
    return;
  }
  readEntry(reading, scanner, line);
}

function readEntry(reading: Reading, scanner: LineScanner, line: number): void {
  let effectiveAt = undated;
  if (!/^\s*(?:#[A-Za-z0-9._-]+\s+)?person\b/.test(scanner.text)) {
    const moment = takeMoment(scanner, reading.zone);
    if (moment === undefined)
      return wrong(
        reading,
        line,
        stopped(scanner),
        'begin the line with its date: 3 Mar 2026   weight 56.2 kg measured',
      );
    effectiveAt = moment;
  }
  const label = takeLabel(scanner);
  const begins = scanner.at;
  const read = takePhrase(scanner);
  if (read === undefined) {
    const says =
      scanner.wantedAt > begins + 1
        ? stopped(scanner)
        : `no entry begins with "${scanner.text.slice(begins).trim().slice(0, 60)}"`;
    return wrong(reading, line, says, remedyFor(scanner.text));
  }
  const rest = takeRest(scanner, read.kind === 'result');
  if (rest === undefined || !atEnd(scanner)) {
    want(scanner, 'the end of the line');
    return wrong(reading, line, stopped(scanner), exampleOf(read.kind));
  }
  if (read.checked) {
    const parsed = kindNamed(read.kind).body.safeParse(read.body);
    if (!parsed.success) {
      for (const issue of parsed.error.issues) {
        const where = issue.path.map(String).join(' ');
        wrong(reading, line, `${read.kind}${where === '' ? '' : `, ${where}`}: ${issue.message}`, exampleOf(read.kind));
      }
      return;
    }
    read.body = parsed.data;
  }
  const id = label ?? (rest.signed ? labelOfSigned(reading.drafts.length) : undefined);
  const author = rest.author === undefined ? {} : { author: rest.author };
  const common = { subject: reading.subject, effectiveAt, zone: reading.zone };
  const draft = add(reading, line, {
    ...common,
    kind: read.kind,
    shape: read.shape,
    body: read.body,
    ...(rest.amends === undefined ? {} : { amends: rest.amends }),
    ...(rest.deviceAt === undefined ? {} : { deviceAt: rest.deviceAt }),
    ...(id === undefined ? {} : { id }),
    ...author,
    ...(rest.recordedAt === undefined ? {} : { recordedAt: rest.recordedAt }),
  });
  if (!read.checked) reading.raw.add(draft);
  if (rest.signed) {
    const { name, shape } = kindNamed('results-signed');
    add(reading, line, { ...common, kind: name, shape, body: { results: [id] }, ...author });
  }
}

function add(reading: Reading, line: number, draft: NotedDraft): NotedDraft {
  reading.drafts.push(draft);
  reading.lineOf.set(draft, line);
  return draft;
}

type Phrase = { kind: (typeof kindNames)[number]; shape: number; body: unknown; checked: boolean };

function takePhrase(scanner: LineScanner): Phrase | undefined {
  const start = scanner.at;
  if (takeWords(scanner, 'raw')) return takeRaw(scanner);
  let farthest: { at: number; phrase: Phrase } | undefined;
  for (const form of forms) {
    scanner.at = start;
    const { shape, body: schema } = kindNamed(form.kind);
    const body = takeForm(scanner, form, schemaOf(schema));
    if (body !== undefined && (farthest === undefined || scanner.at > farthest.at)) {
      farthest = { at: scanner.at, phrase: { kind: form.kind, shape, body, checked: true } };
    }
  }
  if (farthest !== undefined) {
    scanner.at = farthest.at;
    return farthest.phrase;
  }
  scanner.at = start;
  const kind = takeOneOf(scanner, kindNames) as Phrase['kind'] | undefined;
  if (kind === undefined) return undefined;
  const fields = takeFields(scanner, schemaOf(kindNamed(kind).body), kind);
  return fields === undefined ? undefined : { kind, shape: kindNamed(kind).shape, body: fields.value, checked: true };
}

/** What no kind of this version can hold: kept as it is stored. */
function takeRaw(scanner: LineScanner): Phrase | undefined {
  const kind = takeQuoted(scanner);
  if (kind === undefined || !takeWords(scanner, 'shape')) return undefined;
  const shape = take(scanner, /-?\d+(?:\.\d+)?/y, 'a number');
  const start = scanner.at;
  const text = takeQuoted(scanner);
  if (shape === undefined || text === undefined) return undefined;
  try {
    return {
      kind: kind.value as Phrase['kind'],
      shape: Number(shape),
      body: JSON.parse(text.value) as unknown,
      checked: false,
    };
  } catch {
    scanner.at = start;
    return want(scanner, 'a body as JSON in quotes');
  }
}

type Rest = { signed: boolean; amends?: string; author?: Author; deviceAt?: string; recordedAt?: string };

/** What may follow any entry: signed, corrects #a, by nurse jo, device "...", written "...". */
function takeRest(scanner: LineScanner, maySign: boolean): Rest | undefined {
  const rest: Rest = { signed: false };
  while (!atEnd(scanner)) {
    if (maySign && !rest.signed && takeWords(scanner, 'signed')) rest.signed = true;
    else if (takeWords(scanner, 'corrects')) {
      const amends = takeLabel(scanner);
      if (amends === undefined) return undefined;
      rest.amends = amends;
    } else if (takeWords(scanner, 'by')) {
      const role = takeOneOf(scanner, roles) as Author['role'] | undefined;
      if (role === undefined) return undefined;
      const next = /^\s*(\S*)/.exec(scanner.text.slice(scanner.at))?.[1] ?? '';
      const word = wordsAfter.includes(next) ? undefined : (takeQuoted(scanner) ?? takePlainWord(scanner));
      rest.author = { staff: word?.value ?? staffOfRole(role), role };
    } else if (takeWords(scanner, 'device')) {
      const deviceAt = takeQuoted(scanner);
      if (deviceAt === undefined) return undefined;
      rest.deviceAt = deviceAt.value;
    } else if (takeWords(scanner, 'written')) {
      const recordedAt = takeQuoted(scanner);
      if (recordedAt === undefined) return undefined;
      rest.recordedAt = recordedAt.value;
    } else return rest;
  }
  return rest;
}

/** Every label is given once, and every label that is named is given. What is written raw is kept as it is. */
function checkLabels(reading: Reading): void {
  const lineOfLabel = new Map<string, number>();
  for (const draft of reading.drafts) {
    if (draft.id === undefined) continue;
    const line = reading.lineOf.get(draft) ?? 0;
    const before = lineOfLabel.get(draft.id);
    if (before !== undefined)
      wrong(reading, line, `#${draft.id} is already the label of line ${before}`, 'give each line a label of its own');
    lineOfLabel.set(draft.id, line);
  }
  for (const draft of reading.drafts) {
    const line = reading.lineOf.get(draft) ?? 0;
    if (reading.raw.has(draft)) continue;
    for (const label of referencesOf(draft)) {
      if (!lineOfLabel.has(label))
        wrong(
          reading,
          line,
          `#${label} names no line of these notes`,
          `put #${label} before the entry it names: 3 Mar 2026 #${label} creatinine 88 umol/L`,
        );
    }
  }
}
