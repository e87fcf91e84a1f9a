/** No two bone medicines at once: tablets and other medicines stopped first, denosumab run down first (docs/readiness.md R11). */
import { type Day, day as dayOf, shortDate } from '../calendar/day.ts';
import { type SwitchWindow, switchWindow } from '../course/switch-window.ts';
import { isDenosumab, isTakenDaily } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Verdict } from '../readiness/verdict.ts';
import type { Fact } from '../record/patient-record.ts';
import type { Threshold } from '../readiness/working.ts';
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

const reads = ['doses', 'lastGiven', 'boneMedicines', 'boneMedicinesStopped'] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

/** First day without it; undefined: nobody has recorded that it was stopped. */
const freeFrom = ({ body }: Fact<'medicine'>, assumed: Day | undefined): Day | undefined =>
  body.stoppedOn === undefined ? assumed : dayOf(body.stoppedOn);

/** A medicine given before: from when the prescribed one may follow, and what nobody has settled about it. */
type Before = {
  readonly dose: Fact<'dose'>;
  readonly window: SwitchWindow | undefined;
  readonly open: string | undefined;
};

function beforeBy(evidence: Read, protocol: Protocol): readonly Before[] {
  const to = protocol.regimen.medicine;
  const { lastGiven, boneMedicinesStopped } = evidence;
  const lastOwn = evidence.doses.get(to)?.counting.at(-1)?.on;
  let denosumab: Fact<'dose'> | undefined;
  const before: Before[] = [];
  for (const [from, { dose, agreed }] of lastGiven) {
    if (from === to || from === 'zoledronic acid 4 mg') continue;
    if (isDenosumab(from)) {
      if (denosumab === undefined || dose.on > denosumab.on) denosumab = dose;
      continue;
    }
    const until = dose.body.until === undefined ? undefined : dayOf(dose.body.until);
    const ended = isTakenDaily(from) ? (until ?? boneMedicinesStopped) : dose.on;
    if (ended === undefined) {
      before.push({ dose, window: undefined, open: `still on ${from}` });
      continue;
    }
    const window = switchWindow(protocol, from, ended, to);
    const settled =
      window !== undefined ||
      agreed ||
      boneMedicinesStopped !== undefined ||
      (lastOwn !== undefined && lastOwn > ended);
    before.push({ dose, window, open: settled ? undefined : `no rule for ${to} after ${from}` });
  }
  if (denosumab !== undefined) {
    const window = switchWindow(protocol, denosumab.body.medicine, denosumab.on, to);
    before.push({ dose: denosumab, window, open: undefined });
  }
  return before;
}

const noOther = 'no other bone medicine';
const noOtherRecorded = 'No other bone medicine is recorded as still at work.';
const sayNoOther = () => ({ says: noOtherRecorded });

function judge(evidence: Read, protocol: Protocol): Judge {
  const { boneMedicines, boneMedicinesStopped } = evidence;
  const before = beforeBy(evidence, protocol);
  if (before.length === 0 && boneMedicines.length === 0)
    return always(judgement('ready', noOther, sayNoOther), readyPath);
  /** What has to run down longest. */
  const slowest = before.reduce<Before | undefined>(
    (latest, one) =>
      one.window !== undefined && (latest?.window === undefined || one.window.earliest > latest.window.earliest)
        ? one
        : latest,
    undefined,
  );
  const due = slowest?.window?.earliest;
  const inputs = [
    ...before.map(({ dose }) => ({ label: 'dose', text: dose.body.medicine, on: dose.on, entry: dose.id })),
    ...boneMedicines.map(({ body, on, id }) => ({
      label: body.sort,
      text: body.stoppedOn === undefined ? body.name : `${body.name}, stopped ${shortDate(dayOf(body.stoppedOn))}`,
      on,
      entry: id,
    })),
  ];
  const thresholds: Threshold[] = before.flatMap(({ dose, window }): Threshold[] => {
    if (window === undefined) return [];
    if (window.number !== undefined) return [{ key: window.number }];
    return [
      {
        label: `${protocol.regimen.medicine} after ${dose.body.medicine}`,
        text: `from ${window.months} months`,
        source: window.source,
      },
    ];
  });
  const taken = boneMedicines.map((medicine) => ({ medicine, free: freeFrom(medicine, boneMedicinesStopped) }));
  const plans = taken.filter(({ medicine }) => medicine.body.sort === 'oncology bone plan');
  const openPlan = plans.find((one) => one.free === undefined)?.medicine;
  const planUntil = plans.reduce<Day | undefined>(
    (latest, { free: one }) => (one !== undefined && (latest === undefined || one > latest) ? one : latest),
    undefined,
  );
  const open = [
    ...taken
      .filter((one) => one.free === undefined)
      .map(
        ({ medicine }) =>
          (plans.some((plan) => plan.medicine === medicine) ? 'oncology plan: ' : 'still on ') + medicine.body.name,
      ),
    ...before.flatMap((one) => one.open ?? []),
  ];
  const free = taken.reduce<Day | undefined>(
    (latest, { free: one }) => (one !== undefined && (latest === undefined || one > latest) ? one : latest),
    undefined,
  );

  const said = (verdict: Verdict, cause: string, says: string): Judgement =>
    judgement(verdict, cause, () => ({ says, inputs, thresholds }));
  const ready = said('ready', noOther, noOtherRecorded);
  const from = due === undefined ? '' : shortDate(due);
  const last = slowest?.dose.body.medicine ?? '';
  const waits = said(
    'not ready',
    `${slowest !== undefined && isDenosumab(slowest.dose.body.medicine) ? 'denosumab' : last} at work until ${from}`,
    `The last ${last} is at work: its replacement is due from ${from}.`,
  );
  const names = open.join(', ');
  const still = said('cannot say', names, `Nobody has settled this: ${names}. A prescriber stops or agrees first.`);
  const oncology = said(
    'not ready',
    'oncology plan: oncology decides',
    openPlan === undefined
      ? `An oncology plan with a bone medicine runs until ${planUntil === undefined ? '' : shortDate(planUntil)}.`
      : `An oncology plan with a bone medicine is open (${openPlan.body.name}): oncology decides.`,
  );
  const until = free === undefined ? '' : shortDate(free);
  const stopping = said(
    'cannot say',
    `other bone medicine until ${until}`,
    `Another bone medicine is taken until ${until}.`,
  );
  const isAtWork = (day: Day): boolean => due !== undefined && day < due;
  const isTaken = (day: Day): boolean => free !== undefined && day < free;
  const isOncology = (day: Day): boolean => openPlan !== undefined || (planUntil !== undefined && day < planUntil);
  const blocked: Path = {
    is: 'blocked',
    by: {
      what: `have it stopped, or agree to what follows it: ${names}`,
      who: 'prescriber',
      step: 'settle',
      settled: ({ today }) => ({ boneMedicinesStopped: today }),
    },
  };
  return {
    changes: [due, free, planUntil].filter((day) => day !== undefined),
    on: (day) =>
      isOncology(day) ? oncology : isAtWork(day) ? waits : open.length > 0 ? still : isTaken(day) ? stopping : ready,
    path: (day) => {
      if (open.length > 0) return blocked;
      if (isAtWork(day)) return { is: 'waiting', what: waits.cause };
      return isTaken(day) ? { is: 'waiting', what: stopping.cause } : readyPath;
    },
  };
}

export const otherBoneMedicines: Requirement<(typeof reads)[number]> = {
  id: 'other-bone-medicines',
  title: 'Other bone medicines',
  clearedBy: 'time after the medicine before; a prescriber who stops it or agrees to what follows. No exception',
  exceptionPossible: false,
  reads,
  judge,
};
