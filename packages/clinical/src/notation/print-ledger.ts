/** A ledger as text, one entry a line, that a nurse can read and `parseLedger` reads back. */
import { kindNamed } from '../kinds/index.ts';
import type { Uuid } from '../ledger/entry.ts';
import type { Subject } from '../ledger/subject.ts';
import {
  type NotedDraft,
  kindOf,
  labelOfSigned,
  referencesOf,
  staffOfRole,
  undated,
  usualAuthor,
  usualPerson,
  usualZone,
  wordsAfter,
} from './draft-line.ts';
import { formText } from './form.ts';
import { forms } from './forms.ts';
import { isPlainWord, quoted } from './line-scanner.ts';
import { momentText } from './moment-text.ts';
import { fieldsText, referenceFields, schemaOf } from './value-text.ts';

export type PrintOptions = {
  /** Whose notes: lines of another subject are headed by its name. */
  readonly person?: Subject;
  /** Say when each line was written, too. */
  readonly written?: boolean;
};

/** What no kind of this version can hold, and what names an entry that is not here, is written as it is stored. */
function isRaw(draft: NotedDraft, here: ReadonlySet<Uuid>): boolean {
  const kind = kindOf(draft);
  if (kind === undefined || draft.shape !== kindNamed(kind).shape) return true;
  return referencesOf(draft).some((id) => !here.has(id)) || !kindNamed(kind).body.safeParse(draft.body).success;
}

const rawText = (draft: NotedDraft): string =>
  `raw ${quoted(draft.kind)} shape ${draft.shape} ${quoted(JSON.stringify(draft.body ?? null))}`;

/** The body in the words of its kind. */
function phrase(draft: NotedDraft): string {
  const kind = kindOf(draft);
  if (kind === undefined) return rawText(draft);
  const schema = schemaOf(kindNamed(kind).body);
  const body = draft.body as Record<string, unknown>;
  for (const form of forms) {
    const text = form.kind === kind ? formText(form, schema, body) : undefined;
    if (text !== undefined) return text;
  }
  const fields = fieldsText(schema, body, kind);
  return fields === '' ? kind : `${kind} ${fields}`;
}

/** A result and, straight after it, its signature by the same person on the same day are one line: "... signed". */
function isSignatureOf(next: NotedDraft | undefined, draft: NotedDraft, named: ReadonlyMap<Uuid, number>): boolean {
  if (next?.kind !== 'results-signed' || draft.kind !== 'result' || draft.id === undefined) return false;
  const plain = isEntry(next) ? !named.has(next.id ?? '') : next.id === undefined && next.recordedAt === undefined;
  return (
    plain &&
    JSON.stringify(next.body) === JSON.stringify({ results: [draft.id] }) &&
    next.shape === kindNamed('results-signed').shape &&
    next.effectiveAt === draft.effectiveAt &&
    next.zone === draft.zone &&
    next.subject === draft.subject &&
    next.amends === undefined &&
    next.deviceAt === undefined &&
    JSON.stringify(next.author) === JSON.stringify(draft.author)
  );
}

const isEntry = (draft: NotedDraft): boolean => 'seq' in draft;

/** Long ids are given short labels, the same wherever they occur; those that a raw line names stay as they are. */
function shortLabels(drafts: readonly NotedDraft[], here: ReadonlySet<Uuid>): (id: Uuid) => Uuid {
  const kept = new Set(drafts.filter((draft) => isRaw(draft, here)).flatMap(referencesOf));
  const taken = new Set(drafts.flatMap((draft) => [draft.id ?? '', ...referencesOf(draft)]));
  const short = new Map<Uuid, Uuid>();
  let next = 0;
  return (id) => {
    if (id.length <= 16 || kept.has(id)) return id;
    const known = short.get(id);
    if (known !== undefined) return known;
    do next += 1;
    while (taken.has(`e${next}`));
    short.set(id, `e${next}`);
    return `e${next}`;
  };
}

/** Prints drafts or entries in the order given. Ids of entries appear only where another line names them. */
export function printLedger(drafts: readonly NotedDraft[], options: PrintOptions = {}): string {
  const person = options.person ?? usualPerson;
  const here = new Set(drafts.flatMap((draft) => draft.id ?? []));
  const label = shortLabels(drafts, here);
  const named = new Map<Uuid, number>();
  for (const draft of drafts) for (const id of referencesOf(draft)) named.set(id, (named.get(id) ?? 0) + 1);
  const lines: string[] = [];
  let subject: Subject = usualPerson;
  let zone = usualZone;
  if (person !== usualPerson) {
    lines.push(`notes of ${person}`);
    subject = person;
  }
  for (let index = 0; index < drafts.length; index += 1) {
    const draft = drafts[index];
    if (draft === undefined) continue;
    if (draft.subject !== subject) lines.push(`notes of ${draft.subject}`);
    if (draft.zone !== zone) lines.push(`zone ${draft.zone}`);
    subject = draft.subject;
    zone = draft.zone;
    const next = drafts[index + 1];
    const said = isRaw(draft, here) ? rawText(draft) : phrase(withLabels(draft, label));
    const signed = options.written !== true && isSignatureOf(next, draft, named);
    const onlySignatureNamesIt = signed && named.get(draft.id ?? '') === 1;
    const saysId = isEntry(draft)
      ? named.has(draft.id ?? '') && !onlySignatureNamesIt
      : draft.id !== undefined && !(onlySignatureNamesIt && draft.id === labelOfSigned(index));
    lines.push(lineText(draft, said, { saysId, signed, written: options.written === true || !isEntry(draft), label }));
    if (signed) index += 1;
  }
  return lines.map((line) => `${line}\n`).join('');
}

function withLabels(draft: NotedDraft, label: (id: Uuid) => Uuid): NotedDraft {
  const fields = referenceFields(draft.kind);
  if (fields.length === 0 || typeof draft.body !== 'object' || draft.body === null) return draft;
  const body = Object.fromEntries(
    Object.entries(draft.body).map(([field, value]) => [
      field,
      !fields.includes(field)
        ? value
        : Array.isArray(value)
          ? value.map((id) => label(String(id)))
          : label(String(value)),
    ]),
  );
  return { ...draft, body };
}

function lineText(
  draft: NotedDraft,
  said: string,
  say: { saysId: boolean; signed: boolean; written: boolean; label: (id: Uuid) => Uuid },
): string {
  const undatedPerson = draft.effectiveAt === undated && said.startsWith('person ');
  const parts = [undatedPerson ? '' : momentText(draft.effectiveAt, draft.zone).padEnd(12)];
  if (say.saysId && draft.id !== undefined) parts.push(`#${say.label(draft.id)}`);
  parts.push(said);
  if (say.signed) parts.push('signed');
  if (draft.amends !== undefined) parts.push(`corrects #${say.label(draft.amends)}`);
  const usual = usualAuthor(draft.kind);
  if (
    draft.author !== undefined &&
    !(isEntry(draft) && draft.author.role === usual.role && draft.author.staff === usual.staff)
  ) {
    const staff =
      draft.author.staff === staffOfRole(draft.author.role)
        ? ''
        : ` ${isPlainWord(draft.author.staff) && !wordsAfter.includes(draft.author.staff) ? draft.author.staff : quoted(draft.author.staff)}`;
    parts.push(`by ${draft.author.role}${staff}`);
  }
  if (draft.deviceAt !== undefined) parts.push(`device ${quoted(draft.deviceAt)}`);
  if (say.written && draft.recordedAt !== undefined) parts.push(`written ${quoted(draft.recordedAt)}`);
  return parts.filter((part) => part !== '').join(' ');
}
