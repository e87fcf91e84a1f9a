/** What came back from a page's form, taken in once however often it is sent. */
import { createHash } from 'node:crypto';
import { type Author, type BodyOfKind, aheadQuestions, plainDate } from '@twelvemonth/clinical';
import { z } from 'zod';
import { doAct } from '../acts/do-act.ts';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';
import type { OpenedPage } from './page-of.ts';

const words = z.string().trim().max(500);
export const sheetPattern = /^[0-9a-f-]{36}$/;
const answerField = z.enum(['yes', 'no']).optional();

const formSchema = z.object({
  sheet: z.string().regex(sheetPattern),
  'other-day': words.optional(),
  ...Object.fromEntries(
    aheadQuestions.flatMap((question) => [
      [question, answerField] as const,
      [`${question}-words`, words.optional()] as const,
    ]),
  ),
});

export type Told = BodyOfKind<'told-ahead'>;

/** Undefined: it is no form of ours. */
export function toldIn(form: unknown, page: string): { readonly told: Told; readonly sheet: string } | undefined {
  const read = formSchema.safeParse(form);
  if (!read.success) return undefined;
  const said = read.data as Readonly<Record<string, string | undefined>>;
  const answers = Object.fromEntries(
    aheadQuestions.flatMap((question) => {
      const answer = said[question];
      const more = said[`${question}-words`] ?? '';
      return answer === undefined ? [] : [[question, { answer, ...(more === '' ? {} : { words: more }) }]];
    }),
  ) as Told['answers'];
  const otherDay = said['other-day'] ?? '';
  return {
    sheet: said['sheet'] ?? '',
    told: { how: 'own page', page, answers, ...(otherDay === '' ? {} : { otherDay }) },
  };
}

/** Nobody of the unit wrote it. */
export const themselves: Author = { staff: 'their own page', role: 'clerk' };

export async function takeInTold(
  atHand: AtHand,
  { person: { patient, today } }: OpenedPage,
  { told, sheet }: { readonly told: Told; readonly sheet: string },
): Promise<Refused | undefined> {
  const line = { kind: 'told-ahead', body: told, effectiveAt: plainDate(today) } as const;
  const answer = await doAct(atHand, {
    id: idOf(sheet, told),
    act: { name: 'record', patient, line },
    by: themselves,
  });
  return answer instanceof Refused ? answer : undefined;
}

/** The same form with the same answers is one act; corrected and sent again it is another. */
export function idOf(sheet: string, told: object): string {
  const hash = createHash('sha256')
    .update(`${sheet} ${JSON.stringify(told)}`)
    .digest('hex');
  return [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `4${hash.slice(13, 16)}`,
    `8${hash.slice(17, 20)}`,
    hash.slice(20, 32),
  ].join('-');
}
