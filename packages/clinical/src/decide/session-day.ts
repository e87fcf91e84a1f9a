/** A session opened, closed and handed over: two registered people or it does not open, nobody without an outcome or it does not close. */
import { shortDate } from '../calendar/day.ts';
import { counted, plural } from '../kinds-texts/words.ts';
import { batchSubject, sameBatch } from '../ledger/batch-subject.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { stopOf } from '../stock/batch-stop.ts';
import { onHand, packsUsedFor } from '../stock/on-hand.ts';
import { unitOf } from '../unit/unit.ts';
import { missingAtClosing } from '../visit/missing-at-closing.ts';
import { sessionDayOf } from '../visit/session-day.ts';
import { type SessionList, sessionOf } from '../visit/session-list.ts';
import type { ActNamed } from './act.ts';
import { draftNow } from './draft.ts';
import { recordIn, sessionIn } from './ledgers.ts';
import { checkersUnable, openingLacks } from './opening-lacks.ts';
import type { Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

/** Nobody is their own witness: what somebody has shown is written by another than who showed it. */
export function decideRecordCompetence({ unit, body }: ActNamed<'record competence'>, now: Surroundings): Decided {
  const refusals: Refusal[] = [];
  if (unitOf(recordIn(now, subject('unit', unit))) === undefined)
    refusals.push(refusal('unknown-unit', `No unit is called "${unit}".`, { field: 'unit' }));
  if (body.staff === now.by.staff)
    refusals.push(
      refusal('second-person-needed', 'What you have shown is written down by somebody else.', {
        field: 'body.staff',
        remedy: 'ask another nurse in charge or the service lead to record it',
      }),
    );
  return decided(refusals, () => [draftNow(subject('unit', unit), 'competence', body, now)]);
}

type Body = ActNamed<'open session'>['body'];

export function decideOpenSession(act: ActNamed<'open session'>, now: Surroundings): Decided {
  const { body } = act;
  const session = sessionIn(now, act.session);
  const unit = recordIn(now, subject('unit', act.unit));
  const refusals: Refusal[] = [
    ...checkSessionOfToday(sessionOf(session), act.unit, now),
    ...checkOpening(act, session, unit, now),
    ...checkChairs(body, unit),
    ...checkCounts(body, now),
  ];
  return decided(refusals, () => [
    draftNow(subject('session', act.session), 'session-opened', body, now),
    ...countDrafts(act.unit, body.counts, now),
  ]);
}

function checkSessionOfToday(session: SessionList | undefined, unit: string, now: Surroundings): readonly Refusal[] {
  if (session === undefined)
    return [refusal('unknown-session', 'There is no such session.', { field: 'session', remedy: 'plan it first' })];
  if (session.unit !== unit)
    return [refusal('unknown-session', 'The session belongs to another unit.', { field: 'unit' })];
  if (session.cancelled !== undefined)
    return [refusal('session-cancelled', `That session was cancelled (${session.cancelled.reason}).`)];
  return session.on === now.today
    ? []
    : [refusal('session-past', `The session is on ${shortDate(session.on)}.`, { remedy: 'open it on its day' })];
}

/** Open already, it may come to lack something and goes on: asked about, and nothing is started until it is put right. */
function checkOpening(
  { body, confirms = [] }: ActNamed<'open session'>,
  session: SubjectRecord,
  unit: SubjectRecord,
  now: Surroundings,
): readonly Refusal[] {
  const lacks = openingLacks(body, unit, now.today);
  const unable = checkersUnable(body, unit, now.today);
  if (sessionDayOf(session).state !== 'open') return [...lacks, ...unable];
  const doubts = lacks.map(({ says, field }) =>
    refusal('is-it-right', `${says} Until that is put right no medicine is started; what runs goes on.`, {
      ...(field === undefined ? {} : { field }),
      remedy: 'call somebody in or make the kit whole, or say that it is so',
    }),
  );
  return [...doubts.filter(({ says }) => !confirms.includes(says)), ...unable];
}

function checkChairs({ chairs }: Body, unit: SubjectRecord): readonly Refusal[] {
  const has = unitOf(unit)?.chairs ?? 0;
  return chairs <= has
    ? []
    : [refusal('field-wrong', `The unit has ${counted(has, 'chair')}.`, { field: 'body.chairs' })];
}

/** A batch counted for use is one that was received and that nobody stopped. */
function checkCounts({ counts }: Pick<Body, 'counts'>, now: Surroundings): readonly Refusal[] {
  return counts.flatMap(({ batch }, index) => {
    const record = recordIn(now, batchSubject(batch));
    const field = `body.counts.${index}.batch`;
    if (record.lastSeq === 0)
      return [refusal('unknown-batch', `No packs of batch ${batch} were ever received.`, { field })];
    const stop = stopOf(record);
    return stop === undefined
      ? []
      : [
          refusal('batch-stopped', `Batch ${batch} is stopped: ${stop.body.reason}.`, {
            field,
            remedy: 'put its packs aside; count another batch',
          }),
        ];
  });
}

const countDrafts = (unit: string, counts: Body['counts'], now: Surroundings): readonly Draft[] =>
  counts.map(({ batch, packs, note }) =>
    draftNow(
      batchSubject(batch),
      'batch-counted',
      { unit, batch, packs, ...(note === undefined ? {} : { note }) },
      now,
    ),
  );

export function decideCloseSession(act: ActNamed<'close session'>, now: Surroundings): Decided {
  const { body } = act;
  const record = sessionIn(now, act.session);
  const session = sessionOf(record);
  if (session === undefined)
    return decided([refusal('unknown-session', 'There is no such session.', { field: 'session' })], () => []);
  const refusals: Refusal[] = [];
  const { state } = sessionDayOf(record);
  if (state === 'not opened')
    refusals.push(refusal('session-not-open', 'The session was never opened.', { remedy: 'open it first' }));
  if (state === 'closed' || state === 'closed, handover waits')
    refusals.push(refusal('step-already-done', 'The session is closed.'));
  if (body.to === now.by.staff)
    refusals.push(
      refusal('second-person-needed', 'You hand over to yourself.', {
        field: 'body.to',
        remedy: 'name the person who takes on what is left',
      }),
    );
  const listed = [...session.taken.values()].map((patient) => recordIn(now, subject('patient', patient)));
  for (const patient of listed) {
    for (const { name, says, remedy } of missingAtClosing(patient, session.on))
      refusals.push(refusal(name, says, { remedy }));
  }
  refusals.push(...checkAddsUp(body.counts, listed, session, now));
  return decided(refusals, () => [
    draftNow(subject('session', act.session), 'session-closed', body, now),
    ...countDrafts(session.unit, body.counts, now),
  ]);
}

/** Every batch that was opened is counted, and what is counted is what the sum says, or somebody says what is known. */
function checkAddsUp(
  counts: Body['counts'],
  listed: readonly SubjectRecord[],
  session: SessionList,
  now: Surroundings,
): readonly Refusal[] {
  const used = listed.flatMap((patient) =>
    packsUsedFor(patient, (id) => (id === session.id ? session.unit : undefined)).filter(({ on }) => on === session.on),
  );
  const countedBatches = new Set(counts.map(({ batch }) => sameBatch(batch)));
  const uncounted = [...new Set(used.map(({ batch }) => batch))].filter((batch) => !countedBatches.has(batch));
  const missing =
    uncounted.length === 0
      ? []
      : [
          refusal('does-not-add-up', `Packs of ${plural(uncounted, 'and')} were opened and not counted.`, {
            field: 'body.counts',
            remedy: 'count what is left of them',
          }),
        ];
  return [
    ...missing,
    ...counts.flatMap(({ batch, packs, note }, index) => {
      const record = recordIn(now, batchSubject(batch));
      const uses = used.filter((use) => use.batch === sameBatch(batch));
      const { packs: sum } = onHand(record, session.unit, uses);
      return packs === sum || note !== undefined
        ? []
        : [
            refusal('does-not-add-up', `By the sum ${sum} of batch ${batch} are left; ${packs} were counted.`, {
              field: `body.counts.${index}.packs`,
              remedy: 'count again; if it stays, say what is known about the difference',
            }),
          ];
    }),
  ];
}

export function decideAcceptHandover(act: ActNamed<'accept handover'>, now: Surroundings): Decided {
  const { closed, accepted } = sessionDayOf(sessionIn(now, act.session));
  const refusals: Refusal[] = [];
  if (closed === undefined)
    refusals.push(refusal('session-not-open', 'The session is not closed: there is no handover yet.'));
  else if (accepted !== undefined) refusals.push(refusal('step-already-done', 'The handover is accepted.'));
  else if (closed.author.staff === now.by.staff)
    refusals.push(
      refusal('second-person-needed', 'You wrote the handover: the person it is for accepts it.', {
        remedy: 'ask them to sign with their own name',
      }),
    );
  else if (closed.body.to !== now.by.staff)
    refusals.push(
      refusal('not-yours-to-do', 'The handover is for somebody else.', {
        remedy: 'the person it is for accepts it with their own name',
      }),
    );
  return decided(refusals, () => [
    draftNow(
      subject('session', act.session),
      'handover-accepted',
      act.note === undefined ? {} : { note: act.note },
      now,
    ),
  ]);
}
