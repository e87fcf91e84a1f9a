/**
 * Calcium about a month after a vitamin D loading: vitamin D may unmask an overactive parathyroid (Royal Osteoporosis Society 2018).
 * It is asked for beside the sample that a dose needs after a loading, and changes no verdict (docs/readiness.md, "Clocks").
 */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { type SubjectRecord, factsOf, latest } from '../record/patient-record.ts';
import { loadingsBy } from '../requirements/loading.ts';
import { isSampled } from './is-sampled.ts';
import type { SampleDue } from './samples-due.ts';

/** Undefined: no loading has finished of late, or its calcium was looked at. */
export function calciumAfterLoading(record: SubjectRecord, { number }: Protocol, today: Day): SampleDue | undefined {
  if (latest(record, 'died') !== undefined) return undefined;
  const upToToday = <Fact extends { readonly on: Day }>(facts: readonly Fact[]) =>
    facts.filter(({ on }) => on <= today);
  const state = loadingsBy(
    upToToday(factsOf(record, 'vitamin-d-loading')),
    upToToday(factsOf(record, 'vitamin-d-taken')),
    upToToday(factsOf(record, 'vitamin-d-loading-stopped')),
  ).findLast((loading) => loading.state.is === 'finished')?.state;
  if (state?.is !== 'finished' || today > addDays(state.on, number.loadingHoldsDays)) return undefined;
  const from = addDays(state.on, number.calciumMonthAfterLoadingFromDays);
  const by = addDays(state.on, number.calciumMonthAfterLoadingByDays);
  if (isSampled(record, ['calcium', 'adjusted calcium'], { from, until: today })) return undefined;
  const when =
    today <= by ? `sample from ${shortDate(from)} to ${shortDate(by)}` : `its sample was due by ${shortDate(by)}`;
  return { by, says: `calcium after the vitamin D loading that ended on ${shortDate(state.on)}: ${when}` };
}
