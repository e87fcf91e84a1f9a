/** Lines written by hand: one, several together, or one that corrects another. */
import { kindNamed } from '../kinds/index.ts';
import type { Draft } from '../ledger/entry.ts';
import { type Subject, subject, subjectId } from '../ledger/subject.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import type { ActNamed } from './act.ts';
import { checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { type Line, checkLine, checkNewLine } from './check-line.ts';
import { checkMayBeCorrected } from './check-standing-upon.ts';
import { checkHomeDose, isHomeDoseOfBefore, underHomeRule } from './check-home-dose.ts';
import { checkPackCorrected, packOpened } from './check-pack.ts';
import { checkVisitStep } from './check-visit-step.ts';
import { checkDoubts } from './doubts.ts';
import { draftOf } from './draft.ts';
import { after } from './extended.ts';
import { actThatWrites } from './hand-written.ts';
import { entryIn, recordIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import { noteLookAlikes } from './same-person.ts';
import type { Decided, Surroundings } from './surroundings.ts';
import { checkObservedWhen } from './check-observed-when.ts';
import { checkTypedOrder } from './typed-order.ts';

export function decideRecord(act: ActNamed<'record'>, now: Surroundings): Decided {
  const of = subject('patient', act.patient);
  const record = recordIn(now, of);
  const { draft, refusals } = line(record, act.line, 'line', now, { amends: act.amends, confirms: act.confirms });
  return decided([...checkKnown(record), ...refusals], () =>
    draft === undefined
      ? []
      : [
          draft,
          ...packOpened(record, draft, now),
          ...(draft.kind === 'identity' ? noteLookAlikes(act.patient, now) : []),
        ],
  );
}

export function decideRecordTogether(act: ActNamed<'record together'>, now: Surroundings): Decided {
  const of = subject('patient', act.patient);
  return decidedTogether(of, act, now, checkKnown(recordIn(now, of)));
}

function decidedTogether(
  of: Subject,
  { lines, confirms }: ActNamed<'record together'>,
  start: Surroundings,
  known: readonly Refusal[],
): Decided {
  const drafts: Draft[] = [];
  const refusals: Refusal[] = [...known];
  let now = start;
  for (const [index, one] of lines.entries()) {
    const written = line(recordIn(now, of), one, `lines.${index}`, now, { confirms });
    refusals.push(...written.refusals);
    if (written.draft === undefined || written.refusals.length > 0) continue;
    drafts.push(written.draft);
    if (index < lines.length - 1) now = after([written.draft], now);
  }
  const saysWho = drafts.some(({ kind }) => kind === 'identity');
  const packs = drafts.flatMap((draft) => packOpened(recordIn(start, of), draft, start));
  return decided(refusals, () => [...drafts, ...packs, ...(saysWho ? noteLookAlikes(subjectId(of), start) : [])]);
}

function line(
  record: SubjectRecord,
  sent: Line,
  path: string,
  now: Surroundings,
  {
    amends,
    confirms = [],
  }: { readonly amends?: string | undefined; readonly confirms?: readonly string[] | undefined },
): { draft: Draft | undefined; refusals: readonly Refusal[] } {
  const kind = kindNamed(sent.kind);
  const act = actThatWrites(sent.kind);
  if (act !== undefined || kind.of !== 'patient') {
    const remedy = act === undefined ? `it belongs to the notes of a ${kind.of}` : `use "${act}"`;
    return {
      draft: undefined,
      refusals: [fieldWrong(`${path}.kind`, `"${kind.label}" is not written as a line`, remedy)],
    };
  }
  const { fact, refusals } = checkLine(record, sent, path, now);
  const inPlace =
    amends === undefined ? checkNew(record, fact, path, now) : checkAmends(record, amends, fact, path, sent, now);
  const when = fact?.kind === 'observations' ? checkObservedWhen(record, fact as Fact<'observations'>, sent, path) : [];
  const draft =
    fact === undefined
      ? undefined
      : draftOf(
          (amends === undefined ? undefined : entryIn(now, record, amends))?.subject ?? record.subject,
          fact.kind,
          underHomeRule(fact, now),
          sent.effectiveAt,
          now.zone,
          amends,
        );
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  const doubts =
    fact === undefined || refusals.length > 0
      ? []
      : [
          ...checkDoubts(record, fact, `${path}.body`, confirms, amends, protocol),
          ...(amends === undefined ? checkTypedOrder(record, fact, sent, path, confirms) : []),
        ];
  return { draft, refusals: [...refusals, ...doubts, ...when, ...inPlace] };
}

const checkNew = (record: SubjectRecord, fact: Fact | undefined, path: string, now: Surroundings): readonly Refusal[] =>
  fact === undefined
    ? []
    : [
        ...checkNewLine(record, fact, now),
        ...checkVisitStep(record, fact, now),
        ...(fact.kind === 'dose' ? checkHomeDose(fact as Fact<'dose'>, record, `${path}.body`, now) : []),
      ];

function checkAmends(
  record: SubjectRecord,
  amends: string,
  fact: Fact | undefined,
  path: string,
  sent: Line,
  now: Surroundings,
): readonly Refusal[] {
  const target = record.all.find((one) => one.id === amends);
  if (target === undefined) {
    const chained = record.all.find((one) => one.first === amends);
    return [
      chained === undefined
        ? refusal('no-such-entry', 'The entry to correct is not in these notes, or was withdrawn.', { field: 'amends' })
        : refusal('no-such-entry', 'That entry was corrected already.', {
            field: 'amends',
            remedy: `correct the newest one: ${chained.id}`,
          }),
    ];
  }
  if (target.kind !== sent.kind) {
    return [
      refusal('entry-of-another-kind', `A ${kindNamed(target.kind).label} is corrected by another of its kind.`, {
        field: 'line.kind',
      }),
    ];
  }
  if (fact === undefined) return [];
  const pack =
    fact.kind === 'preparation'
      ? checkPackCorrected(target as Fact<'preparation'>, fact as Fact<'preparation'>, record, now)
      : [];
  const home =
    fact.kind === 'dose' && !isHomeDoseOfBefore(target as Fact<'dose'>)
      ? checkHomeDose(fact as Fact<'dose'>, record, `${path}.body`, now)
      : [];
  return [...checkMayBeCorrected(record, target), ...pack, ...home];
}
