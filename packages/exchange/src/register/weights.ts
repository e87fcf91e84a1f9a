/** A weight in the wrong unit passes as a body: it is caught against the person's other weights (practice hazard 8). */
import { type BodyOfKind, type Day, plainDate, weightJumpShare } from '@twelvemonth/clinical';
import type { Fact } from './fact.ts';
import type { Report } from './problem.ts';

type Weighed = { readonly on: Day; readonly quantity: BodyOfKind<'weight'>['quantity'] };

const kilogramsPerPound = 0.45359237;
/** Only for a remark: never the value a decision is made from. */
const kilograms = ({ quantity }: Weighed): number =>
  Number(quantity.value) * (quantity.unit === 'lb' ? kilogramsPerPound : 1);

/** A unit written in the cell was meant; it is not questioned. */
const saysItsUnit = (cell: string): boolean => /[a-z]/i.test(cell);

/** Compares each weight of the file with the newest one before it, of the file or of the notes. */
export function checkWeights(facts: readonly Fact[], known: readonly Weighed[], report: (fact: Fact) => Report): void {
  const weighed = facts.flatMap((fact) =>
    fact.kind === 'weight' && fact.on !== undefined ? [{ fact, on: fact.on, quantity: fact.body.quantity }] : [],
  );
  for (const weight of weighed) {
    if (saysItsUnit(weight.fact.cell)) continue;
    const others: readonly Weighed[] = known.length > 0 ? known : weighed;
    const before = others.filter((other) => other.on < weight.on).toSorted((a, b) => b.on - a.on)[0];
    if (before === undefined) continue;
    const ratio = kilograms(weight) / kilograms(before);
    const beside = `${weight.fact.cell} ${weight.quantity.unit} beside ${before.quantity.value} ${before.quantity.unit} on ${plainDate(before.on)}`;
    const asPounds = Math.abs(ratio * kilogramsPerPound - 1) < weightJumpShare / 2;
    const asKilograms = Math.abs(ratio / kilogramsPerPound - 1) < weightJumpShare / 2;
    if (asPounds || asKilograms)
      report(weight.fact)(
        weight.fact.column,
        'weight-like-other-unit',
        weight.fact.cell,
        `${beside}: it looks like ${asPounds ? 'pounds' : 'kilograms'}`,
        `weigh or look it up, and write the unit in the cell: "${weight.fact.cell} lb" or "${weight.fact.cell} kg"`,
      );
    else if (Math.abs(ratio - 1) > weightJumpShare)
      report(weight.fact)(
        weight.fact.column,
        'weight-jump',
        weight.fact.cell,
        beside,
        'check the weight; weigh again before a dose',
      );
  }
}
