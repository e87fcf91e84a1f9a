/**
 * Writes the demo into an empty store. Each act is decided on ledgers in memory, as it would be by a server, and its entries
 * go to the store under the ids they have there; hundreds of acts share one sync of the disk. Answers with the
 * clock of the last act.
 */
import { setImmediate as nextTurn } from 'node:timers/promises';
import {
  type ClockReading,
  type Day,
  type DecisionContext,
  type Draft,
  type Entry,
  type Instant,
  type Ledgers,
  type Subject,
  type SubjectRecord,
  civilFromDay,
  decide,
  protocolsInForce,
  recordOfEntries,
  subject,
  subjectsOf,
  unitOf,
} from '@twelvemonth/clinical';
import { type DemoStep, demoActs } from '@twelvemonth/demo';
import { type Store, entryId } from '@twelvemonth/store';
import { CannotStart } from '../service-folder.ts';

export type DemoToMake = {
  readonly seed: number;
  readonly today: Day;
  readonly minuteOfDay: number;
  readonly people: number | undefined;
};

/** Acts handed to the store before anyone waits for them: they share its syncs. */
const actsAtOnce = 400;

export async function makeDemo(
  store: Store,
  { seed, today, minuteOfDay, people }: DemoToMake,
  { say, isStopping }: { readonly say: (line: string) => void; readonly isStopping: () => boolean },
): Promise<ClockReading | undefined> {
  const ledgers: Ledgers = new Map();
  const contexts = contextsIn(ledgers);
  const steps = demoActs({ seed, today, minuteOfDay, ...(people === undefined ? {} : { people }) }, ledgers);
  let writing: Promise<void>[] = [];
  let acts = 0;
  let year = 0;
  let clock: ClockReading | undefined;
  for (let next = steps.next(); next.done !== true;) {
    const step = next.value;
    clock = step.clock;
    const decided = decide(step.act, {
      ledgers,
      context: step.unit === undefined ? undefined : contexts(step.unit),
      by: step.by,
      today: step.today,
      moment: step.moment,
      zone: step.zone,
      clock: step.clock,
    });
    if ('drafts' in decided) {
      appended(ledgers, decided.drafts, step);
      writing.push(written(store, step, decided.drafts));
      acts += 1;
    }
    if (writing.length === actsAtOnce) {
      await Promise.all(writing);
      writing = [];
      await nextTurn();
      if (isStopping()) throw new CannotStart('stopped while the demo was being made; the next start makes it.');
      const now = civilFromDay(step.today).year;
      if (now !== year) say(`  the year ${(year = now)} ...`);
    }
    next = steps.next('refusals' in decided ? decided.refusals : []);
  }
  await Promise.all(writing);
  say(`  ${acts} acts written`);
  return clock;
}

async function written(store: Store, { id, act, by, at }: DemoStep, drafts: readonly Draft[]): Promise<void> {
  const content = JSON.stringify([by.staff, act]);
  const outcome = await store.act({ id, content, by, at, subjects: subjectsOf(act), decide: () => ({ drafts }) });
  if (outcome.outcome !== 'recorded')
    throw new Error(`the demo's act ${id} (${act.name}) was not recorded: ${outcome.outcome}`);
}

/** The same entries in memory as the store makes: later acts refer to them by id. */
function appended(ledgers: Ledgers, drafts: readonly Draft[], { id, at, by }: DemoStep): void {
  for (const [index, draft] of drafts.entries()) {
    const entries = ledgers.get(draft.subject) ?? [];
    const last = entries.at(-1);
    const entry: Entry = {
      ...draft,
      id: entryId(id, index),
      act: id,
      seq: (last?.seq ?? 0) + 1,
      recordedAt: laterThan(last?.recordedAt, at),
      author: by,
      previousHash: '',
      hash: '',
    };
    ledgers.set(draft.subject, [...entries, entry]);
  }
}

const laterThan = (last: Instant | undefined, at: Instant): Instant =>
  last === undefined || last < at ? at : new Date(Date.parse(last) + 1).toISOString();

/** The context of a unit as its ledgers stand: the same object as long as they have not grown. */
function contextsIn(ledgers: Ledgers): (unit: string) => DecisionContext | undefined {
  const known = new Map<string, { of: readonly SubjectRecord[]; context: DecisionContext | undefined }>();
  const recordIn = (of: Subject): SubjectRecord => recordOfEntries(of, ledgers.get(of) ?? none);
  return (unit) => {
    const unitRecord = recordIn(subject('unit', unit));
    const protocolRecord = recordIn(subject('protocol', unit));
    const before = known.get(unit);
    if (before?.of[0] === unitRecord && before.of[1] === protocolRecord) return before.context;
    const described = unitOf(unitRecord);
    const protocols = protocolsInForce(protocolRecord);
    const context =
      described === undefined || protocols.length === 0 ? undefined : { protocols, calendar: described.calendar };
    known.set(unit, { of: [unitRecord, protocolRecord], context });
    return context;
  };
}

const none: readonly Entry[] = [];
