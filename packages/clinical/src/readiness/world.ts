/**
 * What a question is asked of: the evidence, the protocol versions by date, the calendar, and a judge for each requirement and
 * version, made when first needed. A plan's outcome, or a settled matter, is another world with the same questions.
 */
import { type Day, addDays } from '../calendar/day.ts';
import { type Protocol, underRegimen } from '../protocol/protocol.ts';
import { type RequirementId, requirementIds } from '../protocol/requirement-ids.ts';
import type { Evidence } from '../requirements/evidence.ts';
import { requirements } from '../requirements/index.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from '../requirements/requirement.ts';
import { type SamplesCount, samplesCount } from '../requirements/samples.ts';
import { type DecisionContext, HORIZON_DAYS } from './context.ts';
import { StandingSpan } from './standing-span.ts';
import type { Timeline } from './working.ts';

/** The stretch of days on which one protocol version is in force, and its judges. Before the first version there is none. */
type Reign = {
  readonly from: Day;
  readonly until: Day | undefined;
  readonly protocol: Protocol | undefined;
  /** By the place of the requirement: a list made at its length costs a fraction of an object that grows by name. */
  readonly judges: (Judge | undefined)[];
  samples: SamplesCount | undefined;
};

/** The requirements in a fixed order, and the place of each in it. */
const requirementAt = requirementIds.map((id) => requirements[id]);
const placeOf = Object.fromEntries(requirementIds.map((id, place) => [id, place])) as Record<RequirementId, number>;

export type World = {
  readonly today: Day;
  /** Last day a window is looked for. */
  readonly horizon: Day;
  readonly evidence: Evidence;
  readonly context: DecisionContext;
  /** In order of gravity, by the protocol in force today. */
  readonly order: readonly RequirementId[];
  /** Taken as settled, to ask what would hold next. */
  readonly settled: ReadonlySet<RequirementId>;
  readonly reigns: readonly Reign[];
  readonly judgeFor: JudgeFor;
};

/** How a judge is come by. Who flips has judges that note which numbers they read. */
export type JudgeFor = (requirement: Requirement, evidence: Evidence, protocol: Protocol) => Judge;
const itsOwn: JudgeFor = (requirement, evidence, protocol) => requirement.judge(evidence, protocol);

const BEFORE_ALL = -1_000_000 as Day;
const nothingSettled: ReadonlySet<RequirementId> = new Set();

const noJudges: Reign['judges'] = requirementIds.map(() => undefined);
const reignFrom = (from: Day, until: Day | undefined, protocol: Protocol | undefined): Reign => ({
  from,
  until,
  protocol,
  judges: noJudges.slice(),
  samples: undefined,
});

export function worldOf(
  evidence: Evidence,
  context: DecisionContext,
  settled: ReadonlySet<RequirementId> = nothingSettled,
  judgeFor: JudgeFor = itsOwn,
): World {
  const versions = context.protocols;
  const { today } = evidence;
  const reigns: Reign[] = [];
  const first = versions[0];
  if (first === undefined || first.from > today) {
    reigns.push(reignFrom(BEFORE_ALL, first === undefined ? undefined : ((first.from - 1) as Day), undefined));
  }
  for (let index = 0; index < versions.length; index += 1) {
    const version = versions[index];
    const next = versions[index + 1];
    const until = next === undefined ? undefined : ((next.from - 1) as Day);
    // What was over before today is not asked about.
    if (version === undefined || (until !== undefined && until < today)) continue;
    reigns.push(
      reignFrom(version.from as Day, until, underRegimen(version.protocol, evidence.prescription?.body.regimen)),
    );
  }
  return {
    today,
    horizon: addDays(today, HORIZON_DAYS),
    evidence,
    context,
    order: (reigns[0]?.protocol ?? reigns[1]?.protocol)?.sheet.gravity ?? requirementIds,
    settled,
    reigns,
    judgeFor,
  };
}

/** Who reads each part of the evidence, by their places. */
const readersOf = new Map<string, number[]>();
for (const [place, { reads }] of requirementAt.entries())
  for (const part of reads) {
    const others = readersOf.get(part);
    if (others === undefined) readersOf.set(part, [place]);
    else others.push(place);
  }

const nobody: readonly number[] = [];

/** The same questions where part of the evidence is another: judges that read nothing of that part stay. */
export function withEvidence(world: World, change: Partial<Evidence>): World {
  const other = worldOf({ ...world.evidence, ...change }, world.context, world.settled, world.judgeFor);
  for (const [index, { protocol, judges }] of other.reigns.entries()) {
    const before = world.reigns[index];
    if (before === undefined || before.protocol !== protocol) continue;
    for (let place = 0; place < judges.length; place += 1) judges[place] = before.judges[place];
    for (const part in change) for (const place of readersOf.get(part) ?? nobody) judges[place] = undefined;
  }
  return other;
}

/** The same evidence, so the same judges: only what is settled is answered otherwise. */
export const withSettled = (world: World, id: RequirementId): World => ({
  ...world,
  settled: new Set([...world.settled, id]),
});

function reignOn(world: World, day: Day): Reign {
  const { reigns } = world;
  let index = reigns.length - 1;
  while (index > 0 && (reigns[index]?.from ?? BEFORE_ALL) > day) index -= 1;
  const found = reigns[index];
  if (found === undefined) throw new RangeError('a world without a single day');
  return found;
}

export const protocolOn = (world: World, day: Day): Protocol | undefined => reignOn(world, day).protocol;

const settledJudge: Judge = always(
  judgement('ready', 'settled', () => ({ says: 'Taken as settled.' })),
  readyPath,
);
const noProtocol: Judge = always(
  judgement('cannot say', 'no protocol in force', () => ({
    says: 'No protocol is in force on this date: nothing can be judged.',
  })),
  { is: 'blocked', by: { what: 'a protocol in force', who: 'service lead', step: 'settle', settled: undefined } },
);

/** The regimen says that this is not asked for its medicine. */
const notAsked: Judge = always(
  judgement('does not apply', 'not asked for this medicine', () => ({
    says: 'The regimen of the protocol in force says that this is not asked for its medicine.',
  })),
  readyPath,
);

function judgeIn(world: World, reign: Reign, id: RequirementId): Judge {
  if (world.settled.size > 0 && world.settled.has(id)) return settledJudge;
  const place = placeOf[id];
  return (reign.judges[place] ??= judgeAt(world, reign.protocol, place));
}

function judgeAt(world: World, protocol: Protocol | undefined, place: number): Judge {
  if (protocol === undefined) return noProtocol;
  const requirement = requirementAt[place];
  if (requirement === undefined) throw new RangeError(`no requirement at place ${place}`);
  return protocol.leavesOut.has(requirement.id) ? notAsked : world.judgeFor(requirement, world.evidence, protocol);
}

export const judgeOn = (world: World, id: RequirementId, day: Day): Judge => judgeIn(world, reignOn(world, day), id);

/** From which sample date samples count, by the protocol of a day. */
export function samplesCountOn(world: World, day: Day): SamplesCount {
  const reign = reignOn(world, day);
  if (reign.protocol === undefined) return { from: 'none', because: () => 'no protocol in force' };
  return (reign.samples ??= samplesCount(world.evidence, reign.protocol));
}

/** The first day after a day, to the horizon, on which some answer may change or a version begins; undefined: none. */
export function nextChange(world: World, ids: readonly RequirementId[], after: Day): Day | undefined {
  let next = Infinity;
  for (const reign of world.reigns) {
    if (reign.until !== undefined && reign.until <= after) continue;
    if (reign.from > after && reign.from < next) next = reign.from;
    if (reign.from >= next) break;
    const until = Math.min(reign.until ?? Infinity, next - 1);
    for (const id of ids)
      for (const day of judgeIn(world, reign, id).changes)
        if (day > after && day > reign.from && day <= until && day < next) next = day;
  }
  return next <= world.horizon ? (next as Day) : undefined;
}

/** As things stand: everything one requirement says from a day on. Neighbours never say the same. */
export function timelineFrom(world: World, id: RequirementId, from: Day): Timeline {
  let last: StandingSpan | undefined;
  let spans: StandingSpan[] | undefined;
  for (const reign of world.reigns) {
    const end = reign.until ?? Infinity;
    const judge = judgeIn(world, reign, id);
    let day: Day | undefined = Math.max(from, reign.from) as Day;
    while (day !== undefined && day <= end) {
      const judged = judge.on(day);
      if (last === undefined || !last.isOf(judged)) {
        last?.endsBefore(day);
        last = new StandingSpan(day, judged);
        // Mostly it is the only one: a list that is begun with it is no longer than it has to be.
        if (spans === undefined) spans = [last];
        else spans.push(last);
      }
      day = firstAfter(judge.changes, day);
    }
  }
  return { requirement: id, spans: spans ?? [] };
}

/** Judges have few changes, and most have none: looked through each time rather than put in order. */
function firstAfter(changes: readonly Day[], day: Day): Day | undefined {
  let first: Day | undefined;
  for (let index = 0; index < changes.length; index += 1) {
    const change = changes[index] as Day;
    if (change > day && (first === undefined || change < first)) first = change;
  }
  return first;
}

/** The last day of the unbroken run of ready days from `from`; undefined: to the horizon. `from` itself must be ready. */
export function runFrom(world: World, from: Day): Day | undefined {
  let last: Day | undefined;
  for (const id of world.order) {
    for (let start: Day | undefined = from; start !== undefined; start = nextChange(world, [id], start)) {
      if (last !== undefined && start > last) break;
      const { verdict } = judgeOn(world, id, start).on(start);
      if (verdict === 'ready' || verdict === 'does not apply') continue;
      if (start === from) throw new RangeError(`${id} is not ready on the first day of its window`);
      last = (start - 1) as Day;
      break;
    }
  }
  return last;
}
