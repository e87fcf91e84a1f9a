/** The report of a suspected reaction, gathered from the notes. */
import {
  type Fact,
  addMonths,
  day,
  dosesGiven,
  entryText,
  factWithId,
  factsOf,
  latest,
  quantityText,
  shortDate,
} from '@twelvemonth/clinical';
import type { ReactionReportView } from '@twelvemonth/exchange';
import { adverseEventReport } from '@twelvemonth/letters';
import { Refused, notHere } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { Member } from '../sign-in/accounts.ts';
import type { AtHand } from '../at-hand.ts';
import { gradedResult } from './graded-result.ts';
import { ageOf, allergiesInWords, fullName } from '../views/person-words.ts';

/** "In the last three months" is what the schemes ask for (from memory). */
const MONTHS_ASKED = 3;

export function reactionReportOf(
  atHand: AtHand,
  person: Person,
  reaction: string,
  reporter: Member,
): ReactionReportView | Refused {
  const { record, unit, identity, today } = person;
  const found = factWithId(record, reaction);
  if (found?.kind !== 'reaction') return notHere('reaction');
  const fact = found as Fact<'reaction'>;
  const { body, on } = fact;
  const dose = factsOf(record, 'dose').findLast((one) => one.on <= on);
  const weight = factsOf(record, 'weight').findLast((one) => one.on <= on);
  const { text, missing } = adverseEventReport({
    demo: unit?.unit.demo ?? atHand.demo !== undefined,
    today,
    unit: { name: unit?.unit.name ?? '', telephone: unit?.unit.telephone ?? '' },
    reporter: { name: reporter.name, role: reporter.roles[0] ?? '' },
    patient: {
      initials: initialsOf(identity),
      reference: person.patient,
      sex: identity?.sex,
      ageYears: ageOf(identity?.born, on),
      weight: weight === undefined ? undefined : `${quantityText(weight.body.quantity)} on ${shortDate(weight.on)}`,
    },
    medicine:
      dose === undefined
        ? undefined
        : {
            name: dose.body.medicine,
            on: dose.on,
            batch: dose.body.batch,
            route: dose.body.injectedInto === undefined ? 'into a vein' : 'under the skin or into a vein, by injection',
            minutes: dose.body.minutes,
            doseNumber: doseNumber(person, dose),
            indication: latest(record, 'referral')?.body.reason,
          },
    reaction: {
      what: body.what,
      began: on,
      days: body.days,
      severity: body.severity,
      grade:
        body.grade === undefined
          ? undefined
          : `${body.term ?? ''} grade ${body.grade}, CTCAE ${body.gradeVersion ?? ''}`,
      treated: body.actions ?? [],
      outcome: body.outcome,
      infusion: body.infusion,
    },
    tests: factsOf(record, 'result')
      .filter((one) => one.on >= addMonths(on, -MONTHS_ASKED) && one.on <= today)
      .map((one) => gradedResult(record, one)),
    otherMedicines: factsOf(record, 'medicine')
      .filter(
        ({ on: begun, body: { stoppedOn } }) =>
          begun <= on && (stoppedOn === undefined || day(stoppedOn) >= addMonths(on, -MONTHS_ASKED)),
      )
      .map((one) => entryText(one)),
    conditions: factsOf(record, 'condition').map((one) => entryText(one)),
    allergies: allergiesInWords(person),
  });
  return {
    patient: person.patient,
    name: fullName(person),
    reaction: fact.first,
    text,
    missing: [...missing],
    reported: factsOf(record, 'reaction-reported')
      .filter((one) => one.body.reaction === fact.first || one.body.reaction === fact.id)
      .map((one) => `${entryText(one)}, ${shortDate(one.on)}`),
  };
}

const initialsOf = (identity: Person['identity']): string =>
  identity === undefined ? '' : [identity.given, identity.family].map((name) => `${name.charAt(0)}.`).join(' ');

const doseNumber = ({ record }: Person, dose: Fact<'dose'>): number =>
  (dosesGiven(record, dose.on).get(dose.body.medicine)?.counting.length ?? 0) || 1;
