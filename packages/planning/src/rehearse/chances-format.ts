/** What may go otherwise, as text: all of it, because what is left out would count as never happening. */
import { z } from 'zod';
import { type FormatProblem, problemsOf } from '../day/format-problem.ts';
import type { Chances } from './chances.ts';

const probability = z.number().min(0).max(1);
const spread = z.number().min(0).max(2);
const more = z.strictObject({ probability, moreMinutes: z.number().min(0) });

const chancesShape = z.strictObject({
  spread: z.strictObject({ whole: spread, shared: spread, none: spread, dose: spread }),
  lateness: z.strictObject({ mean: z.number(), deviation: z.number().min(0) }),
  doesNotCome: probability,
  putOff: probability,
  cannulaFails: more,
  reaction: more,
  nurseMissing: probability,
});

export type ChancesRead =
  | { readonly ok: true; readonly chances: Chances }
  | { readonly ok: false; readonly problems: readonly FormatProblem[] };

export function readChances(json: unknown): ChancesRead {
  const read = chancesShape.safeParse(json);
  return read.success ? { ok: true, chances: read.data } : { ok: false, problems: problemsOf(read.error) };
}
