/** Small ways of saying things that many sentences share. */

/** "a, b or c" */
export const plural = (words: readonly string[], joiner: 'or' | 'and' = 'or'): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${joiner} ${words[words.length - 1] ?? ''}`;

/** "1 dose", "3 doses" */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** "4 min 40 s", "15 min", "20 s": time cut to whole seconds. */
export function minutesAndSeconds(milliseconds: number): string {
  const seconds = Math.floor(milliseconds / 1000);
  const minutes = Math.floor(seconds / 60);
  const rest = seconds - minutes * 60;
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

export const MILLISECONDS_A_MINUTE = 60_000;
