/** The letter to the family doctor about the last visit: as it was signed, or as it would be signed now. */
import { type Visit, day as dayOf, shortDate, visitToday } from '@twelvemonth/clinical';
import { type FamilyDoctorFacts, familyDoctorLetter, letterHtml } from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { Member } from '../sign-in/accounts.ts';
import { bornInWords, fullName } from '../views/person-words.ts';

export function letterDocumentOf(atHand: AtHand, person: Person, signer: Member): string | Refused {
  const { record, today, unit, contact, identity } = person;
  const visit = visitToday(record, today);
  const outcome = visit === undefined ? undefined : outcomeOf(visit, person);
  if (visit === undefined || unit === undefined || outcome === undefined) {
    return new Refused(
      409,
      'no-letter-yet',
      'There is nothing to write about yet: a letter follows a dose that was given or put off.',
    );
  }
  return letterHtml(
    familyDoctorLetter({
      unit: { name: unit.unit.name, telephone: unit.unit.telephone, demo: unit.unit.demo },
      today,
      patient: { name: fullName(person), born: bornInWords(identity?.born), number: identity?.number ?? '' },
      familyDoctor: contact?.familyDoctor,
      signedBy: signedBy(visit, signer, atHand),
      outcome,
      protocolVersion: visit.decision?.body.basis.protocolVersion ?? unit.protocol?.version ?? 'none',
    }),
  );
}

/** Whoever signed it, once it is in the notes; until then the person who looks at it. */
function signedBy({ letter }: Visit, signer: Member, { accounts }: AtHand): FamilyDoctorFacts['signedBy'] {
  return letter === undefined
    ? { name: signer.name, role: signer.roles[0] ?? '' }
    : { name: accounts.nameOf(letter.author.staff), role: letter.author.role };
}

function outcomeOf(visit: Visit, { course }: Person): FamilyDoctorFacts['outcome'] | undefined {
  if (visit.dose !== undefined) {
    const { partMilliliters, minutes, batch } = visit.dose.body;
    const number = course.doses.findIndex(({ id }) => id === visit.dose?.id) + 1;
    return {
      kind: 'given',
      on: visit.on,
      doseNumber: number === 0 ? course.nextDoseNumber : number,
      plannedDoses: course.planned?.count ?? 0,
      batch: batch ?? 'not recorded',
      expires: visit.preparation === undefined ? 'not recorded' : shortDate(dayOf(visit.preparation.body.expiresOn)),
      minutes,
      partMilliliters,
      nextDue: course.due,
      bloodsBetween: course.recall?.bloods,
      reviewNext: course.review !== undefined,
    };
  }
  const decision = visit.decision;
  if (decision?.body.decision !== 'put off') return undefined;
  const { reasonCode, note, nextStep } = decision.body;
  return {
    kind: 'put off',
    on: visit.on,
    reason: [reasonCode, note].filter((part) => part !== undefined).join(': ') || 'not recorded',
    nextStep: nextStep ?? 'we will be in touch',
  };
}
