/** Advice-line calls: about somebody known, about somebody not found, and a call that finds its person. */
import type { RedFlag } from '../aftercare/danger-signs.ts';
import { holding } from '../aftercare/lines.ts';
import { flagsIn, noRedFlag } from '../calls/asked-flags.ts';
import { unknownCallsOf } from '../calls/open-calls.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { latest, factsOf, type SubjectRecord } from '../record/patient-record.ts';
import { patientSubject } from '../record/together.ts';
import { unitOf } from '../unit/unit.ts';
import type { ActNamed } from './act.ts';
import { checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow, draftOf } from './draft.ts';
import { patientIn, recordIn } from './ledgers.ts';
import { asItHappened, checkHappenedAt } from './happened-at.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

type Said = Pick<BodyOfKind<'advice-call'>, 'redFlags' | 'passedTo'>;

function checkSaid({ redFlags: asked, passedTo }: Said): readonly Refusal[] {
  const flags = flagsIn(asked);
  if (flags.length === 0) return [];
  const refusals: Refusal[] = [];
  if (asked.includes(noRedFlag))
    refusals.push(
      fieldWrong('body.redFlags', 'both a red flag and "none of these"', 'tick what they said, or none of these'),
    );
  if (passedTo === undefined)
    refusals.push(
      fieldWrong('body.passedTo', 'a red flag is for somebody by name', 'tell a prescriber now, and say whom you told'),
    );
  return refusals;
}

/** What holds the next dose stands in the notes as a symptom too; nothing more is written of somebody who has died. */
function symptomDrafts(record: SubjectRecord, flags: readonly RedFlag[], at: Draft['effectiveAt'], now: Surroundings) {
  if (latest(record, 'died') !== undefined) return [];
  return flags.flatMap(({ name }) => {
    const what = holding[name];
    return what === undefined
      ? []
      : [draftOf(record.subject, 'symptom', { what, note: `told on the advice line: ${name}` }, at, now.zone)];
  });
}

export function decideAdviceCall(act: ActNamed<'write advice call'>, now: Surroundings): Decided {
  const record = patientIn(now, act.patient);
  const then = asItHappened(act.happenedAt, now);
  return decided([...checkKnown(record), ...checkSaid(act.body), ...checkHappenedAt(act.happenedAt, [], now)], () => [
    draftNow(patientSubject(act.patient), 'advice-call', act.body, then),
    ...symptomDrafts(record, flagsIn(act.body.redFlags), then.moment, then),
  ]);
}

export function decideUnknownCall(act: ActNamed<'write unknown call'>, now: Surroundings): Decided {
  const of = subject('unit', act.unit);
  const unknown =
    unitOf(recordIn(now, of)) === undefined
      ? [refusal('unknown-unit', `No unit is called "${act.unit}".`, { field: 'unit' })]
      : [];
  return decided([...unknown, ...checkSaid(act.body), ...checkHappenedAt(act.happenedAt, [], now)], () => [
    draftNow(of, 'unknown-call', act.body, asItHappened(act.happenedAt, now)),
  ]);
}

/** The person was found: the call stands in their notes with the time at which it was made. Or it is nobody of ours. */
export function decideSettleCall(act: ActNamed<'settle unknown call'>, now: Surroundings): Decided {
  const of = subject('unit', act.unit);
  const unit = recordIn(now, of);
  const call = unknownCallsOf(unit).find(({ id }) => id === act.body.call);
  if (call === undefined) {
    const was = factsOf(unit, 'unknown-call').some(({ id }) => id === act.body.call);
    return decided(
      [
        was
          ? refusal('step-already-done', 'That call was settled before.', { field: 'body.call' })
          : refusal('no-such-entry', 'There is no such call at this unit.', { field: 'body.call' }),
      ],
      () => [],
    );
  }
  const { patient } = act.body;
  const record = patient === undefined ? undefined : patientIn(now, patient);
  const at = call.at ?? now.moment;
  return decided(record === undefined ? [] : checkKnown(record), () => {
    const settled = draftNow(of, 'unknown-call-settled', act.body, now);
    if (record === undefined) return [settled];
    const { nameSaid: _, knownOfThem: __, ...said } = call.body;
    return [
      settled,
      draftOf(record.subject, 'advice-call', { ...said, takenFrom: call.id }, at, now.zone),
      ...symptomDrafts(record, flagsIn(said.redFlags), at, now),
    ];
  });
}
