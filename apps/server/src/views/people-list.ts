/** The list of people, and search from anywhere. */
import { type Standing, parseShortDate, plainDate, standings } from '@twelvemonth/clinical';
import type { peopleAnswer, peopleQuery, searchAnswer } from '@twelvemonth/exchange';
import type { z } from 'zod';
import type { Person } from '../register/people.ts';
import { bornInWords, fullName } from './person-words.ts';

export function peopleListOf(
  everyone: readonly Person[],
  asked: z.infer<typeof peopleQuery>,
): z.infer<typeof peopleAnswer> {
  const ofUnit = asked.unit === undefined ? everyone : everyone.filter((person) => isListedAt(asked.unit, person));
  const chosen =
    asked.standing === undefined ? ofUnit : ofUnit.filter((person) => person.standing.standing === asked.standing);
  const count = new Map<Standing, number>();
  for (const { standing } of ofUnit) count.set(standing.standing, (count.get(standing.standing) ?? 0) + 1);
  return {
    people: chosen.slice(0, asked.limit ?? chosen.length).map((person) => person.row()),
    total: chosen.length,
    standings: standings.flatMap((standing) => {
      const found = count.get(standing);
      return found === undefined ? [] : [{ standing, count: found }];
    }),
    unaccounted: count.get('not accounted for') ?? 0,
  };
}

/** Whose notes name no unit, as when a referral was withdrawn, is somebody's everywhere: on no list they would be lost. */
export const isListedAt = (unit: string | undefined, { unitId }: Person): boolean => unitId === unit || unitId === '';

/** Nobody reads more of a list of namesakes; they type another letter. */
const foundAtMost = 30;

/** Letters without marks, lower case: "Óconnor" is found by "oconnor". */
export const plainLetters = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

const digits = (text: string): string => text.replace(/\D/g, '');

/** Birth dates as people type them, all as YYYY-MM-DD; in figures alone it may be either order, and what is found shows its own. */
function typedBirthDates(text: string): readonly string[] {
  const written = /^(\d{1,2})[./ -](\d{1,2})[./ -](\d{4})$/.exec(text.trim());
  if (written !== null) {
    const [, first = '', second = '', year = ''] = written;
    const [one, other] = [first.padStart(2, '0'), second.padStart(2, '0')];
    return [`${year}-${other}-${one}`, `${year}-${one}-${other}`];
  }
  const inWords = parseShortDate(text);
  if (inWords !== undefined) return [plainDate(inWords)];
  return /^\d{4}(-\d{2}(-\d{2})?)?$/.test(text.trim()) ? [text.trim()] : [];
}

export function foundIn(everyone: readonly Person[], text: string): z.infer<typeof searchAnswer> {
  const words = plainLetters(text)
    .split(/\s+/)
    .filter((word) => word !== '');
  const born = typedBirthDates(text);
  const number = /^[\d\s-]+$/.test(text) ? digits(text) : '';
  const found: z.infer<typeof searchAnswer>['found'] = [];
  for (const person of everyone) {
    const matched = matchedBy(person, words, number, born);
    if (matched === undefined) continue;
    found.push({
      patient: person.patient,
      name: fullName(person),
      number: person.identity?.number ?? '',
      born: bornInWords(person.identity?.born),
      unit: person.unitId,
      standing: person.standing.standing,
      matched,
    });
    if (found.length === foundAtMost) break;
  }
  return { found };
}

function matchedBy(
  { identity, record }: Person,
  words: readonly string[],
  number: string,
  born: readonly string[],
): string | undefined {
  if (identity === undefined) return undefined;
  if (number.length >= 3 && digits(identity.number).includes(number)) return 'number';
  if (born.some((date) => identity.born.startsWith(date))) return 'birth date';
  if (words.length === 0) return undefined;
  const names = plainLetters(`${identity.given} ${identity.family}`);
  if (words.every((word) => startsAName(names, word))) return 'name';
  for (const former of identity.formerNames ?? []) {
    if (words.every((word) => startsAName(plainLetters(`${identity.given} ${former}`), word)))
      return `former name ${former}`;
  }
  for (const other of (record.together ?? []).flatMap(({ identities }) => identities)) {
    if (number.length >= 3 && digits(other.number).includes(number)) return `number ${other.number} of other notes`;
    if (words.every((word) => startsAName(plainLetters(`${other.given} ${other.family}`), word)))
      return `name ${other.given} ${other.family} of other notes`;
  }
  return undefined;
}

const startsAName = (names: string, word: string): boolean =>
  names.split(/[\s-]+/).some((name) => name.startsWith(word)) || names.includes(` ${word}`) || names.startsWith(word);
