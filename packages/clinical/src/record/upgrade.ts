/**
 * Bodies of older shapes, read as the current shape. Stored bytes never change. Every shape ever stored keeps a real
 * sample in upgrade.test.ts.
 */
import { type KindName, kindNamed } from '../kinds/index.ts';

type Upgrade = (body: unknown) => unknown;
/** For each kind, the step from shape 1 to 2, from 2 to 3, ... in order. All kinds are at shape 1 today. */
const steps: Partial<Record<KindName, readonly Upgrade[]>> = {};

export function upgraded(kind: KindName, shape: number, body: unknown): unknown {
  const known = steps[kind];
  return known === undefined ? body : known.slice(shape - 1).reduce((older, step) => step(older), body);
}

/** Why a shape cannot be read; undefined: it can. */
export function unreadableShape(kind: KindName, shape: number): string | undefined {
  const current = kindNamed(kind).shape;
  return shape <= current
    ? undefined
    : `written by a newer version (shape ${shape} of ${kind}; this version reads up to ${current})`;
}
