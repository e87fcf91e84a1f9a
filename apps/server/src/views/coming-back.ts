/** One person before the next dose: the checklist of the recall, the tries, what was felt last time, what each no would mean. */
import {
  type Fact,
  type RecallAnswer,
  type Tried,
  addDays,
  contactPeople,
  contactPersonText,
  entryText,
  factsOf,
  isTriedEnough,
  noContactWanted,
  plainDate,
  recallChecklist,
  shortDate,
  triedSince,
} from '@twelvemonth/clinical';
import type { ComingBackView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName, standingViewOf } from './person-words.ts';

export function comingBackViewOf(person: Person): ComingBackView {
  const { record, course, today, identity, contact, unit } = person;
  const tried = triedIn(person);
  const numbers = unit?.protocol?.number;
  const no = noContactWanted(record, today);
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    born: bornInWords(identity?.born),
    number: identity?.number ?? '',
    ...(contact?.telephone === undefined ? {} : { telephone: contact.telephone }),
    ...(contact?.address === undefined ? {} : { address: contact.address }),
    today: plainDate(today),
    standing: standingViewOf(person),
    dose: person.row().dose,
    ...(course.due === undefined ? {} : { due: plainDate(course.due) }),
    ...(course.lastDose === undefined ? {} : { lastDose: plainDate(course.lastDose.on) }),
    ...(course.recall === undefined ? {} : { recallFrom: plainDate(course.recall.from) }),
    // Of somebody who comes back late they were to be drawn long ago: what is missing now stands below.
    ...(course.recall?.bloods === undefined || course.recall.bloods.until < today
      ? {}
      : {
          bloodsBetween: { from: plainDate(course.recall.bloods.from), until: plainDate(course.recall.bloods.until) },
        }),
    checklist: checklistOf(person).map((one) => ({ ...one })),
    tried: tried?.says ?? 'not tried yet',
    reached: tried?.reached === true,
    triedEnough: tried !== undefined && isTriedEnough(tried),
    felt: feltAfterLastDose(person),
    dosesGiven: course.lifetime,
    speakTo: contactPeople(record, today).map(({ first, body }) => ({ entry: first, says: contactPersonText(body) })),
    ...(numbers === undefined
      ? {}
      : {
          askAgain: {
            thisDose: plainDate(addDays(today, numbers.askAgainDoseDays)),
            thisMedicine: plainDate(addDays(today, numbers.askAgainMedicineDays)),
            allContact: plainDate(addDays(today, numbers.askAgainContactDays)),
          },
        }),
    ...(no === undefined ? {} : { noCall: `They said no to all contact on ${shortDate(no.on)}: nobody rings.` }),
  };
}

/** Once it has begun. */
const recallNow = ({ course, today }: Person): Person['course']['recall'] =>
  course.recall === undefined || course.recall.from > today ? undefined : course.recall;

/** Empty until the recall begins. */
export function checklistOf(person: Person): readonly RecallAnswer[] {
  const { record, course, today } = person;
  const recall = recallNow(person);
  if (recall === undefined) return [];
  const { bloods } = recall;
  // Once the due day has passed, what is in date today is asked for.
  const late = course.due === undefined ? 0 : Math.max(0, today - course.due);
  return recallChecklist(record, {
    from: recall.from,
    bloods:
      bloods === undefined || late === 0
        ? bloods
        : { from: addDays(bloods.from, late), until: addDays(bloods.until, late) },
    lastDose: course.lastDose?.on,
    today,
  });
}

export function triedIn(person: Person): Tried | undefined {
  const recall = recallNow(person);
  return recall === undefined ? undefined : triedSince(person.record, recall.from, person.today);
}

/** Reactions since the last dose; the one at the chair has what became of the infusion. */
export function feltAfterLastDose({ record, course, today }: Person): ComingBackView['felt'] {
  const since = course.lastDose?.on;
  if (since === undefined) return [];
  return factsOf(record, 'reaction')
    .filter(({ on }) => on >= since && on <= today)
    .map((fact: Fact<'reaction'>) => ({
      entry: fact.first,
      on: plainDate(fact.on),
      says: `${entryText(fact)} (${shortDate(fact.on)})`,
      severity: fact.body.severity,
      atTheChair: fact.body.infusion !== undefined,
    }));
}
