/** Everyone and everything that has a life in the demo: units first, then the cast, then people by chance, in a fixed order. */
import { otherRegimens } from './cast/other-regimens.ts';
import { otherCast } from './cast/others.ts';
import { workedCases } from './cast/worked-cases.ts';
import { at } from './clock.ts';
import { type Life, Me } from './life.ts';
import { keepsDirection } from './directions.ts';
import { keepsPacks } from './packs.ts';
import { person } from './people.ts';
import { story } from './story.ts';
import { unitLife } from './unit-life.ts';
import { unitIds } from './units.ts';
import type { World } from './world.ts';

/** So many people in all, the cast among them. */
export function lives(world: World, people: number): readonly Life[] {
  const units = unitIds.flatMap((unit) => [
    unitLife(unit, world),
    keepsPacks(unit, world),
    keepsDirection(unit, world),
  ]);
  const cast = [...workedCases(world), ...otherCast(world), ...otherRegimens(world)];
  const everyone = Array.from({ length: Math.max(0, people - cast.length) }, (_, n) => {
    const one = person(world.seed, n + 1, world.today);
    return story(new Me(one, world, at(one.referredOn, 8)));
  });
  return [...units, ...cast, ...everyone];
}
