/** Whether a row's person is new, or someone who is here: asked where the reader could not tell. */
import type { WaitingRow } from '@twelvemonth/exchange';

export type WhoItIs = 'as the file says' | 'another person' | 'someone here';

export const whoOptions: readonly { readonly value: WhoItIs; readonly says: string }[] = [
  { value: 'as the file says', says: 'as the cells say' },
  { value: 'another person', says: 'another person than anyone it looks like' },
  { value: 'someone here', says: 'someone who is here already' },
];

const aboutWho: ReadonlySet<string> = new Set([
  'looks-like-someone',
  'may-be-someone',
  'number-of-another-person',
  'differs-from-notes',
]);

export const asksWho = ({ problems }: WaitingRow): boolean => problems.some(({ problem }) => aboutWho.has(problem));
