/** Which day this device keeps: whose list, and which answers belong to it. Nothing is kept before a day is named. */
import { kept } from './vault.ts';

export type KeptDay = {
  readonly staff: string;
  readonly session: string;
  readonly on: string;
  readonly patients: readonly string[];
};

export const dayName = 'the day';
export const keptDay = async (): Promise<KeptDay | undefined> => kept<KeptDay>('answers', dayName);

/** An answer as it came, and when by this device's clock. */
export type KeptAnswer = {
  readonly at: number;
  readonly body: string;
  readonly headers: Readonly<Record<string, string>>;
};
/** Says of an answer that it was kept, and since when by this device's clock. */
export const keptAtHeader = 'x-kept-at';

const always = new Set(['/api/status', '/api/me', '/api/today', '/api/protocols']);

/** Whether an address is one that the day may need without a network. */
export const mayBeKept = (path: string): boolean =>
  always.has(path) ||
  /^\/api\/people\/[^/]+\/visit$/.test(path) ||
  /^\/api\/sessions\/[^/]+(?:\/day|\/day-sheet)?$/.test(path);

/** Whether it is one of this day: its session, and nobody who is not on its list. */
export function isOfDay(path: string, { session, patients }: KeptDay): boolean {
  const [, , what, id = ''] = path.split('/');
  if (what === 'people') return patients.includes(decodeURIComponent(id));
  return what !== 'sessions' || decodeURIComponent(id) === session;
}
