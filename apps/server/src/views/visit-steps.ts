/** A visit's steps for the visit strip, and where the person on the list has got to. */
import {
  type Day,
  type Verdict,
  type Visit,
  dripSteps,
  givenDoseInWords,
  outcomeOf,
  shortDate,
  visitOn,
} from '@twelvemonth/clinical';
import type { ListedPatient, VisitStep } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { nearNames } from './look-alikes.ts';
import { exceptionsInWords } from './exceptions.ts';
import { noProtocolInForce } from './person-row.ts';
import { supportLinesOf } from './supports.ts';
import { fullName, needsOf } from './person-words.ts';

type NameOf = (staff: string) => string;

/** Before anyone has arrived, arriving is what waits. */
export function visitStepsOf(visit: Visit | undefined, nameOf: NameOf): VisitStep[] {
  if (visit === undefined) return dripSteps.map((step) => ({ step, state: step === 'arrive' ? 'waiting' : 'to come' }));
  return visit.steps.map(({ step, state, fact, says }) => ({
    step,
    state,
    ...(fact?.at === undefined ? {} : { at: fact.at }),
    ...(fact === undefined ? {} : { by: nameOf(fact.author.staff) }),
    ...(says === undefined ? {} : { says }),
  }));
}

/** A person as one line of a session's list. */
export function listedPatientOf(person: Person, on: Day, nameOf: NameOf, onTheList: readonly Person[]): ListedPatient {
  const visit = visitOn(person.record, on);
  const found = verdictFor(person, visit, on);
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    born: person.identity?.born ?? '',
    dose: visit?.dose === undefined ? person.row().dose : givenDoseInWords(person.course, visit.dose),
    firstTimer: person.course.firstTimer,
    verdict: found.verdict,
    headline: found.headline,
    exceptions: visit?.dose === undefined ? exceptionsInWords(person, on, nameOf) : [],
    needs: needsOf(person),
    nearNames: nearNames(person, onTheList),
    supports: supportLinesOf(person, on),
    steps: visitStepsOf(visit, nameOf),
    outcome: outcomeOf(visit),
  };
}

/** Once the dose is given, what the decision for it rested on: asked again, the interval would say no. */
function verdictFor(person: Person, visit: Visit | undefined, on: Day): { verdict: Verdict; headline: string } {
  if (visit?.dose !== undefined && visit.decision !== undefined) {
    const { course } = person;
    const next = course.due === undefined ? (course.review?.says ?? '') : `next due ${shortDate(course.due)}`;
    return { verdict: visit.decision.body.basis.verdict, headline: next === '' ? 'given' : `given; ${next}` };
  }
  return person.verdictOn(on) ?? { verdict: 'cannot say', headline: noProtocolInForce };
}
