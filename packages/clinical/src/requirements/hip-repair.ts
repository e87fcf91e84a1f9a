/** Days since the latest hip repair; a hip fracture without a recorded repair cannot be dated (docs/readiness.md R5). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import {
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  judgement,
  readyPath,
  withException,
} from './requirement.ts';

function judge({ operations, hipFractures, exceptions }: Evidence, protocol: Protocol): Judge {
  const { hipRepairDays, hipLookbackDays } = protocol.number;
  const repairs = operations.filter(({ body }) => body.what !== 'other operation');
  const repair = repairs[repairs.length - 1];
  const due = repair === undefined ? undefined : addDays(repair.on, hipRepairDays);
  const unrepaired = hipFractures.filter((fracture) => repair === undefined || repair.on < fracture.on);
  const undated = unrepaired.find(({ body }) => !body.dateKnown);
  const newest = unrepaired[unrepaired.length - 1];
  /** Last day on which a fracture without a repair is asked about; for ever where its date is not known. */
  const askedUntil =
    undated !== undefined ? undefined : newest === undefined ? undefined : addDays(newest.on, hipLookbackDays);

  const inputs = () => [
    ...hipFractures.map(({ on, id, body }) => ({
      label: 'hip fracture',
      text: body.dateKnown ? shortDate(on) : 'date not known',
      on,
      entry: id,
    })),
    ...repairs.map(({ on, id, body }) => ({ label: body.what, text: shortDate(on), on, entry: id })),
  ];
  const thresholds = [{ key: 'hipRepairDays' }, { key: 'hipLookbackDays' }] as const;
  const noRepair = judgement('cannot say', 'hip fracture, repair not recorded', () => ({
    says: 'A hip fracture is recorded without the day of its repair: a prescriber says.',
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
    if (undated !== undefined || (askedUntil !== undefined && day <= askedUntil)) return noRepair;
    return waits !== undefined && due !== undefined && day < due ? waits : past;
  }
  const path = (day: Day): Path => {
    const judged = on(day);
    if (judged.verdict === 'ready') return readyPath;
    return judged === noRepair && undated !== undefined
      ? {
          is: 'blocked',
          by: {
            what: 'a prescriber: when was the hip repaired?',
            who: 'prescriber',
            step: 'settle',
            settled: undefined,
          },
        }
      : { is: 'waiting', what: judged.cause };
  };
  const changes: Day[] = [];
  if (due !== undefined) changes.push(due);
  if (askedUntil !== undefined) changes.push(addDays(askedUntil, 1));
  return withException(
    { changes, on, path },
    exceptionFor({ exceptions }, protocol, 'hip repair'),
    'days since hip repair',
  );
}

export const hipRepair: Requirement = {
  id: 'hip-repair',
  title: 'Days since hip repair',
  clearedBy: 'time; a prescriber where the repair is not recorded',
  exceptionPossible: true,
  judge,
};
