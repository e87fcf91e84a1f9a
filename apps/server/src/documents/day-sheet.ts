/** The day sheet of a session: who is on the list, what is known of each, and what is in the notes already. */
import {
  type Day,
  dateWithWeekday,
  day,
  factsOf,
  protocolFor,
  protocolInForceOn,
  sessionOf,
  shortDate,
  outcomeOf,
  type Visit,
  visitOn,
} from '@twelvemonth/clinical';
import { type DaySheetPerson, daySheetHtml } from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { nearNames } from '../views/look-alikes.ts';
import { nurseOf } from '../views/named-nurse.ts';
import { noProtocolInForce } from '../views/person-row.ts';
import { exceptionsInWords } from '../views/exceptions.ts';
import { allergiesInWords, bornInWords, fullName, needsOf } from '../views/person-words.ts';
import { byPatient, listedOn } from '../views/sessions.ts';
import { supportLinesOf } from '../views/supports.ts';
import { orderInWords } from '../views/visit.ts';
import { visitStepsOf } from '../views/visit-steps.ts';

export async function daySheetDocumentOf(atHand: AtHand, id: string): Promise<string | undefined> {
  const notes = await atHand.notes.of('session', id);
  const session = sessionOf(notes);
  const unit = session === undefined ? undefined : await atHand.units.named(session.unit);
  if (session === undefined || unit === undefined) return undefined;
  // Taken before the people are: a sheet never claims more than it was made from.
  const { commit } = await atHand.store.tail();
  const listed = listedOn(session, byPatient(await atHand.people.all())).flatMap(({ arriveAt, person }) =>
    person === undefined ? [] : [{ arriveAt, person }],
  );
  const others = listed.map(({ person }) => person);
  return daySheetHtml({
    language: unit.unit.letters?.language ?? 'en-GB',
    unit: unit.unit,
    on: session.on,
    printedAt: `${dateWithWeekday(day(unit.moment.slice(0, 10)))}, ${unit.moment.slice(11, 16)}`,
    commit,
    protocolVersion: protocolInForceOn(unit.timeline, session.on)?.version,
    people: listed.map(({ arriveAt, person }) => ({
      arriveAt,
      ...knownOf(person, unit, session.on, atHand.accounts.nameOf),
      nearNames: nearNames(person, others),
      nurse: nurseOf(notes, person.patient, atHand.accounts.nameOf).nurse?.name,
    })),
  });
}

function knownOf(
  person: Person,
  { timeline }: UnitNow,
  on: Day,
  nameOf: (staff: string) => string,
): Omit<DaySheetPerson, 'arriveAt' | 'nearNames' | 'nurse'> {
  const { record, identity, contact, course, today } = person;
  const inForce = protocolInForceOn(timeline, on);
  const protocol = inForce === undefined ? undefined : protocolFor(inForce, record, on);
  const prescription = factsOf(record, 'prescription').findLast((one) => one.on <= on);
  const visit = visitOn(record, on);
  const steps = visitStepsOf(visit, nameOf);
  const inTheNotes = ({ at, by }: (typeof steps)[number]): string => `${at?.slice(11, 16) ?? ''} ${by ?? ''}`.trim();
  const runs = steps.find(({ step, state }) => step === 'infusion' && state === 'running');
  return {
    name: fullName(person),
    born: bornInWords(identity?.born),
    number: identity?.number ?? 'no number recorded',
    dose: person.row().dose,
    firstTimer: course.firstTimer,
    allergies: allergiesInWords(person),
    armToAvoid:
      contact?.armToAvoid === undefined
        ? undefined
        : `${contact.armToAvoid} arm${contact.armToAvoidBecause === undefined ? '' : ` (${contact.armToAvoidBecause})`}`,
    needs: [...needsOf(person), ...supportLinesOf(person, on).map(({ says }) => says)],
    readiness:
      cameOf(visit) ??
      [
        `${person.verdictOn(on)?.headline ?? noProtocolInForce} (as things stood on ${shortDate(today)})`,
        ...exceptionsInWords(person, on, nameOf),
      ].join('; '),
    chair: visit?.arrived.body.chair,
    gone: visit?.over === true,
    order:
      prescription === undefined ? 'nothing: no prescription is in the notes' : orderInWords(prescription, protocol),
    leastMinutes: protocol?.number.runningMinutesLeast,
    questions: protocol?.sheet.dayQuestions.map(({ asks }) => asks) ?? [],
    watchMinutes: course.firstTimer ? protocol?.number.observeFirstMinutes : protocol?.number.observeLaterMinutes,
    recorded: Object.fromEntries(
      steps.filter(({ state }) => state === 'done').map((step) => [step.step, inTheNotes(step)]),
    ),
    running: runs === undefined ? undefined : `started ${inTheNotes(runs)}`,
  };
}

/** What came of it, once that is decided: asked anew, who had the dose today would be told as too early for the next. */
function cameOf(visit: Visit | undefined): string | undefined {
  if (visit === undefined || (visit.dose === undefined && !visit.putOff && !visit.over)) return undefined;
  const left = visit.left?.at?.slice(11, 16);
  return [outcomeOf(visit), ...(visit.over ? [`gone home${left === undefined ? '' : ` at ${left}`}`] : [])].join('; ');
}
