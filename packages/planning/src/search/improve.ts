/** prototype */
import type { Draw } from '../random.ts';
import { type Blocks, blocksOf } from './block.ts';
import { type FitChoice, fit } from './fit.ts';
import { ARRIVES, LEAVES, type Problem, stride } from './problem.ts';
import { type Room, emptyRoom, giveBack, take, waitIn } from './room.ts';

export type Value = [unseen: number, over: number, wait: number, finish: number];

export function valueOf(problem: Problem, times: Int16Array): Value {
  let unseen = 0;
  let wait = 0;
  let finish = 0;
  for (let v = 0; v < problem.visits; v += 1) {
    const leaves = times[v * stride + LEAVES]!;
    if (leaves < 0) unseen += 1;
    else {
      wait += waitIn(problem, v, times);
      if (leaves > finish) finish = leaves;
    }
  }
  return [unseen, Math.max(0, finish - problem.closes), wait, finish];
}
export function better(a: Value, b: Value): boolean {
  for (let i = 0; i < 4; i += 1) if (a[i] !== b[i]) return a[i]! < b[i]!;
  return false;
}
export const P = { alpha: 40, t0: 16, t1: 0.5, cycle: 3000, kmax: 5, tail: 8, near: 0.5 , noEarliest: 0, reset: 100, hot: 0};

export function improve(problem: Problem, draw: Draw, stop: () => boolean, log?: (v: Value, it: number) => void) {
  const blocks = blocksOf(problem);
  const n = problem.visits;
  const choice: FitChoice = { dose: 2, late: false };
  let room = emptyRoom(problem);
  const times = new Int16Array(n * stride).fill(-1);
  // first plan
  const order = [...Array(n).keys()].sort((a, b) => {
    const s = (v: number) => (problem.byTransport[v] ? -1 : problem.latest[v]! - problem.earliest[v]! - problem.care[v]!);
    return s(a) - s(b) || problem.earliest[a]! - problem.earliest[b]!;
  });
  for (const v of order) if (fit(problem, blocks, room, v, 0, problem.ticks, choice, times)) take(problem, room, v, times);
  let best = times.slice();
  let bestV = valueOf(problem, times);
  log?.(bestV, 0);
  const pen = new Float64Array(problem.ticks + 1);
  const setPen = () => {
    const b = bestV[3];
    for (let t = 0; t <= problem.ticks; t += 1) {
      const d = t - (b - P.tail);
      pen[t] = d > 0 ? d * d * 0.3 + (t >= b ? 10 * (t - b + 1) : 0) : 0;
    }
  };
  setPen();
  const cost = (v: number): number => {
    const l = times[v * stride + LEAVES]!;
    if (l < 0) return 400;
    return P.alpha * (l - times[v * stride + ARRIVES]! - problem.care[v]!) + pen[l]!;
  };
  const removed = new Int16Array(n);
  const saved = new Int16Array(n * stride);
  let it = 0;
  const score = new Float64Array(n);
  while (!stop()) {
    // new cycle
    if (it > 0 && draw(100) < P.reset) {
      times.set(best);
      room = emptyRoom(problem);
      for (let v = 0; v < n; v += 1) if (times[v * stride + LEAVES]! >= 0) take(problem, room, v, times);
      setPen();
    }
    const hot = draw(100) < P.hot;
    for (let c = 0; c < P.cycle; c += 1) {
      it += 1;
      if ((it & 63) === 0 && stop()) break;
      const T = (hot ? 4 : 1) * P.t0 * Math.pow(P.t1 / P.t0, c / P.cycle);
      let k = 0;
      const size = 1 + draw(P.kmax);
      const r = draw(100);
      if (r < 30) {
        while (k < size) {
          const v = draw(n);
          let dup = false;
          for (let i = 0; i < k; i += 1) if (removed[i] === v) dup = true;
          if (!dup) removed[k++] = v;
        }
      } else {
        let seed = draw(n);
        if (r < 65) {
          // costly seed by tournament
          for (let q = 0; q < 4; q += 1) {
            const o = draw(n);
            if (cost(o) > cost(seed)) seed = o;
          }
        }
        const mid = times[seed * stride + LEAVES]! < 0 ? problem.earliest[seed]! : times[seed * stride]!;
        for (let v = 0; v < n; v += 1) {
          const m = times[v * stride + LEAVES]! < 0 ? mid : times[v * stride]!;
          score[v] = v === seed ? -1e9 : Math.abs(m - mid) + draw(12);
        }
        while (k < size) {
          let b = 0;
          for (let v = 1; v < n; v += 1) if (score[v]! < score[b]!) b = v;
          removed[k++] = b;
          score[b] = 1e9;
        }
      }
      // always include unseen
      let before = 0;
      for (let i = 0; i < k; i += 1) {
        const v = removed[i]!;
        before += cost(v);
        const row = v * stride;
        for (let j = row; j < row + stride; j += 1) saved[j] = times[j]!;
        if (times[row + LEAVES]! >= 0) giveBack(problem, room, v, times);
      }
      // order
      for (let i = k - 1; i > 0; i -= 1) {
        const j = draw(i + 1);
        const x = removed[i]!;
        removed[i] = removed[j]!;
        removed[j] = x;
      }
      let after = 0;
      for (let i = 0; i < k; i += 1) {
        const v = removed[i]!;
        const d = draw(8);
        choice.dose = d < 4 ? 2 : d < 6 ? 0 : 1;
        choice.late = draw(2) === 0;
        let from = 0;
        if (draw(100) < P.noEarliest * 100) from = problem.earliest[v]! + draw(Math.max(1, Math.min(problem.latest[v]!, bestV[3]) - problem.care[v]! - problem.earliest[v]!));
        let ok = fit(problem, blocks, room, v, problem.byTransport[v] ? 0 : from, problem.ticks, choice, times);
        if (!ok && from > 0) ok = fit(problem, blocks, room, v, 0, problem.ticks, choice, times);
        if (ok) take(problem, room, v, times);
        after += cost(v);
      }
      const delta = after - before;
      if (delta <= 0 || draw(1e6) < 1e6 * Math.exp(-delta / T)) {
        if (delta < 0 || true) {
          const value = valueOf(problem, times);
          if (better(value, bestV)) {
            bestV = value;
            best = times.slice();
            setPen();
            log?.(value, it);
          }
        }
      } else {
        for (let i = 0; i < k; i += 1) {
          const v = removed[i]!;
          if (times[v * stride + LEAVES]! >= 0) giveBack(problem, room, v, times);
        }
        for (let i = 0; i < k; i += 1) {
          const row = removed[i]! * stride;
          for (let j = row; j < row + stride; j += 1) times[j] = saved[j]!;
          if (times[row + LEAVES]! >= 0) take(problem, room, removed[i]!, times);
        }
      }
    }
  }
  return { best, bestV, it };
}
