/** How fast one core answers: a ledger of 120 entries folded, and every requirement, window and next step made from it. */
import { type Entry, day, everyDay, readiness, recordOf, teaching } from '../packages/clinical/src/index.ts';
import { replayDemo } from '../packages/demo/src/index.ts';
import { type Bench, bestMilliseconds } from './figure.ts';
import { ledgerOfManyYears } from './ledger-of-many-years.ts';

const rounds = 5;
const patients = 1_000;

/** Best of five rounds, in patients a second of processor time, so that a busy machine does not look like a slow program. */
function patientsPerSecond(read: (entries: readonly Entry[]) => number): number {
  let best = 0;
  for (let round = 0; round < rounds; round += 1) {
    // Entries nobody has read before: a fold remembers those it has.
    const ledgers = Array.from({ length: patients }, ledgerOfManyYears);
    const began = process.cpuUsage();
    let made = 0;
    for (const entries of ledgers) made += read(entries);
    const { user, system } = process.cpuUsage(began);
    if (made === 0) throw new Error('nothing was answered');
    best = Math.max(best, patients / ((user + system) / 1e6));
  }
  return best;
}

export const bench: Bench = async () => {
  const context = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
  const today = day('2026-11-25');
  const fold = (entries: readonly Entry[]) => recordOf('patient/bench', entries);
  /** Each part is worked out when it is read: all are read here, with the dates of the window. */
  const answer = (record: ReturnType<typeof fold>): number => {
    const { timelines, window, noWindow, nextSteps } = readiness(record, context, today);
    return timelines.length + nextSteps.length + (window?.waitingFor.length ?? noWindow?.needs.length ?? 0);
  };
  const size = ledgerOfManyYears().length;
  const known = fold(ledgerOfManyYears());
  if (known.problems.length > 0) throw new Error(known.problems[0]?.says);
  const what = `of a ledger of ${size} entries`;
  const register = [...replayDemo({ seed: 1, today })].filter(([subject]) => subject.startsWith('patient/'));
  const demo = await bestMilliseconds(() => {
    for (const [subject, entries] of register) answer(recordOf(subject, entries));
  });
  return [
    {
      what: `fold and full readiness ${what}, first read`,
      value: patientsPerSecond((entries) => answer(fold(entries))),
      unit: 'patients/s/core',
    },
    {
      what: `full readiness ${what}, already folded`,
      value: patientsPerSecond(() => answer(known)),
      unit: 'patients/s/core',
    },
    {
      what: `the fold alone ${what}, first read`,
      value: patientsPerSecond((entries) => fold(entries).all.length),
      unit: 'patients/s/core',
    },
    {
      what: `fold and full readiness of the demo register, ${register.length} people`,
      value: demo,
      unit: 'ms',
      beside: 'goal: under 500',
    },
  ];
};
