/**
 * The rules of the shared day instances, written down a second time from their description alone and straight over the
 * instance's own numbers. It throws nothing away: true when every rule is kept. Source: the notes and the checker that came
 * with the instances, by another hand.
 */
export type SharedDay = {
  readonly horizon: number;
  readonly chairs: number;
  readonly seats: number;
  readonly nurse: readonly number[];
  readonly prep: readonly number[];
  readonly check: readonly number[];
  readonly patients: readonly {
    readonly first: boolean;
    readonly inf: number;
    readonly est: number;
    readonly lct: number;
    readonly fixedArrival: boolean;
  }[];
};

export type SharedTimes = {
  readonly arr: number;
  readonly obs: number;
  readonly chk: number;
  readonly can: number;
  readonly inf: number;
  readonly rem: number;
  readonly dis: number;
  readonly prep: number;
  readonly sec: number;
  readonly chair: boolean;
};

const watch = 6;

/** Wait and finish in ticks, or null when a rule is broken. */
export function checkDay(
  day: SharedDay,
  times: readonly (SharedTimes | undefined)[],
): { wait: number; finish: number } | null {
  const load = (): number[] => Array.from({ length: day.horizon + 60 }, () => 0);
  const [busy, running, chairs, seats, prep, check] = [load(), load(), load(), load(), load(), load()];
  const fill = (lane: number[], from: number, until: number): void => {
    for (let tick = from; tick < until; tick += 1) lane[tick] = (lane[tick] ?? 0) + 1;
  };
  let wait = 0;
  let finish = 0;
  for (const [index, patient] of day.patients.entries()) {
    const own = times[index];
    if (own === undefined) return null;
    const gone = own.rem + 1;
    const end = own.dis + 1;
    const kept = [
      patient.fixedArrival ? own.arr === patient.est : own.arr === own.obs && own.arr >= patient.est,
      own.obs >= own.arr,
      end <= patient.lct,
      end <= day.horizon,
      own.chk >= own.obs + 2,
      own.can >= own.chk + 2,
      own.inf >= own.can + 2,
      own.rem >= own.inf + patient.inf,
      own.dis >= gone + (patient.first ? watch : 0),
      own.prep >= own.arr,
      own.sec >= own.prep + 2,
      own.sec + 1 <= own.inf,
      own.prep + 2 >= own.inf - 6,
    ];
    if (kept.includes(false)) return null;
    for (const [from, until] of [
      [own.obs, own.obs + 2],
      [own.chk, own.chk + 2],
      [own.can, own.can + 2],
      [own.rem, gone],
      [own.dis, end],
    ] as const)
      fill(busy, from, until);
    fill(running, own.inf, own.inf + patient.inf);
    fill(chairs, own.can, patient.first && own.chair ? gone + watch : gone);
    if (patient.first && !own.chair) fill(seats, gone, gone + watch);
    fill(prep, own.prep, own.prep + 2);
    fill(check, own.sec, own.sec + 1);
    wait += end - own.arr - (6 + patient.inf + 1 + (patient.first ? watch : 0) + 1);
    finish = Math.max(finish, end);
  }
  for (let tick = 0; tick < day.horizon + 60; tick += 1) {
    const nurses = day.nurse[tick] ?? 0;
    const isFull =
      4 * (busy[tick] ?? 0) + (running[tick] ?? 0) > 4 * nurses ||
      (chairs[tick] ?? 0) > day.chairs ||
      (seats[tick] ?? 0) > day.seats ||
      (prep[tick] ?? 0) > (day.prep[tick] ?? 0) ||
      (check[tick] ?? 0) > (day.check[tick] ?? 0);
    if (isFull) return null;
  }
  return { wait, finish };
}
