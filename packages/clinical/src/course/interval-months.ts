/** How long from one dose to the next: the regimen's interval, or the order's own where it may stand (docs/readiness.md R6). */
import type { Day } from '../calendar/day.ts';
import { isDenosumab } from '../protocol/medicines.ts';
import type { Regimen } from '../protocol/regimen.ts';
import type { Fact } from '../record/patient-record.ts';

export type IntervalMonths = {
  readonly months: number;
  /** Who says so. */
  readonly from: 'regimen' | 'prescription';
  readonly source: string;
  /** An order's own, shorter interval that is not for this dose. */
  readonly passedOver: number | undefined;
};

/** `counting` and `lastDenosumab`: the counting doses of the medicine, and the last denosumab of either strength. */
export function intervalMonthsOf(
  regimen: Regimen,
  order: Fact<'prescription'> | undefined,
  counting: readonly Fact<'dose'>[],
  lastDenosumab: Day | undefined,
): IntervalMonths {
  const own = order?.body.interval;
  const regimens = { months: regimen.intervalMonths, from: 'regimen', source: regimen.source } as const;
  if (own === undefined || own.months === regimen.intervalMonths) return { ...regimens, passedOver: undefined };
  const stands = own.months > regimen.intervalMonths || isSecondAfterDenosumab(regimen, counting, lastDenosumab);
  return stands
    ? { months: own.months, from: 'prescription', source: own.reason, passedOver: undefined }
    : { ...regimens, passedOver: own.months };
}

const isSecondAfterDenosumab = (
  { medicine }: Regimen,
  counting: readonly Fact<'dose'>[],
  lastDenosumab: Day | undefined,
): boolean =>
  lastDenosumab !== undefined && !isDenosumab(medicine) && counting.filter(({ on }) => on > lastDenosumab).length === 1;
