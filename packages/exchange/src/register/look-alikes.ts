/** Finds, for a person of the file, whoever may be the same person under another number: in the notes or in the file. */
import type { KnownPerson } from './known.ts';
import type { PersonRead } from './person.ts';
import { type PersonName, likeness, numberKey } from './similar.ts';

type Other = PersonName & { readonly where: string };
export type LookAlike = { readonly likely: boolean; readonly says: string };

/** People by birth date, so that a register of fifty thousand is not compared pair by pair. */
export class LookAlikes {
  /** Under each birth date as recorded, and under its year. */
  readonly #byBirth = new Map<string, Other[]>();

  constructor(known: readonly KnownPerson[], people: readonly PersonRead[]) {
    for (const person of known) this.#add({ ...person, where: 'in the notes' });
    const numbers = new Set(known.map((person) => numberKey(person.number)));
    for (const { name, rows, key } of people) {
      // Whoever the notes know by number is there already.
      if (name !== undefined && !numbers.has(key))
        this.#add({ ...name, where: `in row ${rows[0]?.row ?? 0} of this file` });
    }
  }

  #add(other: Other): void {
    for (const birth of new Set([other.born, `year ${other.born.slice(0, 4)}`])) {
      const there = this.#byBirth.get(birth);
      if (there === undefined) this.#byBirth.set(birth, [other]);
      else there.push(other);
    }
  }

  /** Everyone whose birth date can be this one: the same, or one of which only a part is known. */
  #bornLike(born: string): readonly Other[] {
    if (born.length < 10) return this.#byBirth.get(`year ${born.slice(0, 4)}`) ?? [];
    return [born, born.slice(0, 7), born.slice(0, 4)].flatMap((birth) => this.#byBirth.get(birth) ?? []);
  }

  of(person: PersonRead): readonly LookAlike[] {
    const { name } = person;
    if (name === undefined) return [];
    return this.#bornLike(name.born).flatMap((other) => {
      if (numberKey(other.number) === person.key) return [];
      const like = likeness(name, other);
      if (like === 'no') return [];
      const says = `${like === 'likely' ? 'looks like' : 'may be'} ${other.given} ${other.family}, born ${other.born}, number ${other.number}, ${other.where}`;
      return [{ likely: like === 'likely', says }];
    });
  }
}
