/** The verdict of the day at the chair: every item in words, and today's clearance with its numbers. */
import {
  type DayItem,
  type Protocol,
  goVerdict,
  protocolFor,
  readiness,
  requirements,
  viewOf,
} from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';

const titles: Readonly<Record<string, string>> = {
  observations: 'Observations before the dose',
  temperature: 'Temperature',
  systolic: 'Systolic pressure',
  pulse: 'Pulse',
  weight: 'Weight of the day',
  symptom: 'A symptom told outside a visit',
};

/** Undefined where no protocol is in force. */
export function goViewOf({ record, today }: Person, unit: UnitNow | undefined): VisitView['go'] {
  if (unit?.context === undefined) return undefined;
  const found = goVerdict(record, unit.context, today);
  const view = viewOf(readiness(record, unit.context, today), record, unit.context, { on: today });
  const protocol = unit.protocol === undefined ? undefined : protocolFor(unit.protocol, record, today);
  const workings = new Map(view.requirements.map(({ id, working }) => [id, working.says]));
  const clearance = workings.get('kidney-function');
  return {
    verdict: found.verdict,
    headline: found.headline,
    nearLimit: found.nearLimit,
    ...(clearance === undefined ? {} : { clearance }),
    items: [
      ...found.requirements.map(({ requirement, verdict, cause }) => ({
        title: requirements[requirement].title,
        verdict,
        says: verdict === 'ready' ? (workings.get(requirement) ?? cause) : cause,
      })),
      ...found.items.map((item) => dayItemOf(item, protocol)),
    ],
  };
}

/** A question is called by its own words in the protocol; beside it stands the answer alone. */
function dayItemOf({ id, verdict, says, unanswered }: DayItem, protocol: Protocol | undefined) {
  const asks = protocol?.sheet.dayQuestions.find((question) => question.id === id)?.asks;
  if (asks === undefined) return { title: titles[id] ?? id, verdict, says };
  return {
    title: asks,
    verdict,
    says: unanswered ? 'not answered today' : says.startsWith(`${asks} `) ? says.slice(asks.length + 1) : says,
  };
}
