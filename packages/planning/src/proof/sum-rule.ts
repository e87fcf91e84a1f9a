/** A sum of variables, each added or subtracted, is at most a limit. */
import { type Rule, fails, follows } from './rule.ts';
import { type Literal, type Trail, atLeast, atMost } from './trail.ts';

export type Term = { readonly variable: number; readonly sign: 1 | -1 };

export function sumRule(terms: readonly Term[], most: number): Rule {
  const because: Literal[] = [];
  const leastOf = (trail: Trail, { variable, sign }: Term): number =>
    sign === 1 ? trail.least[variable]! : -trail.most[variable]!;
  const bound = (trail: Trail, { variable, sign }: Term): Literal =>
    sign === 1 ? atLeast(trail, variable, trail.least[variable]!) : atMost(trail, variable, trail.most[variable]!);
  const explain = (trail: Trail, except: Term | undefined): void => {
    because.length = 0;
    for (const term of terms) if (term !== except) because.push(bound(trail, term));
  };
  return {
    watches: terms.map((term) => term.variable),
    look(trail) {
      let sum = 0;
      for (const term of terms) sum += leastOf(trail, term);
      if (sum > most) {
        explain(trail, undefined);
        return fails(trail, because);
      }
      for (const term of terms) {
        const { variable, sign } = term;
        const room = most - sum + leastOf(trail, term);
        const isTight = sign === 1 ? trail.most[variable]! <= room : -trail.least[variable]! <= room;
        if (isTight) continue;
        explain(trail, term);
        const literal = sign === 1 ? atMost(trail, variable, room) : atLeast(trail, variable, -room);
        if (!follows(trail, literal, because)) return false;
      }
      return true;
    },
  };
}
