/** No two bone medicines at once: tablets and other medicines stopped first, denosumab run down first (docs/readiness.md R11). */
import { type Day, addMonths, day as dayOf, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Threshold } from '../readiness/working.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Path, type Requirement, judgement, readyPath } from './requirement.ts';

/** First day without it; undefined: nobody has recorded that it was stopped. */
const freeFrom = ({ body }: Fact<'medicine'>, assumed: Day | undefined): Day | undefined =>
  body.stoppedOn === undefined ? assumed : dayOf(body.stoppedOn);

function judge(evidence: Evidence, { number }: Protocol): Judge {
  const { lastDenosumab, boneMedicines, boneMedicinesStopped } = evidence;
  const due = lastDenosumab === undefined ? undefined : addMonths(lastDenosumab.on, number.denosumabIntervalMonths);
  const inputs = [
    ...(lastDenosumab === undefined
      ? []
      : [{ label: 'dose', text: lastDenosumab.body.medicine, on: lastDenosumab.on, entry: lastDenosumab.id }]),
    ...boneMedicines.map(({ body, on, id }) => ({
      label: body.sort,
      text: body.stoppedOn === undefined ? body.name : `${body.name}, stopped ${shortDate(dayOf(body.stoppedOn))}`,
      on,
      entry: id,
    })),
  ];
  const thresholds: Threshold[] = lastDenosumab === undefined ? [] : [{ key: 'denosumabIntervalMonths' }];
  const taken = boneMedicines.map((medicine) => ({ medicine, free: freeFrom(medicine, boneMedicinesStopped) }));
  const open = taken.filter(({ free }) => free === undefined).map(({ medicine }) => medicine.body.name);
  const free = taken.reduce<Day | undefined>(
    (latest, { free: one }) => (one !== undefined && (latest === undefined || one > latest) ? one : latest),
    undefined,
  );

  const ready = judgement('ready', 'no other bone medicine', () => ({
    says: 'No other bone medicine is recorded as still at work.',
    inputs,
    thresholds,
  }));
  const waits = judgement('not ready', `denosumab at work until ${due === undefined ? '' : shortDate(due)}`, () => ({
    says: `The last denosumab is at work: its replacement is due from ${due === undefined ? '' : shortDate(due)}.`,
    inputs,
    thresholds,
  }));
  const names = open.join(', ');
  const still = judgement('cannot say', `still on ${names}`, () => ({
    says: `Nobody has recorded that it was stopped: ${names}. Ask, and have it stopped first.`,
    inputs,
    thresholds,
  }));
  const stopping = judgement(
    'cannot say',
    `other bone medicine until ${free === undefined ? '' : shortDate(free)}`,
    () => ({
      says: `Another bone medicine is taken until ${free === undefined ? '' : shortDate(free)}.`,
      inputs,
      thresholds,
    }),
  );
  const isDenosumab = (day: Day): boolean => due !== undefined && day < due;
  const isTaken = (day: Day): boolean => free !== undefined && day < free;
  const blocked: Path = {
    is: 'blocked',
    by: {
      what: `ask whether it is still taken, and have it stopped: ${names}`,
      who: 'prescriber',
      step: 'settle',
      settled: (known) => ({ ...known, boneMedicinesStopped: known.today }),
    },
  };
  return {
    changes: [due, free].filter((day) => day !== undefined),
    on: (day) => (isDenosumab(day) ? waits : open.length > 0 ? still : isTaken(day) ? stopping : ready),
    path: (day) => {
      if (open.length > 0) return blocked;
      if (isDenosumab(day)) return { is: 'waiting', what: waits.cause };
      return isTaken(day) ? { is: 'waiting', what: stopping.cause } : readyPath;
    },
  };
}

export const otherBoneMedicines: Requirement = {
  id: 'other-bone-medicines',
  title: 'Other bone medicines',
  clearedBy: 'time after denosumab; a prescriber who stops the other medicine. No exception',
  exceptionPossible: false,
  judge,
};
