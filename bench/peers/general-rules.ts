/** The workload put to json-rules-engine: 25 rules, so that every rule a person fails is known by name. */
import { Engine } from 'json-rules-engine';
import { type Comparison, type Facts, predicates } from './eligibility.ts';

const operators: Readonly<Record<Comparison, string>> = {
  '>=': 'greaterThanInclusive',
  '<=': 'lessThanInclusive',
  '=': 'equal',
  '<': 'lessThan',
};

/** How many pass every rule. */
export async function eligibleByGeneralRules(people: readonly Facts[]): Promise<number> {
  const engine = new Engine();
  for (const [index, { fact, comparison, value }] of predicates.entries())
    engine.addRule({
      conditions: { all: [{ fact, operator: operators[comparison], value }] },
      event: { type: 'passes', params: { index } },
    });
  let eligible = 0;
  for (const facts of people) {
    const { events } = await engine.run(facts);
    if (events.length === predicates.length) eligible += 1;
  }
  return eligible;
}
