/** A reaction in words: what was felt; at the chair also its grade with the version, what was done and how it ended. */
import type { BodyOfKind } from '../kinds/index.ts';
import { counted, plural } from './words.ts';

export function reactionText(body: BodyOfKind<'reaction'>): string {
  const { what, severity, days, term, grade, gradeVersion, infusion, actions, outcome } = body;
  const first = [`reaction: ${what}`, severity, days === undefined ? undefined : counted(days, 'day')];
  const parts = [
    first.filter((part) => part !== undefined).join(', '),
    grade === undefined
      ? undefined
      : `${term ?? 'not said what'} grade ${grade} (CTCAE ${gradeVersion ?? 'version not said'})`,
    infusion === undefined ? undefined : `the infusion ${infusion}`,
    actions === undefined || actions.length === 0 ? undefined : plural(actions, 'and'),
    outcome,
  ];
  return parts.filter((part) => part !== undefined).join('; ');
}
