/** What a letter to or about one person is about, gathered from their notes; or why there is nothing to write. */
import {
  type Day,
  type Fact,
  addDays,
  counted,
  day as dayOf,
  entryText,
  factsOf,
  latest,
  plural,
  withOurUnit,
} from '@twelvemonth/clinical';
import {
  type FamilyDoctorRequest,
  type LetterMatter,
  type LetterName,
  familyDoctorRequests,
  type Language,
  shortDateIn,
} from '@twelvemonth/letters';
import { choiceOf } from '../documents/letter.ts';
import { whyNoDoseAhead } from '../documents/last-or-next.ts';
import type { Person } from '../register/people.ts';
import { allergiesInWords } from '../views/person-words.ts';

export type NothingToWrite = { readonly because: string };
export type MatterAsked = {
  readonly wanted?: string | undefined;
  readonly words?: string | undefined;
  /** The letter's. */
  readonly language: Language;
};

export function matterOf(person: Person, name: LetterName, asked: MatterAsked): LetterMatter | NothingToWrite {
  switch (name) {
    case 'invitation':
      return invitationOf(person);
    case 'bloods needed': {
      const because = whyNoDoseAhead(person);
      return because === undefined ? bloodsOf(person) : { because };
    }
    case 'put off':
      return putOffOf(person, asked.words);
    case 'review outcome':
      return reviewOf(person);
    case 'closing':
      return person.standing.standing === 'closed' ? { name } : { because: 'care here is not closed' };
    case 'transfer':
      return transferOf(person, asked.language);
    case 'no answer':
    case 'no answer, to the family doctor':
    case 'request to the family doctor':
    case 'request to the dentist': {
      const answerBy = answerByOf(person);
      return answerBy === undefined ? noDayToAnswer : askingFor(person, name, answerBy, asked);
    }
  }
}

const noDayToAnswer: NothingToWrite = {
  because: 'the unit has not said within how many days a letter is answered: it is told under Settings',
};

/** The day by which an answer is asked for; the unit's own number of days. */
function answerByOf({ unit, today }: Person): Day | undefined {
  const days = unit?.unit.letters?.answerWithinDays;
  return days === undefined ? undefined : addDays(today, days);
}

function askingFor(
  person: Person,
  name: 'no answer' | 'no answer, to the family doctor' | 'request to the family doctor' | 'request to the dentist',
  answerBy: Day,
  { wanted }: MatterAsked,
): LetterMatter | NothingToWrite {
  const { due, lastDose, lifetime } = person.course;
  switch (name) {
    case 'no answer':
      return { name, due, answerBy };
    case 'no answer, to the family doctor':
      return {
        name,
        due,
        answerBy,
        tried: triedIn(person),
        lastDose: lastDose === undefined ? undefined : told(lastDose),
      };
    case 'request to the family doctor': {
      const things = wantedIn(wanted);
      return things.length === 0
        ? { because: 'nothing is asked for yet' }
        : {
            name,
            due,
            answerBy,
            bloods: drawOf(person)?.between,
            wanted: things,
            doseAhead: whyNoDoseAhead(person) === undefined,
          };
    }
    case 'request to the dentist':
      return { name, due, answerBy, dosesGiven: lifetime };
  }
}

const wantedIn = (wanted: string | undefined): readonly FamilyDoctorRequest[] =>
  familyDoctorRequests.filter((one) => wanted?.split(',').includes(one) === true);

const told = ({ on, body }: Fact<'dose'>) => ({ on, medicine: body.medicine, batch: body.batch });

function invitationOf(person: Person): LetterMatter | NothingToWrite {
  const { place } = person;
  return place === undefined
    ? { because: 'no place is booked' }
    : { name: 'invitation', on: place.on, arriveAt: place.arriveAt, bloods: inTimeFor(place.on, person) };
}

/** Bloods that could count only after the place are not asked for with it: that place has to move first. */
function inTimeFor(on: Day, person: Person): { readonly from: Day; readonly until: Day } | undefined {
  const draw = person.readiness()?.nextSteps.find(({ kind }) => kind === 'draw');
  return draw === undefined || draw.effectFrom > on ? undefined : drawOf(person)?.between;
}

function bloodsOf(person: Person): LetterMatter | NothingToWrite {
  const draw = drawOf(person);
  return draw === undefined
    ? { because: 'no bloods are needed, or no last day for them is known' }
    : { name: 'bloods needed', ...draw };
}

const testNames = { creatinine: 'creatinine', calcium: 'adjusted calcium', 'vitamin D': 'vitamin D' } as const;

/** The next draw of blood, if its last day is known. */
export function drawOf(
  person: Person,
): { readonly between: { readonly from: Day; readonly until: Day }; readonly tests: readonly string[] } | undefined {
  const draw = person.readiness()?.nextSteps.find(({ kind }) => kind === 'draw');
  return draw?.latest === undefined || draw.latest < person.today
    ? undefined
    : {
        between: { from: draw.earliest, until: draw.latest },
        tests: (draw.tests ?? []).map((test) => testNames[test]),
      };
}

function putOffOf({ record, today, standing }: Person, words: string | undefined): LetterMatter | NothingToWrite {
  const decision = factsOf(record, 'go-decision').findLast(({ on }) => on <= today);
  if (decision?.body.decision !== 'put off') return { because: 'no dose was put off' };
  const { reasonCode, nextStep } = decision.body;
  return {
    name: 'put off',
    on: decision.on,
    reason: reasonCode ?? 'other',
    nextStep: words ?? nextStep,
    worryOn: standing.standing === 'put off' ? standing.on : undefined,
  };
}

function reviewOf({ record, today }: Person): LetterMatter | NothingToWrite {
  const review = factsOf(record, 'course-review').findLast(({ on }) => on <= today);
  return review === undefined
    ? { because: 'the course was not reviewed' }
    : { name: 'review outcome', on: review.on, decided: choiceOf(review.body) };
}

const toldOnTransfer = ['creatinine', 'adjusted calcium', 'vitamin D'] as const;

function transferOf(person: Person, language: Language): LetterMatter | NothingToWrite {
  const { record, course } = person;
  const transfer = latest(record, 'transfer-out');
  if (transfer === undefined) return { because: 'care was not handed over' };
  const chaseOn = dayOf(transfer.body.chaseOn);
  // A day that has passed is no day to answer by.
  const answerBy = chaseOn > person.today ? chaseOn : answerByOf(person);
  if (answerBy === undefined) return noDayToAnswer;
  const weight = latest(record, 'weight');
  const results = toldOnTransfer.flatMap((analyte) => {
    const newest = factsOf(record, 'result').findLast(({ body }) => body.analyte === analyte);
    return newest === undefined
      ? []
      : [[analyte, `${withOurUnit(analyte, newest.body.quantity)}, ${shortDateIn(language, newest.on)}`] as const];
  });
  return {
    name: 'transfer',
    treatment: course.regimen?.title ?? 'not prescribed',
    doses: factsOf(record, 'dose').map(told),
    due: course.due,
    given: course.doses.length,
    planned: course.planned?.count,
    reactions: factsOf(record, 'reaction').map((fact) => `${entryText(fact)}, ${shortDateIn(language, fact.on)}`),
    allergies: allergiesInWords(person),
    results: [
      ...results,
      ...(weight === undefined
        ? []
        : [
            [
              'weight',
              `${withOurUnit('weight', weight.body.quantity)}, ${weight.body.method}, ${shortDateIn(language, weight.on)}`,
            ] as const,
          ]),
    ],
    answerBy,
  };
}

/** "2 tries by telephone and 1 try by letter", since they were last reached; what a nurse wrote goes before it. */
function triedIn({ record }: Person): string {
  const written = latest(record, 'cannot-be-reached');
  if (written !== undefined) return written.body.tried;
  const calls = factsOf(record, 'call');
  const since = calls.slice(calls.findLastIndex(({ body }) => body.reached) + 1).map(({ body }) => body.route);
  const tries = [...new Set(since)].map(
    (route) => `${counted(since.filter((one) => one === route).length, 'try', 'tries')} by ${route}`,
  );
  return tries.length === 0 ? 'nothing is written down' : plural(tries, 'and');
}
