/** The letter to the family doctor about the last visit: as it was signed, or as it would be signed now. */
import {
  type Fact,
  type ReviewChoice,
  type Visit,
  consequencesOf,
  day as dayOf,
  entryText,
  factsOf,
  reviewSheetOf,
  visitToday,
} from '@twelvemonth/clinical';
import {
  type FamilyDoctorFacts,
  type Language,
  familyDoctorLetter,
  letterHtml,
  shortDateIn,
} from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import type { Member } from '../sign-in/accounts.ts';
import { bornInWords, fullName } from '../views/person-words.ts';

/** The letter about the newest review of the course: what was decided, and what follows from it. */
export function reviewLetterDocumentOf(atHand: AtHand, person: Person, signer: Member): string | Refused {
  const { record, today, unit } = person;
  const review = factsOf(record, 'course-review').findLast(({ on }) => on <= today);
  if (review === undefined || unit?.protocol === undefined)
    return new Refused(409, 'no-letter-yet', 'No review of the course is written yet: there is nothing to tell.');
  const { basis } = reviewSheetOf(record, unit.protocol, today);
  const { capacity, decidedBy, reason } = review.body;
  return documentOf(
    person,
    unit,
    { name: signer.name, role: signer.roles[0] ?? '' },
    {
      kind: 'reviewed',
      on: review.on,
      decided: decidedInWords(review.body, languageOf(unit)),
      decidedBy: `${decidedBy ?? atHand.accounts.nameOf(review.author.staff)}${capacity === 'specialist' ? ', specialist' : ''}`,
      reason,
      follows: consequencesOf(basis, choiceOf(review.body)),
    },
    unit.protocol.version,
  );
}

const languageOf = ({ unit }: UnitNow): Language => unit.letters?.language ?? 'en-GB';

function decidedInWords(body: Fact<'course-review'>['body'], language: Language): string {
  switch (body.outcome) {
    case 'carry on':
      return `carry on, up to ${body.toDoses} doses in this course`;
    case 'planned break':
      return `a planned break until ${shortDateIn(language, dayOf(body.reviewOn))}, sooner if: ${body.triggers}`;
    case 'other treatment':
      return `another treatment: ${body.to}, from ${shortDateIn(language, dayOf(body.dueOn))}`;
    case 'new course':
      return `a new course of ${body.plannedDoses} doses`;
    case 'stop':
      return 'the treatment ends';
  }
}

export function choiceOf(body: Fact<'course-review'>['body']): ReviewChoice {
  switch (body.outcome) {
    case 'carry on':
      return { outcome: body.outcome, toDoses: body.toDoses };
    case 'planned break':
      return { outcome: body.outcome, reviewOn: dayOf(body.reviewOn) };
    case 'other treatment':
      return { outcome: body.outcome, to: body.to, dueOn: dayOf(body.dueOn) };
    case 'new course':
      return { outcome: body.outcome, plannedDoses: body.plannedDoses };
    case 'stop':
      return { outcome: body.outcome };
  }
}

export function letterDocumentOf(atHand: AtHand, person: Person, signer: Member): string | Refused {
  const { record, today, unit } = person;
  const visit = visitToday(record, today);
  const outcome = visit === undefined || unit === undefined ? undefined : outcomeOf(visit, person, languageOf(unit));
  if (visit === undefined || unit === undefined || outcome === undefined) {
    return new Refused(
      409,
      'no-letter-yet',
      'There is nothing to write about yet: a letter follows a dose that was given or put off.',
    );
  }
  return documentOf(
    person,
    unit,
    signedBy(visit, signer, atHand),
    outcome,
    visit.decision?.body.basis.protocolVersion ?? unit.protocol?.version ?? 'none',
    visit.reactions.map((fact) => `${timeInWords(fact)}${entryText(fact)}`),
  );
}

const timeInWords = ({ at }: Fact): string => (at === undefined ? '' : `${at.slice(11, 16)}: `);

const documentOf = (
  person: Person,
  now: UnitNow,
  by: FamilyDoctorFacts['signedBy'],
  outcome: FamilyDoctorFacts['outcome'],
  protocolVersion: string,
  reactions: readonly string[] = [],
): string =>
  letterHtml(
    familyDoctorLetter({
      language: languageOf(now),
      unit: { name: now.unit.name, telephone: now.unit.telephone, demo: now.unit.demo },
      today: person.today,
      patient: {
        name: fullName(person),
        born: bornInWords(person.identity?.born, languageOf(now)),
        number: person.identity?.number ?? '',
      },
      familyDoctor: person.contact?.familyDoctor,
      signedBy: by,
      outcome,
      reactions,
      protocolVersion,
    }),
  );

/** Whoever signed it, once it is in the notes; until then the person who looks at it. */
function signedBy({ letter }: Visit, signer: Member, { accounts }: AtHand): FamilyDoctorFacts['signedBy'] {
  return letter === undefined
    ? { name: signer.name, role: signer.roles[0] ?? '' }
    : { name: accounts.nameOf(letter.author.staff), role: letter.author.role };
}

function outcomeOf(visit: Visit, { course }: Person, language: Language): FamilyDoctorFacts['outcome'] | undefined {
  if (visit.dose !== undefined) {
    const { partMilliliters, minutes, batch } = visit.dose.body;
    const number = course.doses.findIndex(({ id }) => id === visit.dose?.id) + 1;
    return {
      kind: 'given',
      on: visit.on,
      medicine: visit.dose.body.medicine,
      injectedInto: visit.injected ? (visit.dose.body.injectedInto ?? 'site not recorded') : undefined,
      doseNumber: number === 0 ? course.nextDoseNumber : number,
      plannedDoses: course.planned?.count,
      batch: batch ?? 'not recorded',
      expires:
        visit.preparation === undefined
          ? 'not recorded'
          : shortDateIn(language, dayOf(visit.preparation.body.expiresOn)),
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
    medicine: course.regimen?.medicine ?? 'the treatment that was planned',
    reason: [reasonCode, note].filter((part) => part !== undefined).join(': ') || 'not recorded',
    nextStep: nextStep ?? 'we will be in touch',
  };
}
