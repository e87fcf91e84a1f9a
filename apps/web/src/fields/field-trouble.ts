/** What the server refused, told beside the field it is about. A refusal names its place by a path; a field by the end of one. */
import { createContext, use } from 'react';
import { atField } from '../paper/refusal-words.ts';
import type { Refusal } from '../server/server-problem.ts';

export const FieldTroubles = createContext<readonly Refusal[]>([]);

export function useTroubleAt(at: string | undefined): string | undefined {
  const refusals = use(FieldTroubles);
  if (at === undefined) return undefined;
  const found = refusals.find(
    ({ field }) =>
      field !== undefined &&
      (field === at || field.endsWith(`.${at}`) || field.startsWith(`${at}.`) || field.includes(`.${at}.`)),
  );
  return found === undefined ? undefined : atField(found);
}
