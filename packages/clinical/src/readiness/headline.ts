/** One line that says what holds a person: causes in order of gravity, each named once. */
import { together } from './verdict.ts';
import type { RequirementOn } from './readiness.ts';

/** "not ready: vitamin D loading not finished; cannot say: bloods of 9 Oct 2026 out of date", "ready, near the limit", "ready" */
export function headlineOf(answers: readonly Omit<RequirementOn, 'requirement'>[]): string {
  const notReady = new Set<string>();
  const cannotSay = new Set<string>();
  for (const { verdict, cause } of answers) {
    if (verdict === 'not ready') notReady.add(cause);
    else if (verdict === 'cannot say') cannotSay.add(cause);
  }
  // A cause that already stops is not named again as unknown.
  for (const cause of notReady) cannotSay.delete(cause);
  const parts: string[] = [];
  if (notReady.size > 0) parts.push(`not ready: ${[...notReady].join(', ')}`);
  if (cannotSay.size > 0) parts.push(`cannot say: ${[...cannotSay].join(', ')}`);
  if (parts.length > 0) return parts.join('; ');
  const verdict = together(answers.map((answer) => answer.verdict));
  const near = answers.some(({ nearLimit }) => nearLimit) ? ', near the limit' : '';
  const excepted = answers.some(({ exception }) => exception !== undefined) ? ", with a prescriber's exception" : '';
  return `${verdict}${near}${excepted}`;
}
