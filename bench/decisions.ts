/**
 * How fast one core decides, beside two general-purpose rules engines on a simpler workload in the same run. All in processor
 * time, medians of several rounds once warm, so that a busy machine does not look like a slow program.
 *
 * A decision is one person on one date, every requirement together. What is measured says what it starts from: folded records
 * (facts in memory, nothing decided), spans decided before, or a register asked again under a draft with one number moved.
 */
import {
  type DecisionContext,
  type NumberKey,
  type Protocol,
  type Readiness,
  type SubjectRecord,
  addDays,
  day,
  everyDay,
  nothingKept,
  protocolFrom,
  readiness,
  recordOf,
  registerCompared,
  teaching,
  teachingSheet,
  verdictIn,
  verdictOn,
  verdictSpans,
} from '../packages/clinical/src/index.ts';
import { type Bench, type Figure, medianPerCpuSecond } from './figure.ts';
import { inventedLedger } from './invented-register.ts';
import { eligibleByClinicalQuery } from './peers/clinical-query.ts';
import { eligibilityFacts, eligibleIn } from './peers/eligibility.ts';
import { eligibleByGeneralRules } from './peers/general-rules.ts';
import { processorMilliseconds } from './processor-time.ts';

const today = day('2026-11-25');
const context: DecisionContext = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
const people = 2_000;
const registerSize = 10_000;
const sweptDays = 90;

const records = (size: number): SubjectRecord[] =>
  Array.from({ length: size }, (_, index) => recordOf(`patient/r${index}`, inventedLedger(index)));

function draftWith(key: NumberKey, value: string): Protocol {
  const made = protocolFrom({
    ...teachingSheet,
    numbers: { ...teachingSheet.numbers, [key]: { ...teachingSheet.numbers[key], value } },
  });
  if (!('protocol' in made)) throw new Error('a draft with an empty number');
  return made.protocol;
}

/** The working of each requirement as of today, in words. */
function workingsIn({ timelines }: Readiness): number {
  let read = 0;
  for (const { spans } of timelines) {
    const { says, inputs, formulas, thresholds, cautions } = spans[0]?.working() ?? {};
    read += (says?.length ?? 0) + (inputs?.length ?? 0) + (formulas?.length ?? 0);
    read += (thresholds?.length ?? 0) + (cautions?.length ?? 0);
  }
  return read;
}

const withWorking = (record: SubjectRecord): number => workingsIn(readiness(record, context, today));

/** The same, and the window, what it waits for, and the next steps. */
function withEverything(record: SubjectRecord): number {
  const asked = readiness(record, context, today);
  const { window, noWindow, nextSteps } = asked;
  const said = [window?.waitingFor, window?.next, window?.runOn, window?.otherwise, noWindow?.ifSettled];
  return said.length + nextSteps.length + workingsIn(asked);
}

async function peers(): Promise<Figure[]> {
  const facts = eligibilityFacts(people);
  const expected = eligibleIn(facts);
  const measured = async (name: string, run: (of: typeof facts) => Promise<number>): Promise<Figure> => {
    if ((await run(facts)) !== expected) throw new Error(`${name} does not find the ${expected} who are eligible`);
    const value = await medianPerCpuSecond(people, () => run(facts));
    return { what: `${name}: 25 simpler rules, failed ones by name`, value, unit: 'people/s/core' };
  };
  return [
    await measured('json-rules-engine 7.3.1', eligibleByGeneralRules),
    await measured('cql-execution 3.3.2', eligibleByClinicalQuery),
  ];
}

export const bench: Bench = async () => {
  const theirs = await peers();
  const fastest = Math.max(...theirs.map(({ value }) => value));
  const times = (value: number): string => `${(value / fastest).toPrecision(3)} times the faster peer`;
  const some = records(people);
  const began = process.cpuUsage();
  for (const record of some) withWorking(record);
  const first = processorMilliseconds(began) / 1_000;
  const each = async (what: string, unit: string, count: number, work: (record: SubjectRecord) => unknown) => {
    const value = await medianPerCpuSecond(count * people, () => {
      for (const record of some) work(record);
    });
    return { what, value, unit, beside: times(value) };
  };
  const figures: Figure[] = [
    ...theirs,
    await each(
      'every requirement on every date, working of today in words, from folded records that keep what is read of them',
      'people/s/core',
      1,
      withWorking,
    ),
    {
      what: `the same, the first ${people} people after the start, nothing compiled`,
      value: people / first,
      unit: 'people/s/core',
    },
    await each('the same with window, what it waits for and next steps, all read', 'people/s/core', 1, withEverything),
    await each('the same, of people not asked before', 'people/s/core', 1, (record) =>
      withWorking({ ...record, kept: nothingKept() }),
    ),
    await each('every requirement on every date, working not opened', 'people/s/core', 1, (record) =>
      verdictOn(readiness(record, context, today), today),
    ),
    await each('verdict on one date, from folded records', 'decisions/s/core', 1, (record) =>
      verdictSpans(record, context, today),
    ),
    await each(
      `verdict on each of ${sweptDays} dates, from folded records`,
      'decisions/s/core',
      sweptDays,
      (record) => {
        const spans = verdictSpans(record, context, today);
        for (let ahead = 0; ahead < sweptDays; ahead += 1) verdictIn(spans, addDays(today, ahead));
      },
    ),
  ];
  const spans = some.map((record) => verdictSpans(record, context, today));
  const walked = await medianPerCpuSecond(people * sweptDays, () => {
    let ready = 0;
    for (const one of spans)
      for (let ahead = 0; ahead < sweptDays; ahead += 1)
        if (verdictIn(one, addDays(today, ahead)) === 'ready') ready += 1;
    return ready;
  });
  figures.push({
    what: `verdict on each of ${sweptDays} dates, from spans decided before`,
    value: walked,
    unit: 'decisions/s/core',
    beside: times(walked),
  });
  return [...figures, ...(await whoFlips())];
};

/** A slider moves: the register is asked again under a draft with one number moved, verdict and window of everyone. */
async function whoFlips(): Promise<Figure[]> {
  const register = registerCompared(
    records(registerSize).map((record) => ({ record, context, today, place: undefined })),
  );
  const began = process.cpuUsage();
  register.flips(teaching);
  const figures: Figure[] = [
    {
      what: `a register of ${registerSize} decided before the first draft`,
      value: processorMilliseconds(began),
      unit: 'ms of processor',
    },
  ];
  const moves: readonly (readonly [NumberKey, readonly string[]])[] = [
    ['clearanceFloor', ['34', '36', '37', '38', '39', '40', '33']],
    ['vitaminDFloor', ['45', '55', '60', '65', '70', '75', '40']],
    ['bloodsValidDays', ['28', '42', '60', '70', '80', '90', '49']],
    ['observeLaterMinutes', ['20', '25', '30', '35', '40', '45', '50']],
  ];
  for (const [key, values] of moves) {
    const drafts = values.map((value) => draftWith(key, value));
    let next = 0;
    let flipped = 0;
    const perSecond = await medianPerCpuSecond(registerSize, () => {
      flipped = register.flips(drafts[next++ % drafts.length] ?? teaching).length;
    });
    figures.push({
      what: `who of ${registerSize} flips, verdict or window, when ${key} moves`,
      value: (registerSize / perSecond) * 1_000,
      unit: 'ms of processor',
      beside: `goal: under 200; ${flipped} flip at ${values.at(-1)}; ${perSecond.toPrecision(3)} people/s`,
    });
  }
  return figures;
}
