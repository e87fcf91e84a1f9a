/** One line that says what holds a person: causes in order of gravity, each named once. */
import { together } from './verdict.ts';
import type { RequirementOn } from './readiness.ts';

/** "not ready: vitamin D loading not finished; cannot say: bloods of 9 Oct 2026 out of date", "ready, near the limit", "ready" */
export function headlineOf(answers: readonly Omit<RequirementOn, 'requirement'>[]): string {
  const named = (verdict: 'not ready' | 'cannot say'): string[] => [
    ...new Set(answers.filter((answer) => answer.verdict === verdict).map(({ cause }) => cause)),
  ];
  const notReady = named('not ready');
  // A cause that already stops is not named again as unknown.
  const cannotSay = named('cannot say').filter((cause) => !notReady.includes(cause));
  const parts = [
    ...(notReady.length === 0 ? [] : [`not ready: ${notReady.join(', ')}`]),
    ...(cannotSay.length === 0 ? [] : [`cannot say: ${cannotSay.join(', ')}`]),
  ];
  if (parts.length > 0) return parts.join('; ');
  const verdict = together(answers.map((answer) => answer.verdict));
  const near = answers.some(({ nearLimit }) => nearLimit) ? ', near the limit' : '';
  const excepted = answers.some(({ exception }) => exception !== undefined) ? ", with a prescriber's exception" : '';
  return `${verdict}${near}${excepted}`;
}
