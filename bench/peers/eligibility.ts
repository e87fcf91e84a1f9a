/**
 * A workload for general-purpose rules engines: 25 plain comparisons over 23 facts of a person, some of which fail. It stands for
 * eligibility and is no clinical advice. It is simpler than our own rules: no dates, no windows, no next steps, no sources.
 */
export type Facts = Readonly<Record<string, number>>;
export type Comparison = '>=' | '<=' | '=' | '<';
export type Predicate = { readonly fact: string; readonly comparison: Comparison; readonly value: number };

const table = `egfr >= 35, egfrAgeDays <= 90, calcium >= 2.1, calcium <= 2.6, calciumAgeDays <= 90, vitaminD >= 50,
vitaminDAgeDays <= 365, bloodsAgeDays <= 90, intervalDays >= 351, intervalDays <= 730, dentalDue = 0, jawTrouble = 0,
infection = 0, temperature <= 37.8, pregnant = 0, allergy = 0, weight >= 35, age >= 18, dehydrated = 0, hardOnKidneys = 0,
eyeTrouble = 0, consent = 1, fractureWeeks >= 2, phosphate >= 0.7, earlierDoses < 6`;

/** A person passes where every one is true. */
export const predicates: readonly Predicate[] = table.split(/,\s+/).map((line) => {
  const [fact = '', comparison, value] = line.split(' ');
  return { fact, comparison: comparison as Comparison, value: Number(value) };
});

/** Low, high and decimals of what is measured; everything else is no (0), for one in thirty-three yes (1). */
const measured: Readonly<Record<string, readonly [low: number, high: number, decimals: number]>> = {
  egfr: [25, 100, 1],
  egfrAgeDays: [0, 110, 0],
  calcium: [2.05, 2.55, 2],
  calciumAgeDays: [0, 110, 0],
  vitaminD: [40, 120, 1],
  vitaminDAgeDays: [0, 400, 0],
  bloodsAgeDays: [0, 100, 0],
  intervalDays: [330, 750, 0],
  temperature: [36, 38, 1],
  weight: [34, 104, 1],
  age: [17, 92, 0],
  fractureWeeks: [0, 80, 0],
  phosphate: [0.65, 1.45, 2],
  earlierDoses: [0, 6, 0],
};

export function eligibilityFacts(people: number): Facts[] {
  let state = 1;
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const names = [...new Set(predicates.map(({ fact }) => fact))];
  return Array.from({ length: people }, () => {
    const facts: Record<string, number> = {};
    for (const name of names) {
      const range = measured[name];
      if (range === undefined) facts[name] = Number(name === 'consent' ? next() < 0.97 : next() < 0.03);
      else facts[name] = Number((range[0] + next() * (range[1] - range[0])).toFixed(range[2]));
    }
    return facts;
  });
}

const holds = ({ fact, comparison, value }: Predicate, facts: Facts): boolean => {
  const found = facts[fact] ?? Number.NaN;
  if (comparison === '>=') return found >= value;
  if (comparison === '<=') return found <= value;
  return comparison === '=' ? found === value : found < value;
};

/** What both engines must answer: how many pass everything. */
export const eligibleIn = (people: readonly Facts[]): number =>
  people.filter((facts) => predicates.every((one) => holds(one, facts))).length;
