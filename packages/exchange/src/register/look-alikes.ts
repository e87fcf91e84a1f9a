/** Finds, for a person of the file, whoever may be the same person under another number: in the notes or in the file. */
import type { KnownPerson } from './known.ts';
import type { PersonRead } from './person.ts';
import { type PersonName, likeness, numberKey } from './similar.ts';

type Other = PersonName & { readonly where: string };
export type LookAlike = { readonly likely: boolean; readonly says: string };

/** People by year of birth, so that a register of fifty thousand is not compared pair by pair. */
export class LookAlikes {
  readonly #byYear = new Map<string, Other[]>();

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
    const year = other.born.slice(0, 4);
    const there = this.#byYear.get(year);
    if (there === undefined) this.#byYear.set(year, [other]);
    else there.push(other);
  }

  of(person: PersonRead): readonly LookAlike[] {
    const { name } = person;
    if (name === undefined) return [];
    return (this.#byYear.get(name.born.slice(0, 4)) ?? []).flatMap((other) => {
      if (numberKey(other.number) === person.key) return [];
      const like = likeness(name, other);
      if (like === 'no') return [];
      return [
        {
          likely: like === 'likely',
          says: `${like === 'likely' ? 'looks like' : 'may be'} ${other.given} ${other.family}, born ${other.born}, number ${other.number}, ${other.where}`,
        },
      ];
    });
  }
}
