/** A prescription in its days, for a regimen the protocol knows (docs/readiness.md R8). */
import { type Day, addDays, addMonths, day as dayOf, shortDate } from '../calendar/day.ts';
import { type Protocol, regimenNamed } from '../protocol/protocol.ts';
import { ASSUMED_PRESCRIPTION_MONTHS } from '../readiness/context.ts';
import type { Working } from '../readiness/working.ts';
import type { Evidence } from './evidence.ts';
import {
  type Judge,
  type Judgement,
  type Path,
  type Requirement,
  always,
  judgement,
  readyPath,
} from './requirement.ts';

const reads = ['prescription', 'prescriptionAssumed'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge(evidence: Read, protocol: Protocol): Judge {
  const { prescription, prescriptionAssumed } = evidence;
  const blocked: Path = {
    is: 'blocked',
    by: {
      what: 'a valid prescription',
      who: 'prescriber',
      step: 'prescribe',
      settled: (known) => ({
        prescriptionAssumed: { from: known.today, until: addMonths(known.today, ASSUMED_PRESCRIPTION_MONTHS) },
      }),
    },
  };
  if (prescriptionAssumed !== undefined)
    return within(prescriptionAssumed.from, prescriptionAssumed.until, blocked, () => []);
  if (prescription === undefined) {
    return always(
      judgement('cannot say', 'no prescription', () => ({ says: 'No prescription is in these notes.' })),
      blocked,
    );
  }
  const { body, id, on } = prescription;
  const from = dayOf(body.validFrom);
  const until = dayOf(body.validUntil);
  const inputs = () => [
    {
      label: 'prescription',
      text: `${body.regimen}, ${shortDate(from)} to ${shortDate(until)}`,
      on,
      entry: id,
    },
  ];
  const regimen = regimenNamed(protocol, body.regimen);
  if (regimen === undefined) {
    return always(
      judgement('cannot say', 'prescribed regimen not in the protocol', () => ({
        says: `The protocol does not know the regimen "${body.regimen}".`,
        inputs: inputs(),
      })),
      blocked,
    );
  }
  return within(from, until, blocked, inputs);
}

function within(from: Day, until: Day, blocked: Path, inputs: () => Working['inputs']): Judge {
  const working = () => ({ says: `Valid from ${shortDate(from)} to ${shortDate(until)}.`, inputs: inputs() });
  const early = judgement('not ready', `prescription from ${shortDate(from)}`, working);
  const valid = judgement('ready', 'prescription', working);
  const over = judgement('cannot say', `prescription ended on ${shortDate(until)}`, working);
  const on = (day: Day): Judgement => (day < from ? early : day > until ? over : valid);
  return {
    changes: [from, addDays(until, 1)],
    on,
    path: (day) => {
      const judged = on(day);
      if (judged === valid) return readyPath;
      return judged === early ? { is: 'waiting', what: `prescription from ${shortDate(from)}` } : blocked;
    },
  };
}

export const prescription: Requirement<(typeof reads)[number]> = {
  id: 'prescription',
  title: 'Prescription',
  clearedBy: 'a prescriber. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
