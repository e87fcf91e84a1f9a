/** Numbers and names in the referee's sentences. */

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** "two", "12". */
export const inWords = (count: number): string => small[count] ?? String(count);

/** "no nurse is", "one nurse is", "two nurses are". */
export const thereAre = (count: number, one: string, many: string): string =>
  count === 0 ? `no ${one} is` : count === 1 ? `one ${one} is` : `${inWords(count)} ${many} are`;

/** "A", "A and B", "A, B and C". */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
