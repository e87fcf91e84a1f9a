/** From when one bone medicine may follow another, and by when it must (docs/readiness.md R11). */
import { type Day, addMonths } from '../calendar/day.ts';
import { type BoneMedicine, type RegimenMedicine, isDenosumab } from '../protocol/medicines.ts';
import type { NumberKey } from '../protocol/number-keys.ts';
import { type Protocol, numberOf } from '../protocol/protocol.ts';
import type { SourceStatus } from '../protocol/sourced-number.ts';

export type SwitchWindow = {
  readonly earliest: Day;
  /** Undefined: no hurry. */
  readonly latest: Day | undefined;
  /** Months that decided, of the protocol's number where it has one, else of its row. */
  readonly months: number;
  readonly number: NumberKey | undefined;
  readonly source: string;
  readonly status: SourceStatus;
};

/**
 * `ended`: the day of the last dose, or the last day of what is taken daily. Undefined: the protocol has no rule for this
 * switch, and a prescriber is asked. The same medicine again is no switch.
 */
export function switchWindow(
  protocol: Protocol,
  from: BoneMedicine,
  ended: Day,
  to: RegimenMedicine,
): SwitchWindow | undefined {
  if (isDenosumab(from)) return byNumber(protocol, ended, 'denosumabIntervalMonths', 'denosumabReachMonths');
  if (from === 'zoledronic acid 4 mg') return byNumber(protocol, ended, 'otherProductMonths', undefined);
  const row = protocol.sheet.switches.find((one) => one.from === from && one.to.includes(to));
  if (row === undefined) return undefined;
  const { earliestMonths, latestMonths, source, status } = row;
  return {
    earliest: addMonths(ended, earliestMonths),
    latest: latestMonths === undefined ? undefined : addMonths(ended, latestMonths),
    months: earliestMonths,
    number: undefined,
    source,
    status,
  };
}

function byNumber(protocol: Protocol, ended: Day, earliest: NumberKey, latest: NumberKey | undefined): SwitchWindow {
  const { source, status } = numberOf(protocol, earliest);
  return {
    earliest: addMonths(ended, protocol.number[earliest]),
    latest: latest === undefined ? undefined : addMonths(ended, protocol.number[latest]),
    months: protocol.number[earliest],
    number: earliest,
    source,
    status,
  };
}
