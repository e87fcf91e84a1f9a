/**
 * One day as it happens: people come, wait for a nurse, a chair, their dose, and go. Everything that chance decides (when they
 * come, how long each step takes) is given beforehand; what happens then is settled, so that the same draws can be played
 * against another plan. Queues are first come, first served.
 */

/** What does not change from one rehearsal to the next. Cells of a visit begin at its index times `stride`. */
export type Course = {
  readonly visits: number;
  readonly stride: number;
  readonly stepCount: Uint8Array;
  /** Units of nurse each step takes: the whole of one, an eye kept on, or none. */
  readonly units: Uint8Array;
  /** Steps from the beginning of which and to the end of which the chair is held; -1 for none. */
  readonly chairFrom: Int8Array;
  readonly chairTo: Int8Array;
  /** The step spent in a watch place, or in the chair when none is free; -1 for none. */
  readonly watch: Int8Array;
  readonly doseBefore: Int8Array;
  /** Minutes a prepared dose may stand; infinite where nobody counts them. */
  readonly keeps: Float64Array;
  readonly chairs: number;
  readonly watchPlaces: number;
  readonly preparers: number;
  readonly checkers: number;
  /** Units of nurse at the beginning, and by how many they change at which minute. A nurse who is busy finishes first. */
  readonly nurseUnits: number;
  readonly changeAt: Float64Array;
  readonly changeBy: Int16Array;
};

/** One day's draws, and what came of them. */
export type Run = {
  /** Minute of arrival; infinite for who does not come. */
  readonly arrival: Float64Array;
  /** Minutes of each step; of preparation and second check in the last two cells of the visit. */
  readonly minutes: Float64Array;
  /** 1: sent home after this step, -1 for nobody. */
  readonly homeAfter: Int8Array;
  /** Minute of leaving; not a number for who did not come. */
  readonly leaves: Float64Array;
  /** Minutes waited by all for a nurse, a chair, a dose. */
  readonly waited: Float64Array;
  finish: number;
  attended: number;
  /** Doses that stood too long and were made again. */
  remade: number;
};

export const NURSE = 0;
export const CHAIR = 1;
export const DOSE = 2;

export const runFor = ({ visits, stride }: Course): Run => ({
  arrival: new Float64Array(visits),
  minutes: new Float64Array(visits * stride),
  homeAfter: new Int8Array(visits).fill(-1),
  leaves: new Float64Array(visits),
  waited: new Float64Array(3),
  finish: 0,
  attended: 0,
  remade: 0,
});

export type Server = (run: Run) => void;

/** Makes the room a day needs once; the function it returns plays one day after the other in it. */
export function serverFor(course: Course): Server {
  const { visits, stride, stepCount, units, chairFrom, chairTo, watch, doseBefore, keeps, changeAt, changeBy } = course;
  const order = new Int32Array(visits);
  // One more than can come: nobody comes after the last.
  const comesAt = new Float64Array(visits + 1);
  const step = new Uint8Array(visits);
  const holdsChair = new Uint8Array(visits);
  const inWatchPlace = new Uint8Array(visits);
  const since = new Float64Array(visits);
  const preparedAt = new Float64Array(visits);
  const readyAt = new Float64Array(visits);
  const preparerFree = new Float64Array(course.preparers);
  const checkerFree = new Float64Array(course.checkers);
  // Who is busy, the next to end last; who waits, in rings.
  const endAt = new Float64Array(visits + 1);
  const endOf = new Int32Array(visits + 1);
  const size = 2 ** Math.ceil(Math.log2(visits + 1));
  const nurseQueue = new Int32Array(size);
  const chairQueue = new Int32Array(size);
  let busy = 0;
  let nurseHead = 0;
  let nurseTail = 0;
  let chairHead = 0;
  let chairTail = 0;
  let freeUnits = 0;
  let freeChairs = 0;
  let freeWatch = 0;
  // In a cell of its own: a number kept by a closure would be made anew each time it changes.
  const clock = new Float64Array(1);
  let run!: Run;

  function endsAt(minute: number, visit: number): void {
    let at = busy;
    busy += 1;
    while (at > 0 && endAt[at - 1]! < minute) {
      endAt[at] = endAt[at - 1]!;
      endOf[at] = endOf[at - 1]!;
      at -= 1;
    }
    endAt[at] = minute;
    endOf[at] = visit;
  }

  const soonest = (free: Float64Array): number => {
    let best = 0;
    for (let index = 1; index < free.length; index += 1) if (free[index]! < free[best]!) best = index;
    return best;
  };

  /** Prepared by whoever is free first, then checked in the order in which preparation was asked for. */
  function prepare(visit: number, from: number): void {
    const cell = visit * stride + stride - 2;
    const preparer = soonest(preparerFree);
    const prepared = Math.max(from, preparerFree[preparer]!) + run.minutes[cell]!;
    preparerFree[preparer] = prepared;
    const checker = soonest(checkerFree);
    const checked = Math.max(prepared, checkerFree[checker]!) + run.minutes[cell + 1]!;
    checkerFree[checker] = checked;
    preparedAt[visit] = prepared;
    readyAt[visit] = checked;
  }

  function beginStep(visit: number): void {
    const own = step[visit]!;
    let from = clock[0]!;
    if (own === doseBefore[visit]) {
      if (clock[0]! - preparedAt[visit]! > keeps[visit]!) {
        run.remade += 1;
        prepare(visit, clock[0]!);
      }
      const ready = readyAt[visit]!;
      if (ready > clock[0]!) {
        run.waited[DOSE]! += ready - clock[0]!;
        from = ready;
      }
    }
    endsAt(from + run.minutes[visit * stride + own]!, visit);
  }

  function askForNurse(visit: number): void {
    const need = units[visit * stride + step[visit]!]!;
    if (need > 0) {
      if (nurseHead !== nurseTail || freeUnits < need) {
        since[visit] = clock[0]!;
        nurseQueue[nurseTail & (size - 1)] = visit;
        nurseTail += 1;
        return;
      }
      freeUnits -= need;
    }
    beginStep(visit);
  }

  function serveNurseQueue(): void {
    while (nurseHead !== nurseTail) {
      const visit = nurseQueue[nurseHead & (size - 1)]!;
      const need = units[visit * stride + step[visit]!]!;
      if (freeUnits < need) return;
      freeUnits -= need;
      nurseHead += 1;
      run.waited[NURSE]! += clock[0]! - since[visit]!;
      beginStep(visit);
    }
  }

  function freeChair(visit: number): void {
    holdsChair[visit] = 0;
    if (chairHead === chairTail) {
      freeChairs += 1;
      return;
    }
    const next = chairQueue[chairHead & (size - 1)]!;
    chairHead += 1;
    holdsChair[next] = 1;
    run.waited[CHAIR]! += clock[0]! - since[next]!;
    askForNurse(next);
  }

  function goOn(visit: number): void {
    if (step[visit] !== chairFrom[visit]) {
      askForNurse(visit);
    } else if (chairHead === chairTail && freeChairs > 0) {
      freeChairs -= 1;
      holdsChair[visit] = 1;
      askForNurse(visit);
    } else {
      since[visit] = clock[0]!;
      chairQueue[chairTail & (size - 1)] = visit;
      chairTail += 1;
    }
  }

  function endStep(visit: number): void {
    const own = step[visit]!;
    const need = units[visit * stride + own]!;
    if (need > 0) {
      freeUnits += need;
      serveNurseQueue();
    }
    if (inWatchPlace[visit] === 1) {
      inWatchPlace[visit] = 0;
      freeWatch += 1;
    }
    const isLast = own + 1 === stepCount[visit] || own === run.homeAfter[visit];
    if (!isLast && own + 1 === watch[visit] && freeWatch > 0) {
      freeWatch -= 1;
      inWatchPlace[visit] = 1;
    }
    const staysSeated = own + 1 === watch[visit] && inWatchPlace[visit] === 0;
    if (holdsChair[visit] === 1 && (isLast || (own >= chairTo[visit]! && !staysSeated))) freeChair(visit);
    if (isLast) {
      run.leaves[visit] = clock[0]!;
      run.attended += 1;
      return;
    }
    step[visit] = own + 1;
    goOn(visit);
  }

  /** Those who come, in the order in which they come; they stand nearly in it already. */
  function putInOrder(): number {
    let count = 0;
    for (let visit = 0; visit < visits; visit += 1) {
      const minute = run.arrival[visit]!;
      if (minute === Number.POSITIVE_INFINITY) {
        run.leaves[visit] = Number.NaN;
        continue;
      }
      let at = count;
      count += 1;
      while (at > 0 && comesAt[at - 1]! > minute) {
        comesAt[at] = comesAt[at - 1]!;
        order[at] = order[at - 1]!;
        at -= 1;
      }
      comesAt[at] = minute;
      order[at] = visit;
    }
    comesAt[count] = Number.POSITIVE_INFINITY;
    return count;
  }

  function reset(): void {
    step.fill(0);
    holdsChair.fill(0);
    inWatchPlace.fill(0);
    preparerFree.fill(0);
    checkerFree.fill(0);
    run.waited.fill(0);
    run.attended = 0;
    run.remade = 0;
    busy = 0;
    nurseHead = 0;
    nurseTail = 0;
    chairHead = 0;
    chairTail = 0;
    freeUnits = course.nurseUnits;
    freeChairs = course.chairs;
    freeWatch = course.watchPlaces;
  }

  return (given) => {
    run = given;
    reset();
    const coming = putInOrder();
    const changes = changeAt.length;
    let came = 0;
    let changed = 0;
    clock[0] = 0;
    for (;;) {
      const end = busy > 0 ? endAt[busy - 1]! : Number.POSITIVE_INFINITY;
      const arrival = comesAt[came]!;
      const isEnd = end <= arrival;
      if (changed < changes && changeAt[changed]! <= (isEnd ? end : arrival)) {
        if (busy === 0 && came === coming && nurseHead === nurseTail) break;
        clock[0] = changeAt[changed]!;
        freeUnits += changeBy[changed]!;
        changed += 1;
        serveNurseQueue();
      } else if (isEnd) {
        if (end === Number.POSITIVE_INFINITY) break;
        clock[0] = end;
        busy -= 1;
        endStep(endOf[busy]!);
      } else {
        clock[0] = arrival;
        const visit = order[came]!;
        came += 1;
        if (doseBefore[visit]! >= 0) prepare(visit, arrival);
        goOn(visit);
      }
    }
    run.finish = clock[0]!;
  };
}
