/** What a rule of a proof does: look at the bounds, conclude what must follow, or show that they contradict each other. */
import { type Literal, type Trail, ALWAYS, NEVER, becauseOfNote, conclude, note, opposite } from './trail.ts';

export type Rule = {
  /** The variables a change of which makes it look again. */
  readonly watches: readonly number[];
  /** False when the bounds contradict the rule; the literals that do so are then in `trail.conflict`. */
  readonly look: (trail: Trail) => boolean;
};

/** Concludes a literal from literals that hold (`because`, which is emptied); false if the opposite already holds. */
export function follows(trail: Trail, literal: Literal, because: Literal[]): boolean {
  const value = trail.value[literal]!;
  if (value > 0) {
    because.length = 0;
    return true;
  }
  let count = 0;
  for (const held of because) if (held !== ALWAYS) because[count++] = held;
  if (value < 0) {
    because.length = count;
    return fails(trail, because, literal === NEVER ? ALWAYS : opposite(literal));
  }
  conclude(trail, literal, becauseOfNote(note(trail, because, count)));
  because.length = 0;
  return true;
}

/** Reports literals that hold and cannot hold together. */
export function fails(trail: Trail, because: Literal[], also: Literal = ALWAYS): false {
  trail.conflict.length = 0;
  for (const held of because) if (held !== ALWAYS) trail.conflict.push(held);
  if (also !== ALWAYS) trail.conflict.push(also);
  because.length = 0;
  return false;
}
