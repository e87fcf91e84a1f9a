/**
 * Whether two people's notes are one person's. Two say that they are one, each having compared at least two identifiers; one
 * may say that they are two, or that it is not certain. Nothing is moved: it is what readers read together that changes.
 */
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { type SamePersonAnswer, leftOpen, newestAnswers, readIn, readInThese } from '../record/same-person.ts';
import { patientSubject } from '../record/together.ts';
import { type Identifier, sideBySide } from '../record/compared.ts';
import { shortDate } from '../calendar/day.ts';
import { placeFrom } from '../visit/place.ts';
import { visitOn } from '../visit/visit.ts';
import type { Draft } from '../ledger/entry.ts';
import type { ActNamed } from './act.ts';
import { checkKnown } from './check-care.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { patientIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

type Body = Fact<'same-person'>['body'];
type About = { readonly patient: string; readonly other: string };

const answerAbout = (record: SubjectRecord, other: string): SamePersonAnswer | undefined =>
  newestAnswers(record).find(({ body }) => body.other === other);

/** Both must be known, and two. */
function pair({ patient, other }: About, now: Surroundings): readonly Refusal[] {
  const known = [...checkKnown(patientIn(now, patient)), ...checkKnown(patientIn(now, other))];
  return patient === other
    ? [...known, fieldWrong('other', 'these are the same notes', 'choose the other notes')]
    : known;
}

/** The same answer in both notes. */
const inBoth = ({ patient, other }: About, body: (other: string) => Body, now: Surroundings): readonly Draft[] => [
  draftNow(patientSubject(patient), 'same-person', body(other), now),
  draftNow(patientSubject(other), 'same-person', body(patient), now),
];

export function decideMayBeOne(act: ActNamed<'may be one'>, now: Surroundings): Decided {
  const before = answerAbout(patientIn(now, act.patient), act.other)?.body.answer;
  const said =
    before === undefined || before === 'two'
      ? []
      : [
          refusal('said-already', 'It is in the notes already that the two may be one person.', {
            remedy: 'compare them',
          }),
        ];
  return decided([...pair(act, now), ...said], () =>
    inBoth(act, (other) => ({ answer: 'may be one', other, reason: act.reason }), now),
  );
}

export function decideSayOne(act: ActNamed<'say one person'>, now: Surroundings): Decided {
  const answer = answerAbout(patientIn(now, act.patient), act.other)?.body;
  const said =
    answer?.answer === 'one' || (answer?.answer === 'proposed' && answer.kept === act.patient)
      ? [
          refusal('said-already', 'The first of two people has said so already.', {
            remedy: 'now a second person compares them',
          }),
        ]
      : [];
  return decided([...pair(act, now), ...said, ...checkOne(act, now)], () =>
    inBoth(
      act,
      (other) => ({ answer: 'proposed', other, kept: act.patient, agree: act.agree, reason: act.reason }),
      now,
    ),
  );
}

export function decideConfirmOne(act: ActNamed<'confirm one person'>, now: Surroundings): Decided {
  const proposed = answerAbout(patientIn(now, act.patient), act.other);
  const refusals = [...pair(act, now), ...checkOne(act, now)];
  if (proposed?.body.answer !== 'proposed' || proposed.body.kept !== act.patient) {
    refusals.push(
      refusal('nobody-said-so-yet', 'Nobody has said yet that these notes are one person’s and which are kept.', {
        remedy: 'say so first; then another person confirms it',
      }),
    );
  } else if (proposed.author.staff === now.by.staff) {
    refusals.push(
      refusal('second-person-needed', 'You said so first: another person compares the two and confirms.', {
        remedy: 'ask a colleague to sign',
      }),
    );
  }
  return decided(refusals, () =>
    inBoth(act, (other) => ({ answer: 'one', other, kept: act.patient, agree: act.agree, reason: act.reason }), now),
  );
}

/** Also for notes that are read in one of the two and were left open against the other. */
export function decideSayTwo(act: ActNamed<'say two people'>, now: Surroundings): Decided {
  const one = patientIn(now, act.patient);
  const other = patientIn(now, act.other);
  const body = (about: string): Body => ({ answer: 'two', other: about, differ: act.differ, reason: act.reason });
  return decided(pair(act, now), () => [
    ...inBoth(act, body, now),
    ...openThrough(one, other).map((about) => draftNow(one.subject, 'same-person', body(about), now)),
    ...openThrough(other, one).map((about) => draftNow(other.subject, 'same-person', body(about), now)),
  ]);
}

const openThrough = (record: SubjectRecord, other: SubjectRecord): readonly string[] =>
  leftOpen(record)
    .map(({ body }) => body.other)
    .filter((about) => (other.together ?? []).some(({ patient }) => patient === about));

/** Taken back: until somebody says that they are two, they may be one. */
export function decideReadApart(act: ActNamed<'read apart'>, now: Surroundings): Decided {
  const record = patientIn(now, act.patient);
  const read = readInThese(record).includes(act.other)
    ? []
    : [refusal('nobody-said-so-yet', 'Those notes are not read in these.', { field: 'other' })];
  return decided([...checkKnown(record), ...read], () =>
    inBoth(act, (other) => ({ answer: 'may be one', other, reason: act.reason }), now),
  );
}

/** What must hold before anybody says that two are one: what agrees really agrees, and the other notes hold nothing to come. */
function checkOne(act: About & { readonly agree: readonly Identifier[] }, now: Surroundings): readonly Refusal[] {
  const kept = patientIn(now, act.patient);
  const other = patientIn(now, act.other);
  const refusals: Refusal[] = [];
  const agree = new Set(act.agree);
  if (agree.size < 2)
    refusals.push(fieldWrong('agree', 'one identifier is not enough', 'compare at least two, side by side'));
  for (const identifier of agree) refusals.push(...checkAgrees(identifier, kept, other));
  if (readInThese(other).length > 0)
    refusals.push(
      refusal('read-in-other-notes', 'Other notes are read in the ones that would be joined.', {
        field: 'other',
        remedy: 'keep those notes, or read theirs apart first',
      }),
    );
  const place = placeFrom(other, now.today);
  const visit = visitOn(other, now.today);
  if (place !== undefined && !(place.on === now.today && visit?.over === true)) {
    refusals.push(
      refusal('has-a-place', `A place on ${shortDate(place.on)} is booked in the notes that would be joined.`, {
        remedy: 'keep those notes, or give that place up and book it again in the kept ones',
      }),
    );
  } else if (visit !== undefined && !visit.over) {
    refusals.push(
      refusal('has-a-place', 'A visit of today stands in the notes that would be joined.', {
        remedy: 'finish it first',
      }),
    );
  }
  return refusals;
}

/** What is compared sign by sign. Names and addresses are written in many ways: that they agree is for a person to say. */
const exactly: ReadonlySet<Identifier> = new Set(['birth date', 'number', 'telephone']);

function checkAgrees(identifier: Identifier, kept: SubjectRecord, other: SubjectRecord): readonly Refusal[] {
  const found = sideBySide(kept, other).find((one) => one.identifier === identifier);
  const wrong = (says: string): readonly Refusal[] => [
    refusal('does-not-agree', says, { field: 'agree', remedy: 'choose what agrees, or correct what is wrong first' }),
  ];
  // A former name may be the other's name now.
  if (identifier === 'former name')
    return found?.these === undefined && found?.other === undefined
      ? wrong('No former name is recorded in either.')
      : [];
  if (found === undefined || found.says === 'not recorded in both')
    return wrong(`The ${identifier} is not recorded in both.`);
  return found.says === 'differs' && exactly.has(identifier)
    ? wrong(`The ${identifier} differs: ${found.these ?? ''} and ${found.other ?? ''}.`)
    : [];
}

/** Look-alikes that nobody has said anything about yet, noted in both: until somebody says one or two, neither is ready. */
export const noteLookAlikes = (patient: string, now: Surroundings): readonly Draft[] =>
  (now.lookAlikes ?? []).flatMap((alike) => {
    const other = patientIn(now, alike.patient);
    const unsaid = alike.patient !== patient && other.lastSeq > 0 && readIn(other) === undefined;
    return unsaid && answerAbout(patientIn(now, patient), alike.patient) === undefined
      ? inBoth({ patient, other: alike.patient }, (of) => ({ answer: 'may be one', other: of, reason: alike.why }), now)
      : [];
  });

/** Someone was entered although they look like people here: what differs is kept with it; nothing that does leaves it open. */
export const entriesForTwo = (
  patient: string,
  entered: SubjectRecord,
  others: readonly string[],
  now: Surroundings,
): readonly Draft[] =>
  others.flatMap((other) => {
    const record = patientIn(now, other);
    if (record.lastSeq === 0 || readIn(record) !== undefined) return [];
    const differ = sideBySide(entered, record).flatMap(({ identifier, says }) =>
      says === 'differs' ? [identifier] : [],
    );
    const reason = 'compared when the second of the two was entered';
    return inBoth(
      { patient, other },
      (of) =>
        differ.length === 0
          ? { answer: 'may be one', other: of, reason }
          : { answer: 'two', other: of, differ, reason },
      now,
    );
  });
