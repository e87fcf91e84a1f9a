/** Whether two people's notes are one person's, as the person's page and the comparison show it. */
import { type SamePersonAnswer, leftOpen, newestAnswers, plainDate, sideBySide } from '@twelvemonth/clinical';
import type { PersonView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import { lookAlikesOf } from './look-alikes.ts';
import { bornInWords, fullName } from './person-words.ts';

type AlikeView = PersonView['lookAlikes'][number];
type NameOf = (staff: string) => string;

/** Everyone who looks alike, and everyone of whom the notes leave it open; the open ones first. */
export function alikeViewsOf(everyone: readonly Person[], person: Person, nameOf: NameOf): AlikeView[] {
  const answers = new Map(newestAnswers(person.record).map((answer) => [answer.body.other, answer]));
  const alike = new Map(lookAlikesOf(everyone, person).map((one) => [one.patient, one.says]));
  for (const { body } of leftOpen(person.record)) {
    const other = everyone.find(({ patient }) => patient === body.other);
    if (other !== undefined && !alike.has(other.patient))
      alike.set(
        other.patient,
        `${fullName(other)}, born ${bornInWords(other.identity?.born)}, number ${other.identity?.number ?? 'not recorded'}: ${body.reason}`,
      );
  }
  return [...alike]
    .flatMap(([patient, says]) => {
      const other = everyone.find((one) => one.patient === patient);
      return other === undefined ? [] : [viewOf(person, other, says, answers.get(patient), nameOf)];
    })
    .toSorted((a, b) => Number(a.answer === 'two') - Number(b.answer === 'two'));
}

function viewOf(
  person: Person,
  other: Person,
  says: string,
  answer: SamePersonAnswer | undefined,
  nameOf: NameOf,
): AlikeView {
  const compared = sideBySide(person.record, other.record).map(({ identifier, these, other: theirs, says: how }) => ({
    identifier,
    ...(these === undefined ? {} : { these }),
    ...(theirs === undefined ? {} : { other: theirs }),
    says: how,
  }));
  const shown = {
    patient: other.patient,
    name: fullName(other),
    number: other.identity?.number ?? '',
    says,
    standing: other.standing.says,
    doses: other.course.doses.length,
    compared,
  };
  if (answer === undefined || answer.body.answer === 'one') return { ...shown, answer: 'nothing said' };
  const { staff } = answer.author;
  return {
    ...shown,
    answer: answer.body.answer,
    answered: { by: nameOf(staff), staff, on: plainDate(answer.on), reason: answer.body.reason },
    ...(answer.body.answer === 'proposed' ? { kept: answer.body.kept, agree: [...answer.body.agree] } : {}),
  };
}

export const togetherViewsOf = ({ record }: Person, nameOf: NameOf): PersonView['together'] =>
  (record.together ?? []).flatMap(({ patient, identities }) => {
    const answer = newestAnswers(record).find(({ body }) => body.other === patient);
    const identity = identities.at(-1);
    if (answer?.body.answer !== 'one') return [];
    return [
      {
        patient,
        name: identity === undefined ? 'no name recorded' : `${identity.given} ${identity.family}`,
        number: identity?.number ?? '',
        since: plainDate(answer.on),
        by: nameOf(answer.author.staff),
        agree: [...answer.body.agree],
        reason: answer.body.reason,
      },
    ];
  });
