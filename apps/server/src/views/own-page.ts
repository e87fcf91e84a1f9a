/** A person's own page as the unit sees it, and the same questions on paper. */
import {
  type Day,
  aheadQuestions,
  contactsAfter,
  entryText,
  everyDay,
  factsOf,
  looksOn,
  noContactWanted,
  openPageOf,
  parsePartialDate,
  plainDate,
  toldAndNotSeen,
  wayToRemind,
} from '@twelvemonth/clinical';
import type { OwnPageView } from '@twelvemonth/exchange';
import { ownPageWords, questionsOnPaper } from '@twelvemonth/letters';
import type { AtHand } from '../at-hand.ts';
import { addressNotSent } from '../own-page/send-address.ts';
import { ownPageFactsOf } from '../own-page/page-of.ts';
import { Refused } from '../problem.ts';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName } from './person-words.ts';

export function ownPageViewOf(atHand: AtHand, person: Person): OwnPageView {
  const { record, today, identity, place, unit } = person;
  const open = openPageOf(record, today);
  const because = notHereBecause(atHand, person);
  const waiting = toldAndNotSeen(record);
  const way = wayToRemind(record);
  const notSent = addressNotSent(atHand, person);
  const words = ownPageWords[unit?.unit.letters?.language ?? 'en-GB'];
  return {
    patient: person.patient,
    seq: record.lastSeq,
    name: fullName(person),
    born: bornInWords(identity?.born),
    number: identity?.number ?? '',
    today: plainDate(today),
    ...(open === undefined
      ? {}
      : { open: { entry: open.entry, since: plainDate(open.since), until: plainDate(open.until) } }),
    ...(place === undefined ? {} : { until: plainDate(untilFor(person, place.on)) }),
    ...('because' in way ? {} : { way }),
    ...(notSent === undefined ? {} : { notSent }),
    ...(because === undefined ? {} : { notHere: because }),
    questions: aheadQuestions.map((id) => ({ id, asks: words[id], looksOn: looksOn(id) })),
    told: factsOf(record, 'told-ahead')
      .map((told) => {
        const seen = factsOf(record, 'looked-again').findLast(({ body }) => body.about === told.id);
        return {
          entry: told.id,
          on: plainDate(told.on),
          words: entryText(told),
          waits: waiting.includes(told),
          ...(seen === undefined ? {} : { finding: seen.body.finding }),
        };
      })
      .toReversed(),
  };
}

/** Until they were asked how they were after the dose of that day, where anybody will ask. */
function untilFor({ course, unit }: Person, visit: Day): Day {
  const numbers = unit?.protocol?.number;
  if (!course.firstTimer || numbers === undefined) return visit;
  const days = { firstDays: numbers.aftercareFirstDays, lastDays: numbers.aftercareCallDays };
  return contactsAfter(visit, days, unit?.unit.calendar ?? everyDay).at(-1)?.by ?? visit;
}

function notHereBecause({ ownPageAddress }: AtHand, person: Person): string | undefined {
  const { identity, record, today, standing } = person;
  if (standing.standing === 'died') return 'this person has died';
  if (noContactWanted(record, today) !== undefined) return 'they said no to all contact';
  if (ownPageAddress() === undefined) return "people's own pages are not served here; the questions can be printed";
  return identity === undefined || parsePartialDate(identity.born)?.precision !== 'day'
    ? 'the page is opened by the birth date, and it is not known to the day'
    : undefined;
}

export function questionsDocumentOf(person: Person): string | Refused {
  if (person.standing.standing === 'died')
    return new Refused(409, 'has-died', 'This person has died: nothing is printed for them.');
  if (person.unit === undefined)
    return new Refused(409, 'no-unit', 'They belong to no unit yet: nobody would read it.');
  const about = [fullName(person), `born ${bornInWords(person.identity?.born)}`, person.identity?.number ?? ''];
  return questionsOnPaper(ownPageFactsOf(person), about.filter((one) => one !== '').join(', '));
}
