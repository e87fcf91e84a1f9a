/**
 * A step typed in with a time before the step it follows: the paper may be wrong, or the typing, or the step before. It is asked
 * about and never guessed; what rests on the order for its safety (check, start, finish) is refused where it is decided. Hazard 30.
 */
import { shortDate } from '../calendar/day.ts';
import { type KindName, kindNamed } from '../kinds/index.ts';
import { MILLISECONDS_A_MINUTE } from '../kinds-texts/words.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { type Visit, visitOn } from '../visit/visit.ts';
import type { Line } from './check-line.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';

/** What each step follows. */
const follows: { readonly [Kind in KindName]?: (visit: Visit, fact: Fact<Kind>) => readonly (Fact | undefined)[] } = {
  observations: ({ arrived, infusion, dose }, { body }) =>
    body.when === 'after' ? [infusion?.finished ?? dose] : [arrived],
  checklist: ({ arrived }) => [arrived],
  cannula: ({ decision }) => [decision],
  flush: ({ cannula, infusion }) => [cannula, infusion?.finished],
  preparation: ({ decision }) => [decision],
  'site-check': ({ infusion }) => [infusion?.started],
  'cannula-removed': ({ cannula, infusion }) => [cannula, infusion?.finished],
  observed: ({ dose }) => [dose],
  left: ({ arrived, decision, removed, observed }) => [arrived, decision, removed, observed],
};

export function checkTypedOrder(
  record: SubjectRecord,
  fact: Fact,
  { effectiveAt }: Pick<Line, 'effectiveAt'>,
  path: string,
  confirmed: readonly string[],
): readonly Refusal[] {
  const before = follows[fact.kind] as ((visit: Visit, fact: Fact) => readonly (Fact | undefined)[]) | undefined;
  const visit = before === undefined ? undefined : visitOn(record, fact.on);
  const at = Date.parse(effectiveAt);
  if (before === undefined || visit === undefined || effectiveAt.length <= 'YYYY-MM-DD'.length) return [];
  return before(visit, fact)
    .flatMap((one) => {
      // Times on paper are whole minutes; the clocks of a tablet and the server differ by less.
      if (one?.at === undefined || Date.parse(one.at) - at < MILLISECONDS_A_MINUTE) return [];
      return [
        `${kindNamed(one.kind).label} was at ${one.at.slice(11, 16)} on ${shortDate(one.on)}, later than ${effectiveAt.slice(11, 16)}.`,
      ];
    })
    .filter((says) => !confirmed.includes(says))
    .map((says) =>
      refusal('is-it-right', says, {
        field: `${path}.effectiveAt`,
        remedy: 'look at the paper again; if the step before is wrong, correct it in the notes',
      }),
    );
}
