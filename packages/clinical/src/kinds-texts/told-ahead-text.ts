/** Answers to the questions before a visit, in a few words. */
import type { BodyOfKind } from '../kinds/index.ts';
import { type AheadQuestion, aheadQuestions } from '../kinds/told-ahead.ts';

const about: Readonly<Record<AheadQuestion, string>> = {
  'unwell-now': 'unwell',
  'ill-since-bloods': 'ill or a scan since the bloods',
  'new-medicine': 'a new medicine',
  'other-bone-medicine': 'another bone medicine',
  teeth: 'teeth or jaw',
  thigh: 'thigh, hip or groin',
  eye: 'eyes',
  'can-drink': 'can drink plenty',
};

type Told = BodyOfKind<'told-ahead'>;

const withWords = ({ answer, words }: NonNullable<Told['answers'][AheadQuestion]>): string =>
  words === undefined ? answer : `${answer} ("${words}")`;

export function toldText({ answers, otherDay }: Told): string {
  const parts = aheadQuestions.flatMap((question) => {
    const given = answers[question];
    return given === undefined ? [] : [`${about[question]} ${withWords(given)}`];
  });
  return [...parts, ...(otherDay === undefined ? [] : [`asks for another day: "${otherDay}"`])].join('; ');
}

export function toldAnswerText({ answers }: Told, question: string): string | undefined {
  const asked = aheadQuestions.find((one) => one === question);
  const given = asked === undefined ? undefined : answers[asked];
  return given === undefined ? undefined : withWords(given);
}
