/** A visit's steps for the visit strip, and where the person on the list has got to. */
import { type Day, type Visit, outcomeOf, visitOn, visitSteps } from '@twelvemonth/clinical';
import type { ListedPatient, VisitStep } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName, needsOf } from './person-words.ts';

type NameOf = (staff: string) => string;

/** Before anyone has arrived, arriving is what waits. */
export function visitStepsOf(visit: Visit | undefined, nameOf: NameOf): VisitStep[] {
  if (visit === undefined)
    return visitSteps.map((step) => ({ step, state: step === 'arrive' ? 'waiting' : 'to come' }));
  return visit.steps.map(({ step, state, fact, says }) => ({
    step,
    state,
    ...(fact?.at === undefined ? {} : { at: fact.at }),
    ...(fact === undefined ? {} : { by: nameOf(fact.author.staff) }),
    ...(says === undefined ? {} : { says }),
  }));
}

/** A person as one line of a session's list. */
export function listedPatientOf(person: Person, on: Day, nameOf: NameOf): ListedPatient {
  const visit = visitOn(person.record, on);
  const found = person.verdictOn(on);
  return {
    patient: person.patient,
    name: fullName(person),
    number: person.identity?.number ?? '',
    born: person.identity?.born ?? '',
    dose: person.row().dose,
    firstTimer: person.course.firstTimer,
    verdict: found?.verdict ?? 'cannot say',
    headline: found?.headline ?? noProtocolInForce,
    needs: needsOf(person),
    steps: visitStepsOf(visit, nameOf),
    outcome: outcomeOf(visit),
  };
}
