/** The workload put to cql-execution: a library of 25 definitions and one that needs them all, written as the engine reads it. */
import { type DataProvider, Executor, Library } from 'cql-execution';
import { type Comparison, type Facts, predicates } from './eligibility.ts';

const operators: Readonly<Record<Comparison, string>> = {
  '>=': 'GreaterOrEqual',
  '<=': 'LessOrEqual',
  '=': 'Equal',
  '<': 'Less',
};
const decimal = '{urn:hl7-org:elm-types:r1}Decimal';
const reference = (name: string) => ({ type: 'ExpressionRef', name });
const definition = (name: string, expression: object) => ({
  name,
  context: 'Patient',
  accessLevel: 'Public',
  expression,
});

const definitions = predicates.map(({ fact, comparison, value }, index) =>
  definition(`Rule${index}`, {
    type: operators[comparison],
    operand: [
      { type: 'Property', path: fact, source: reference('Patient') },
      { type: 'Literal', valueType: decimal, value: String(value) },
    ],
  }),
);
const all = predicates
  .map((_, index): object => reference(`Rule${index}`))
  .reduce((left, right) => ({ type: 'And', operand: [left, right] }));

const library = {
  library: {
    identifier: { id: 'Eligibility', version: '1' },
    schemaIdentifier: { id: 'urn:hl7-org:elm', version: 'r1' },
    usings: { def: [{ localIdentifier: 'System', uri: 'urn:hl7-org:elm-types:r1' }] },
    statements: {
      def: [
        definition('Patient', { type: 'SingletonFrom', operand: { dataType: '{x}Patient', type: 'Retrieve' } }),
        ...definitions,
        definition('Eligible', all),
      ],
    },
  },
};

/** Hands the engine one person after the other. */
function source(people: readonly Facts[]) {
  let index = 0;
  const current = () => {
    const facts = people[index];
    if (facts === undefined) return undefined;
    const id = String(index);
    const person = {
      ...facts,
      id,
      getId: () => id,
      findRecords: () => [person] as unknown[],
      findRecord: () => person as unknown,
      get: (name: string) => facts[name],
    };
    return person;
  };
  return {
    currentPatient: current,
    nextPatient: () => {
      index += 1;
      return current();
    },
  };
}

/** How many pass every definition. */
export async function eligibleByClinicalQuery(people: readonly Facts[]): Promise<number> {
  const executor = new Executor(new Library(library));
  const { patientResults } = await executor.exec(source(people) as unknown as DataProvider);
  return Object.values(patientResults).filter((found) => (found as { readonly Eligible?: unknown }).Eligible === true)
    .length;
}
