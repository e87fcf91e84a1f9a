/** How long from one dose to the next: the regimen's interval, or the order's own where it may stand (docs/readiness.md R6). */
import type { Day } from '../calendar/day.ts';
import { isDenosumab } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';

export type IntervalMonths = {
  readonly months: number;
  /** Who says so. */
  readonly from: 'regimen' | 'prescription';
  readonly source: string;
  /** Why an order's own, shorter interval does not stand. */
  readonly passedOver: string | undefined;
};

/** `counting` and `lastDenosumab`: the counting doses of the medicine, and the last denosumab of either strength. */
export function intervalMonthsOf(
  { regimen, number }: Pick<Protocol, 'regimen' | 'number'>,
  order: Fact<'prescription'> | undefined,
  counting: readonly Fact<'dose'>[],
  lastDenosumab: Day | undefined,
): IntervalMonths {
  const own = order?.body.interval;
  const regimens = { months: regimen.intervalMonths, from: 'regimen', source: regimen.source } as const;
  if (own === undefined || own.months === regimen.intervalMonths) return { ...regimens, passedOver: undefined };
  const passedOver = own.months > regimen.intervalMonths ? undefined : whyNotShorter(own.months);
  return passedOver === undefined
    ? { months: own.months, from: 'prescription', source: own.reason, passedOver }
    : { ...regimens, passedOver };

  function whyNotShorter(months: number): string | undefined {
    const isSecondAfterDenosumab =
      lastDenosumab !== undefined &&
      !isDenosumab(regimen.medicine) &&
      counting.filter(({ on }) => on > lastDenosumab).length === 1;
    if (!isSecondAfterDenosumab)
      return `The ${months} months on the prescription are passed over: shorter than the regimen's only for the second dose after denosumab.`;
    const least = number.denosumabSecondDoseMonths;
    return months >= least
      ? undefined
      : `The ${months} months on the prescription are passed over: the second dose after denosumab comes after ${least} months at the earliest.`;
  }
}
