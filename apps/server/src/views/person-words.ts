/** How a person is written on every screen: name, birth date, allergies, what they need, where they stand. */
import { type Day, ageOn, factsOf, parsePartialDate, plainDate } from '@twelvemonth/clinical';
import type { PlaceView, StandingView } from '@twelvemonth/exchange';
import { type Language, longDateIn } from '@twelvemonth/letters';
import type { Person } from '../register/people.ts';

export const fullName = ({ identity, patient }: Pick<Person, 'identity' | 'patient'>): string =>
  identity === undefined ? `no name recorded (${patient})` : `${identity.given} ${identity.family}`;

/** "2 June 1941", in a letter as its reader writes dates; "1941, day and month not recorded". */
export function bornInWords(born: string | undefined, language: Language = 'en-GB'): string {
  const known = born === undefined ? undefined : parsePartialDate(born);
  if (known === undefined) return 'not recorded';
  switch (known.precision) {
    case 'day':
      return longDateIn(language, known.day);
    case 'month':
      return `${String(known.month).padStart(2, '0')}/${known.year}, day not recorded`;
    case 'year':
      return `${known.year}, day and month not recorded`;
  }
}

export function ageOf(born: string | undefined, today: Day): number | undefined {
  const known = born === undefined ? undefined : parsePartialDate(born);
  return known?.precision === 'day' ? ageOn(known.day, today) : undefined;
}

/** Every allergy recorded, or the plain fact that nobody has asked: silence is not "none". */
export function allergiesInWords({ record }: Pick<Person, 'record'>): string {
  const facts = factsOf(record, 'allergy');
  if (facts.length === 0) return 'allergies not asked';
  const named = facts.flatMap(({ body }) => {
    if (body.answer === 'none known') return [];
    const substance = body.answer === 'bisphosphonate' ? 'a bisphosphonate' : body.substance;
    return [body.reaction === undefined ? substance : `${substance} (${body.reaction})`];
  });
  return named.length === 0 ? 'no known allergies' : `allergic to ${[...new Set(named)].join(', ')}`;
}

export const needsOf = ({ contact }: Pick<Person, 'contact'>): string[] => [
  ...(contact?.needs ?? []),
  ...(contact?.language === undefined ? [] : [`speaks ${contact.language}`]),
];

export const standingViewOf = ({ standing }: Pick<Person, 'standing'>): StandingView => ({
  standing: standing.standing,
  says: standing.says,
  owner: standing.owner,
  unit: standing.unit,
  ...(standing.on === undefined ? {} : { on: plainDate(standing.on) }),
  since: plainDate(standing.since),
});

export const placeViewOf = ({ place }: Pick<Person, 'place'>): PlaceView | undefined =>
  place === undefined
    ? undefined
    : {
        session: place.session,
        unit: place.unit,
        on: plainDate(place.on),
        arriveAt: place.arriveAt,
        place: place.place,
      };
