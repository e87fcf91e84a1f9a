/** Somebody is asked how they are after a dose: on the telephone, by the script, and once more where the line was closed on the third day. */
import {
  type Author,
  type BodyOfKind,
  type Fact,
  type ReactionSymptom,
  addDays,
  aftercareLines,
  contactsAfter,
  dangerSignNames,
  factsOf,
  isAdviceLineDay,
  nextAdviceLineDay,
  plainDate,
  reactionSymptoms,
} from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';

type Asked = Extract<BodyOfKind<'aftercare'>, { outcome: 'asked' }>;

const usual: readonly [readonly ReactionSymptom[], ...(readonly ReactionSymptom[])[]] = [
  ['fever or shivering', 'aching muscles or joints'],
  ['fever or shivering', 'very tired'],
  ['headache', 'aching muscles or joints'],
];

export function* isAskedAfter(me: Me, feltRough: boolean): Life {
  const { chance } = me;
  const dose = factsOf(me.record(), 'dose').at(-1);
  const calendar = me.context()?.calendar;
  if (dose === undefined || calendar === undefined) return;
  const nurse = me.by('nurse');
  const felt = feltRough
    ? { what: chance.oneOf(usual), days: chance.between(1, 3), isMild: chance.isTrue(0.85) }
    : undefined;
  if (!isAdviceLineDay(calendar, me.today)) yield* me.onDay(nextAdviceLineDay(calendar, me.today), 10);
  yield* tells(me, nurse, answersOf(me, dose, felt));
  const isFirst = factsOf(me.record(), 'dose').filter(({ body }) => body.medicine === dose.body.medicine).length === 1;
  const [, second] = contactsAfter(dose.on, { firstDays: 1, lastDays: 3 }, calendar);
  if (!isFirst || second === undefined || me.today >= second.from) return;
  yield* me.onDay(second.from, 11);
  yield* tells(me, nurse, answersOf(me, dose, undefined));
}

export function* tells(me: Me, by: Author, answers: Asked): Life {
  yield* me.does(by, {
    name: 'record together',
    patient: me.patient,
    lines: aftercareLines(answers, me.today).map(({ kind, body, on }) => ({
      kind,
      body,
      effectiveAt: plainDate(on),
    })),
  });
}

export function answersOf(
  me: Me,
  dose: Fact<'dose'>,
  felt: { readonly what: readonly ReactionSymptom[]; readonly days: number; readonly isMild: boolean } | undefined,
  more: Partial<Asked> = {},
): Asked {
  const endedOn = felt === undefined ? me.today : addDays(dose.on, felt.days);
  return {
    outcome: 'asked',
    dose: dose.first,
    how: 'telephone',
    toldBy: 'the person',
    feels: felt === undefined ? 'as before the dose' : felt.isMild ? 'a little rough' : 'rough',
    felt: (felt?.what ?? []).map((what) => ({
      what,
      beganOn: plainDate(dose.on),
      severity: felt?.isMild === false ? 'moderate' : 'mild',
      ...(endedOn < me.today ? { endedOn: plainDate(endedOn) } : {}),
    })),
    notFelt: reactionSymptoms.filter((symptom) => felt?.what.includes(symptom) !== true),
    signs: [],
    notSigns: dangerSignNames,
    drinks: 'as usual or more',
    paracetamol: felt === undefined ? 'none' : 'as told',
    ...more,
  };
}
