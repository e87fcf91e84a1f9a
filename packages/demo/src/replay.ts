/**
 * The demo, carried out: lives and units in one order of time, each act through `decide` on ledgers in memory. The same seed
 * and day give the same entries with the same ids, on every machine.
 */
import {
  type Act,
  type Author,
  type ClockReading,
  type Day,
  type Entry,
  type Instant,
  type Ledgers,
  type LocalMoment,
  type Subject,
  type Surroundings,
  carryOut,
  noFormulary,
} from '@twelvemonth/clinical';
import { type Minutes, ZONE, at, dayOf, instantOf, momentOf } from './clock.ts';
import { lives } from './lives.ts';
import type { Life, Reply, Want } from './life.ts';
import { storyBegins } from './people.ts';
import { type World, contextOf, formularyIn, unitOfAct } from './world.ts';

export type DemoOptions = {
  readonly seed: number;
  /** The day the demo stands on. */
  readonly today: Day;
  /** Minute of that day up to which it has come; 10:45 unless told, when a session is in full swing. */
  readonly minuteOfDay?: number;
  /** People on the register. */
  readonly people?: number;
};

export type DemoStep = {
  readonly id: string;
  readonly act: Act;
  readonly by: Author;
  readonly at: Instant;
  readonly moment: LocalMoment;
  readonly zone: string;
  readonly today: Day;
  readonly clock: ClockReading;
  readonly unit: string | undefined;
};

const QUARTER_TO_ELEVEN = 10 * 60 + 45;
export const DEMO_PEOPLE = 900;

/**
 * The acts in order of time. Whoever runs it carries out each on `ledgers` (which it reads) and answers with the refusals:
 * there should be none.
 */
export function* demoActs(options: DemoOptions, ledgers: Ledgers): Generator<DemoStep, void, Reply['refusals']> {
  const { seed, today } = options;
  const world: World = {
    seed,
    begins: storyBegins(today),
    today,
    until: at(today, 0, options.minuteOfDay ?? QUARTER_TO_ELEVEN),
    ledgers,
    chairs: { thornbeck: new Set(), saltmere: new Set() },
  };
  const queue = new Queue();
  for (const life of lives(world, options.people ?? DEMO_PEOPLE)) queue.add(life, life.next());
  let acts = 0;
  for (let turn = queue.take(); turn !== undefined && turn.want.at <= world.until; turn = queue.take()) {
    const { life } = turn;
    let { want } = turn;
    // What a life does within one minute it does at one go: nobody takes the place it has just found free.
    for (;;) {
      let refusals: Reply['refusals'] = [];
      if (want.act !== undefined && want.by !== undefined) {
        acts += 1;
        refusals = yield stepOf(world, acts, want.at, want.act, want.by);
      }
      const next = life.next({ now: want.at, refusals });
      if (next.done === true || next.value.at > want.at) {
        queue.add(life, next);
        break;
      }
      want = next.value;
    }
  }
}

function stepOf(world: World, n: number, minutes: Minutes, act: Act, by: Author): DemoStep {
  const instant = instantOf(minutes);
  const moment = momentOf(minutes);
  return {
    id: `d3300000-0000-4000-8000-${n.toString(16).padStart(8, '0')}0000`,
    act,
    by,
    at: instant,
    moment,
    zone: ZONE,
    today: dayOf(minutes),
    // One boot a month: an infusion is timed by uptime, as on a server.
    clock: {
      boot: `demo-${moment.slice(0, 7)}`,
      uptimeMilliseconds: (minutes - at(world.begins, 0)) * 60_000,
      wall: instant,
    },
    unit: unitOfAct(world, act),
  };
}

/** Everything in memory: ledgers by subject, every entry through `decide`. Throws if an act is refused: a defect of the demo. */
export function replayDemo(
  options: DemoOptions,
  onProgress: (day: Day, acts: number) => void = () => undefined,
): Map<Subject, readonly Entry[]> {
  const ledgers: Ledgers = new Map();
  const world = { ledgers } as World;
  const steps = demoActs(options, ledgers);
  let acts = 0;
  let shown: Day | undefined;
  for (let next = steps.next(); next.done !== true;) {
    const step = next.value;
    acts += 1;
    if (step.today !== shown) {
      shown = step.today;
      onProgress(step.today, acts);
    }
    next = steps.next(carryOut(ledgers, step, surroundingsOf(world, step)));
  }
  return ledgers;
}

function surroundingsOf(world: World, step: DemoStep): Surroundings {
  const { by, today, moment, zone, clock } = step;
  return {
    ledgers: world.ledgers,
    context: step.unit === undefined ? undefined : contextOf(world, step.unit),
    formulary: step.unit === undefined ? noFormulary : formularyIn(world, step.unit),
    by,
    today,
    moment,
    zone,
    clock,
  };
}

type Waiting = { readonly life: Life; readonly want: Want; readonly turn: number };

/** By minute, then first come first served: a binary heap. */
class Queue {
  private readonly heap: Waiting[] = [];
  private turns = 0;

  add(life: Life, next: IteratorResult<Want, void>): void {
    if (next.done === true) return;
    this.turns += 1;
    this.heap.push({ life, want: next.value, turn: this.turns });
    for (let child = this.heap.length - 1; child > 0;) {
      const parent = (child - 1) >> 1;
      if (!this.isBefore(child, parent)) break;
      this.swap(child, parent);
      child = parent;
    }
  }

  take(): Waiting | undefined {
    const first = this.heap[0];
    const last = this.heap.pop();
    if (first === undefined || last === undefined || this.heap.length === 0) return first;
    this.heap[0] = last;
    for (let parent = 0; ;) {
      const left = 2 * parent + 1;
      const child = left + 1 < this.heap.length && this.isBefore(left + 1, left) ? left + 1 : left;
      if (child >= this.heap.length || !this.isBefore(child, parent)) break;
      this.swap(child, parent);
      parent = child;
    }
    return first;
  }

  private isBefore(a: number, b: number): boolean {
    const [one, other] = [this.heap[a], this.heap[b]];
    if (one === undefined || other === undefined) return false;
    return one.want.at < other.want.at || (one.want.at === other.want.at && one.turn < other.turn);
  }
  private swap(a: number, b: number): void {
    const [one, other] = [this.heap[a], this.heap[b]];
    if (one === undefined || other === undefined) return;
    this.heap[a] = other;
    this.heap[b] = one;
  }
}
