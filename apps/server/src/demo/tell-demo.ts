/**
 * Tells the demo's story on a thread of its own, so that deciding and writing go on side by side. Each act is decided on
 * ledgers in memory, as it would be by a server, under the ids its entries will have in the store; batches of what is to be
 * written are posted in the order of time, then the clock of the last act.
 */
import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import {
  type Author,
  type ClockReading,
  type Day,
  type DecisionContext,
  type Draft,
  type Entry,
  type Formulary,
  type Instant,
  type Ledgers,
  type Subject,
  type SubjectRecord,
  civilFromDay,
  decide,
  formularyOf,
  noFormulary,
  protocolsInForce,
  recordOfEntries,
  subject,
  subjectsOf,
  unitOf,
} from '@twelvemonth/clinical';
import { type DemoStep, demoActs } from '@twelvemonth/demo';
import { entryId } from '@twelvemonth/store';

export type DemoToTell = {
  readonly seed: number;
  readonly today: Day;
  readonly minuteOfDay: number;
  readonly people: number | undefined;
};
export type DecidedAct = {
  readonly id: string;
  readonly content: string;
  readonly by: Author;
  readonly at: Instant;
  readonly subjects: readonly Subject[];
  readonly drafts: readonly Draft[];
};
export type Told =
  | { readonly acts: readonly DecidedAct[]; readonly year: number }
  | { readonly finished: true; readonly clock: ClockReading | undefined };

/** Acts handed over at once: they share the disk's syncs. */
const actsAtOnce = 400;

function tellDemo({ seed, today, minuteOfDay, people }: DemoToTell, post: (told: Told) => void): void {
  const ledgers: Ledgers = new Map();
  const contexts = contextsIn(ledgers);
  const steps = demoActs({ seed, today, minuteOfDay, ...(people === undefined ? {} : { people }) }, ledgers);
  let acts: DecidedAct[] = [];
  let last: DemoStep | undefined;
  for (let next = steps.next(); next.done !== true;) {
    const step = next.value;
    last = step;
    const { id, act, by, at, moment, zone, clock } = step;
    const context = step.unit === undefined ? undefined : contexts(step.unit);
    const decided = decide(act, {
      ledgers,
      context,
      formulary: formularyIn(ledgers, step.unit),
      by,
      today: step.today,
      moment,
      zone,
      clock,
    });
    if ('drafts' in decided) {
      const { drafts } = decided;
      appended(ledgers, drafts, step);
      acts.push({ id, content: JSON.stringify([by.staff, act]), by, at, subjects: subjectsOf(act), drafts });
    }
    if (acts.length === actsAtOnce) {
      post({ acts, year: civilFromDay(step.today).year });
      acts = [];
    }
    next = steps.next('refusals' in decided ? decided.refusals : []);
  }
  post({ acts, year: civilFromDay(today).year });
  post({ finished: true, clock: last?.clock });
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

const none: readonly Entry[] = [];

const formularyIn = (ledgers: Ledgers, unit: string | undefined): Formulary => {
  const of = unit === undefined ? undefined : subject('unit', unit);
  return of === undefined ? noFormulary : formularyOf(recordOfEntries(of, ledgers.get(of) ?? none));
};

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

// A port between threads has no origin.
// oxlint-disable-next-line unicorn/require-post-message-target-origin
if (!isMainThread) tellDemo(workerData as DemoToTell, (told) => parentPort?.postMessage(told));
