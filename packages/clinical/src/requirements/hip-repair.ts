/** Days since the latest hip repair; a hip fracture without a recorded repair is a prescriber's question (docs/readiness.md R5). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import {
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  always,
  judgement,
  readyPath,
  withException,
} from './requirement.ts';

function openSays(unrepaired: readonly Fact<'fracture'>[]): string {
  if (unrepaired.some(({ body }) => body.treated === 'not repaired')) return 'hip fracture, not repaired';
  return unrepaired.some(({ body }) => !body.dateKnown)
    ? 'hip fracture of an unknown day, repair not recorded'
    : 'hip fracture, repair not recorded';
}

const reads = ['operations', 'hipFractures', 'exceptions'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

const thresholds = [{ key: 'hipRepairDays' }, { key: 'hipLookbackDays' }] as const;

const sayNothing = () => ({ says: 'No hip repair and no open hip fracture is recorded.', thresholds });

function judge(evidence: Read, protocol: Protocol): Judge {
  const { operations, hipFractures } = evidence;
  const judged =
    operations.length === 0 && hipFractures.length === 0
      ? always(judgement('ready', 'no hip fracture recorded', sayNothing), readyPath)
      : judgeHip(evidence, protocol);
  return withException(judged, exceptionFor(evidence, protocol, 'hip repair'), 'days since hip repair');
}

function judgeHip({ operations, hipFractures }: Read, protocol: Protocol): Judge {
  const { hipRepairDays, hipLookbackDays } = protocol.number;
  const repairs = operations.filter(({ body }) => body.what !== 'other operation');
  const repair = repairs[repairs.length - 1];
  const due = repair === undefined ? undefined : addDays(repair.on, hipRepairDays);
  const unrepaired = hipFractures.flatMap(({ fracture, lookedInto }) =>
    lookedInto || (repair !== undefined && repair.on >= fracture.on) ? [] : [fracture],
  );
  /** Nobody says that it was repaired, or when it happened: only a prescriber, or a recorded repair, ends the question. */
  const isOpen = unrepaired.some(({ body }) => !body.dateKnown || body.treated !== 'repaired');
  const newest = unrepaired[unrepaired.length - 1];
  /** Last day on which the day of a repair is asked about. */
  const askedUntil = isOpen || newest === undefined ? undefined : addDays(newest.on, hipLookbackDays);

  const inputs = () => [
    ...hipFractures.map(({ fracture: { on, id, body } }) => ({
      label: 'hip fracture',
      text: `${body.dateKnown ? shortDate(on) : 'date not known'}, ${body.treated ?? 'treatment not recorded'}`,
      on,
      entry: id,
    })),
    ...repairs.map(({ on, id, body }) => ({ label: body.what, text: shortDate(on), on, entry: id })),
  ];
  const open = judgement('cannot say', openSays(unrepaired), () => ({
    says: `A hip fracture is recorded, and no repair on or after it: ${openSays(unrepaired)}. A prescriber looks into it, or the repair is recorded with its day.`,
    inputs: inputs(),
    thresholds: [{ key: 'hipRepairDays' }],
  }));
  const undatedRepair = judgement('cannot say', 'hip repaired, its day not recorded', () => ({
    says: `A hip fracture is recorded as repaired without the day of its repair: asked about until ${askedUntil === undefined ? '-' : shortDate(askedUntil)}.`,
    inputs: inputs(),
    thresholds,
  }));
  const none = judgement('ready', 'no hip fracture recorded', () => ({
    says: 'No hip repair and no open hip fracture is recorded.',
    inputs: inputs(),
    thresholds,
  }));
  const waits =
    repair === undefined || due === undefined
      ? undefined
      : judgement('not ready', `hip repair of ${shortDate(repair.on)}`, () => ({
          says: `${hipRepairDays} days from the latest hip repair (${shortDate(repair.on)}): from ${shortDate(due)}.`,
          inputs: inputs(),
          thresholds,
        }));
  const past =
    repair === undefined || due === undefined
      ? none
      : judgement('ready', 'days since hip repair', () => ({
          says: `Latest hip repair ${shortDate(repair.on)}; ${hipRepairDays} days were over on ${shortDate(due)}.`,
          inputs: inputs(),
          thresholds,
        }));

  function on(day: Day): Judgement {
    if (isOpen) return open;
    if (askedUntil !== undefined && day <= askedUntil) return undatedRepair;
    return waits !== undefined && due !== undefined && day < due ? waits : past;
  }
  const path = (day: Day): Path => {
    const judged = on(day);
    if (judged.verdict === 'ready') return readyPath;
    if (judged !== open) return { is: 'waiting', what: judged.cause };
    return {
      is: 'blocked',
      by: {
        what: `a prescriber: ${judged.cause}`,
        who: 'prescriber',
        step: 'prescriber decides',
        settled: (known) => ({
          hipFractures: known.hipFractures.map((one) => ({ ...one, lookedInto: true })),
        }),
      },
    };
  };
  const changes: Day[] = [];
  if (due !== undefined) changes.push(due);
  if (askedUntil !== undefined) changes.push(addDays(askedUntil, 1));
  return { changes, on, path };
}

export const hipRepair: Requirement<(typeof reads)[number]> = {
  id: 'hip-repair',
  title: 'Days since hip repair',
  clearedBy: 'time; a prescriber who has looked into a hip fracture without a repair',
  exceptionPossible: true,
  reads,
  judge,
};
