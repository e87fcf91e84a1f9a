/**
 * What waits for someone, as far as the notes alone can say it: one row a task, with its owner and the day it is due. Tasks
 * that depend on the day or the protocol (overdue, runs out before a place) are told by readers, not stored.
 */
import { openCallsOf } from '../calls/open-calls.ts';
import { flagsIn } from '../calls/asked-flags.ts';
import { type Day, day } from '../calendar/day.ts';
import { aftercareOf } from '../aftercare/contacts.ts';
import { redFlagsOfEntry } from '../aftercare/told.ts';
import { type UnitCalendar, everyDay } from '../calendar/unit-calendar.ts';
import { counted } from '../kinds-texts/words.ts';
import type { Role } from '../ledger/role.ts';
import { entryText } from '../kinds-texts/entry-text.ts';
import { madeBeforeItWasCorrected } from '../record/made-while-it-stood.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type Fact, type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { reactionsToDecide } from '../record/reaction-to-decide.ts';
import { lookAgainOn } from '../standing/look-again.ts';
import { heldBy, unitOfPatient } from '../standing/standing.ts';
import { isOpenOrder, needsPharmacist, orderAtPharmacy } from '../pharmacy/pharmacy-state.ts';
import { placesOf } from '../visit/place.ts';
import { dosesGiven } from '../course/doses.ts';
import { isThighFracture } from '../requirements/thigh-fracture.ts';
import { messagesToLookAt } from '../letters/reminders.ts';
import { isVisitLetter, lettersOut } from '../letters/letters-out.ts';
import { toldAndNotSeen } from '../visit/told-ahead.ts';
import { visitOn } from '../visit/visit.ts';
import type { Row } from './row.ts';
import { answeredForAnother, notGivenToday } from './left-open-tasks.ts';
import { supportTasks } from './support-tasks.ts';

export const taskNames = [
  'answer the red flag',
  'sign results',
  'decide on the referral',
  'tell who was named',
  'call back',
  'ask again',
  'chase the transfer',
  'release the place',
  'move or cancel what was booked',
  'arrange what goes with the place',
  'see to what was put off',
  'answer what was asked at the chair',
  'did not come',
  'decide on the part dose',
  'decide on the reaction',
  'decide on the thigh fracture',
  'aftercare call',
  'pass on the red flag',
  'write the letter',
  'sign the letter',
  'send the letter',
  'chase the letter',
  'look at the reminder',
  'clear the symptom',
  'look at a decision again',
  'look at the incident',
  'look at what they told us',
  'see the signature on paper',
  'confirm the check at home',
  'verify the prescription',
  'answer the pharmacist',
  'change the refused prescription',
] as const;
export type TaskName = (typeof taskNames)[number];

/**
 * `protocol`: the one in force at the person's unit; without one, what it would let wait is due at once. `calendar`: the
 * unit's; without one every day is open.
 */
export function taskRows(
  record: SubjectRecord,
  protocol: Protocol | undefined,
  today: Day,
  calendar: UnitCalendar = everyDay,
): readonly Row[] {
  const unit = unitOfPatient(record);
  const task = (name: TaskName, about: Fact, owner: Role, due: Day, detail: string): Row => ({
    table: 'task',
    key: `${name}/${about.first}`,
    columns: { task: name, owner, unit, due_day: due, detail },
  });
  const ended = heldBy(record, today).held;
  const gone = ended === 'died' || ended === 'closed';
  const willNotCome = gone || ended === 'transferred out';
  const rows = placesToRelease(record, today, willNotCome, task);
  rows.push(...supportTasks(record, today, willNotCome, task));
  if (ended === 'died') return rows;
  return [
    ...rows,
    ...unsignedResults(record, task),
    ...letterTasks(record, task),
    ...reminderTasks(record, today, task),
    ...(gone ? [] : openTasks({ record, protocol, today, calendar, task }, ended)),
  ];
}

export type Task = (name: TaskName, about: Fact, owner: Role, due: Day, detail: string) => Row;
type At = {
  readonly record: SubjectRecord;
  readonly protocol: Protocol | undefined;
  readonly today: Day;
  readonly calendar: UnitCalendar;
  readonly task: Task;
};

/** A place of someone who will not come is someone else's. */
function placesToRelease(record: SubjectRecord, today: Day, willNotCome: boolean, task: Task): Row[] {
  return placesOf(record).flatMap((place) => {
    const booking = record.all.find((fact) => fact.id === place.entry);
    if (booking === undefined) return [];
    if (place.on >= today)
      return willNotCome ? [task('release the place', booking, 'clerk', today, place.session)] : [];
    const came = visitOn(record, place.on) !== undefined;
    const answered = record.all.some((fact) => fact.seq > booking.seq && fact.on >= place.on && answers.has(fact.kind));
    return came || answered || willNotCome ? [] : [task('did not come', booking, 'clerk', place.on, place.session)];
  });
}

const answers: ReadonlySet<string> = new Set([
  'call',
  'advice-call',
  'refusal',
  'cannot-be-reached',
  'place-booked',
  'dose',
  'transfer-out',
  'illness',
]);

function unsignedResults(record: SubjectRecord, task: Task): Row[] {
  const signed = new Set(factsOf(record, 'results-signed').flatMap(({ body }) => body.results));
  return factsOf(record, 'result')
    .filter((result) => !signed.has(result.id))
    .map((result) => task('sign results', result, 'nurse', result.on, result.body.analyte));
}

function openTasks(at: At, held: string): Row[] {
  const { record, today, task } = at;
  const rows: Row[] = [];
  const referral = latest(record, 'referral');
  if (held === 'referral received' && referral !== undefined) {
    rows.push(
      task(
        'decide on the referral',
        referral,
        'nurse in charge',
        lookAgainOn(at, 'lookAgainReferralDays', referral.on),
        referral.body.tier,
      ),
    );
  }
  const call = latest(record, 'call');
  // Who is to be asked how they are stands on that list with the day of the next try.
  const isAftercare = call?.body.about === 'aftercare' && aftercareNow(at)?.waitsFor !== undefined;
  if (call?.body.callBackOn !== undefined && !isAftercare)
    rows.push(task('call back', call, 'nurse', day(call.body.callBackOn), call.body.about));
  for (const { call: rang, waitsFor, due } of openCallsOf(record))
    rows.push(
      waitsFor === 'an answer'
        ? task(
            'answer the red flag',
            rang,
            'prescriber',
            due,
            flagsIn(rang.body.redFlags)
              .map(({ name }) => name)
              .join('; '),
          )
        : task('call back', rang, 'nurse', due, rang.body.about),
    );
  rows.push(...answeredForAnother(record, task));
  const talk = latest(record, 'talk');
  if (talk?.body.askAgainOn !== undefined && !factsOf(record, 'dose').some(({ on }) => on > talk.on))
    rows.push(task('ask again', talk, 'nurse', day(talk.body.askAgainOn), talk.body.decision));
  const transfer = latest(record, 'transfer-out');
  const answered = latest(record, 'transfer-acknowledged');
  if (held === 'transferred out' && transfer !== undefined && (answered === undefined || answered.seq < transfer.seq)) {
    rows.push(task('chase the transfer', transfer, 'clerk', day(transfer.body.chaseOn), transfer.body.to));
  }
  for (const part of [...dosesGiven(record, today).values()].flatMap(({ undecided }) => undecided)) {
    rows.push(task('decide on the part dose', part, 'prescriber', part.on, `${part.body.partMilliliters ?? 0} mL`));
  }
  rows.push(...openReactions(record, task), ...thighFractures(record, task));
  const cleared = new Set(factsOf(record, 'symptom-cleared').map(({ body }) => body.entry));
  for (const symptom of factsOf(record, 'symptom')) {
    if (!cleared.has(symptom.id)) rows.push(task('clear the symptom', symptom, 'nurse', symptom.on, symptom.body.what));
  }
  return [
    ...rows,
    ...notGivenToday(record, lookAgainOn(at, 'lookAgainPutOffDays', latest(record, 'go-decision')?.on ?? today), task),
    ...incidents(record, task),
    ...toldAndNotSeen(record).map((told) => task('look at what they told us', told, 'nurse', told.on, entryText(told))),
    ...atPharmacy(at),
    ...signedOnPaper(record, task),
    ...checkedAtHome(record, task),
    ...lookAgain(record, task),
    ...redFlags(at),
    ...afterDose(at),
  ];
}

const reminderTasks = (record: SubjectRecord, today: Day, task: Task): Row[] =>
  messagesToLookAt(record, today).map(({ message, ended }) =>
    task('look at the reminder', message, 'clerk', message.on, ended?.body.outcome ?? 'not known whether it went out'),
  );

const letterWork = {
  signature: { name: 'sign the letter', owner: 'nurse' },
  sending: { name: 'send the letter', owner: 'clerk' },
  answer: { name: 'chase the letter', owner: 'clerk' },
} as const;

/** Also once care has been closed: a letter that says so still has to go out. */
function letterTasks(record: SubjectRecord, task: Task): Row[] {
  return lettersOut(record).flatMap(({ waitsFor, draft, letter, due, to, about }) => {
    const fact = letter ?? draft;
    if (waitsFor === undefined || fact === undefined) return [];
    const { name, owner } = letterWork[waitsFor];
    return [task(name, fact, owner, due, `to the ${to} about ${about}`)];
  });
}

/** A dose that ran too fast: the nurse in charge looks at it and says what was found. */
function incidents(record: SubjectRecord, task: Task): Row[] {
  const done = new Set(factsOf(record, 'looked-again').map(({ body }) => body.about));
  return factsOf(record, 'dose').flatMap((dose) =>
    dose.body.incident === undefined || done.has(dose.id)
      ? []
      : [task('look at the incident', dose, 'nurse in charge', dose.on, dose.body.incident)],
  );
}

/** A second signature that was typed in from paper: the nurse in charge has the sheet before her and says so. */
function signedOnPaper(record: SubjectRecord, task: Task): Row[] {
  const done = new Set(factsOf(record, 'looked-again').map(({ body }) => body.about));
  return factsOf(record, 'second-check').flatMap((check) =>
    check.body.signedOnPaperBy === undefined || done.has(check.id)
      ? []
      : [task('see the signature on paper', check, 'nurse in charge', check.on, entryText(check))],
  );
}

/** Who checked a dose at home is named by whoever gave it: only their own word in their own name confirms it. */
function checkedAtHome(record: SubjectRecord, task: Task): Row[] {
  const words = factsOf(record, 'looked-again');
  return factsOf(record, 'dose').flatMap((dose) =>
    dose.body.checkedBy === undefined ||
    words.some(({ body, author }) => body.about === dose.id && author.staff === dose.body.checkedBy)
      ? []
      : [task('confirm the check at home', dose, 'nurse in charge', dose.on, entryText(dose))],
  );
}

/** The order that stands: for the pharmacist where the protocol wants it verified, for the prescriber where one asked or refused. */
function atPharmacy({ record, protocol, today, task }: At): Row[] {
  const order = orderAtPharmacy(record, today);
  if (order === undefined || !isOpenOrder(record, order.prescription, today)) return [];
  const { prescription, state } = order;
  switch (state.is) {
    case 'verified':
      return [];
    case 'asked':
      return [task('answer the pharmacist', state.check, 'prescriber', state.since, state.check.body.question)];
    case 'refused':
      return [task('change the refused prescription', state.check, 'prescriber', state.since, state.check.body.reason)];
    case 'answered':
      return [task('verify the prescription', prescription, 'pharmacist', state.since, state.answer.body.answer)];
    case 'waits':
      return needsPharmacist(protocol)
        ? [task('verify the prescription', prescription, 'pharmacist', state.since, prescription.body.regimen)]
        : [];
  }
}

function thighFractures(record: SubjectRecord, task: Task): Row[] {
  const decided = new Set(
    factsOf(record, 'prescriber-decision').flatMap(({ body }) =>
      body.question === 'thigh fracture not atypical' ? [body.about] : [],
    ),
  );
  return factsOf(record, 'fracture')
    .filter(({ id, body }) => isThighFracture(body) && !decided.has(id))
    .map((broken) => task('decide on the thigh fracture', broken, 'prescriber', broken.on, entryText(broken)));
}

const openReactions = (record: SubjectRecord, task: Task): Row[] =>
  reactionsToDecide(record).map(({ fact }) =>
    task('decide on the reaction', fact, 'prescriber', fact.on, fact.body.what),
  );

/** An entry that decisions were made on was withdrawn or corrected: someone says of each whether it still holds. */
function lookAgain(record: SubjectRecord, task: Task): Row[] {
  const done = new Set(factsOf(record, 'looked-again').map(({ body }) => body.about));
  const withdrawals = factsOf(record, 'withdrawal').flatMap((withdrawn) => {
    const count = withdrawn.body.usedBy?.length ?? 0;
    if (count === 0 || done.has(withdrawn.id)) return [];
    const detail = `${counted(count, 'decision')} made before an entry was withdrawn: ${withdrawn.body.reason}`;
    return [task('look at a decision again', withdrawn, 'nurse in charge', withdrawn.on, detail)];
  });
  const corrections = record.all.flatMap((corrected) => {
    const count = madeBeforeItWasCorrected(record, corrected).length;
    if (count === 0 || done.has(corrected.id)) return [];
    const detail = `${counted(count, 'decision')} made before this was corrected: ${entryText(corrected)}`;
    return [task('look at a decision again', corrected, 'nurse in charge', corrected.on, detail)];
  });
  return [...withdrawals, ...corrections];
}

const aftercareNow = ({ record, protocol, calendar, today }: At) => aftercareOf(record, protocol, calendar, today);

/** What may not wait was told, and nobody has written to whom it was passed on. */
function redFlags({ record, protocol, task }: At): Row[] {
  const passedOn = new Set(factsOf(record, 'red-flag-passed-on').map(({ body }) => body.about));
  return factsOf(record, 'aftercare').flatMap((told) => {
    const flags = passedOn.has(told.first) || passedOn.has(told.id) ? [] : redFlagsOfEntry(told, protocol?.number);
    const detail = flags.map(({ name }) => name).join(', ');
    return flags.length === 0 ? [] : [task('pass on the red flag', told, 'nurse in charge', told.on, detail)];
  });
}

function afterDose(at: At): Row[] {
  const { record, today, task } = at;
  const given = dosesGiven(record, today);
  const countingOf = (dose: Fact<'dose'>) => given.get(dose.body.medicine)?.counting ?? [];
  const last = factsOf(record, 'dose').findLast((dose) => countingOf(dose).includes(dose));
  if (last === undefined || last.body.setting !== 'this service') return [];
  const rows: Row[] = [];
  const aftercare = aftercareNow(at);
  if (aftercare?.waitsFor !== undefined)
    rows.push(task('aftercare call', aftercare.dose, 'nurse', aftercare.waitsFor.by, 'first dose'));
  if (
    visitOn(record, last.on) !== undefined &&
    !factsOf(record, 'letter').some(({ on, body }) => on >= last.on && isVisitLetter(body))
  ) {
    rows.push(task('write the letter', last, 'nurse', lookAgainOn(at, 'letterDays', last.on), 'dose given'));
  }
  return rows;
}
