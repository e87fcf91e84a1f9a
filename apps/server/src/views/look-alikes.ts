/** Who could be mistaken for whom: the same number, or the same birth date with a similar name. */
import type { BodyOfKind } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName } from './person-words.ts';
import { plainLetters } from './people-list.ts';

type Identity = BodyOfKind<'identity'>;
export type LookAlike = {
  readonly patient: string;
  readonly name: string;
  readonly says: string;
  readonly why: string;
};

const digits = (text: string): string => text.replace(/\D/g, '');

/** People like this one; the person themselves left out. */
export const lookAlikesOf = (everyone: readonly Person[], person: Pick<Person, 'patient' | 'identity'>): LookAlike[] =>
  person.identity === undefined ? [] : looksLike(everyone, person.identity, person.patient);

export function looksLike(everyone: readonly Person[], identity: Identity, but: string | undefined): LookAlike[] {
  return everyone.flatMap((other) => {
    if (other.patient === but || other.identity === undefined) return [];
    const why = alike(identity, other.identity);
    return why === undefined
      ? []
      : [
          {
            patient: other.patient,
            name: fullName(other),
            says: `${fullName(other)}, born ${bornInWords(other.identity.born)}, number ${other.identity.number}: ${why}`,
            why,
          },
        ];
  });
}

/** Every two people who look alike, once. Compared within birth years and numbers, outside of which nobody is alike. */
export function pairsOf(everyone: readonly Person[]): (readonly [Person, LookAlike])[] {
  const groups = new Map<string, Person[]>();
  for (const person of everyone) {
    if (person.identity === undefined) continue;
    for (const key of [`born ${person.identity.born.slice(0, 4)}`, `number ${digits(person.identity.number)}`]) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [person]);
      else group.push(person);
    }
  }
  const pairs = new Map<string, readonly [Person, LookAlike]>();
  for (const group of groups.values()) {
    for (const [index, person] of group.entries()) {
      for (const other of lookAlikesOf(group.slice(index + 1), person))
        pairs.set([person.patient, other.patient].toSorted().join(' '), [person, other]);
    }
  }
  return [...pairs.values()];
}

function alike(one: Identity, other: Identity): string | undefined {
  if (digits(one.number).length > 3 && digits(one.number) === digits(other.number)) return 'the same number';
  const sameFamily = familyNames(one).some((name) => familyNames(other).some((candidate) => closeTo(name, candidate)));
  const sameGiven = closeTo(plainLetters(one.given), plainLetters(other.given));
  if (one.born === other.born && one.born.length === 10 && (sameFamily || sameGiven))
    return sameFamily && sameGiven ? 'the same name and birth date' : 'the same birth date and a similar name';
  if (sameFamily && sameGiven && (swapped(one.born, other.born) || one.born.slice(0, 4) === other.born.slice(0, 4)))
    return 'the same name and a similar birth date';
  return undefined;
}

const familyNames = ({ family, formerNames }: Identity): string[] => [family, ...(formerNames ?? [])].map(plainLetters);

/** Day and month the other way round: how a birth date is most often mistyped. */
const swapped = (one: string, other: string): boolean =>
  one.length === 10 && `${one.slice(0, 4)}-${one.slice(8)}-${one.slice(5, 7)}` === other;

/** Equal but for one letter changed, left out or too many. */
function closeTo(one: string, other: string): boolean {
  if (one === other) return true;
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  if (long.length - short.length > 1 || short.length < 4) return false;
  let index = 0;
  while (index < short.length && short[index] === long[index]) index += 1;
  return short.length === long.length
    ? short.slice(index + 1) === long.slice(index + 1)
    : short.slice(index) === long.slice(index + 1);
}

/** Names on one list that are easily taken for each other. */
export const nearNames = (person: Person, others: readonly Person[]): string[] =>
  others.flatMap((other) => {
    if (other.patient === person.patient || other.identity === undefined || person.identity === undefined) return [];
    const near =
      closeTo(plainLetters(other.identity.family), plainLetters(person.identity.family)) ||
      other.identity.born === person.identity.born;
    return near ? [`${fullName(other)}, born ${bornInWords(other.identity.born)}`] : [];
  });
