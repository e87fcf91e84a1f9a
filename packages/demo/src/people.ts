/** The made-up people of the register: who they are, how their kidneys do, which story they will have. */
import { type Day, addDays, addMonths, dayFromCivil, plainDate } from '@twelvemonth/clinical';
import { familyName, givenName, patientNumber } from './names.ts';
import { type Chance, chanceFrom, seedOf } from './random.ts';
import type { UnitId } from './staff.ts';

export const stories = [
  'ordinary',
  'returned',
  'inpatient dose',
  'leaves denosumab',
  'low clearance',
  'no second dose',
  'no to the medicine',
  'no to all contact',
  'moves away',
  'out of reach',
  'closes',
  'brought in',
  'drifts',
] as const;
export type Story = (typeof stories)[number];

export type Person = {
  readonly id: string;
  readonly chance: Chance;
  readonly unit: UnitId;
  readonly town: string;
  readonly given: string;
  readonly family: string;
  readonly sex: 'female' | 'male';
  /** Birth date as the register has it: whole, or only the year. */
  readonly born: string;
  readonly number: string;
  readonly story: Story;
  readonly referredOn: Day;
  readonly diesOn: Day | undefined;
  /** Kilograms and umol/L about which measurements vary. */
  readonly weight: number;
  readonly creatinine: number;
  readonly vitaminD: number;
};

/** Out of a hundred people, so many have each story. */
const share: Readonly<Record<Story, number>> = {
  ordinary: 59,
  returned: 3,
  'inpatient dose': 8,
  'leaves denosumab': 5,
  'low clearance': 4,
  'no second dose': 6,
  'no to the medicine': 2,
  'no to all contact': 1,
  'moves away': 4,
  'out of reach': 2,
  closes: 1,
  'brought in': 2,
  drifts: 3,
};

function storyOf(chance: Chance): Story {
  let left = chance.next() * 100;
  for (const story of stories) {
    left -= share[story];
    if (left < 0) return story;
  }
  return 'ordinary';
}

const YEARS_OF_STORY = 8;
export const storyBegins = (today: Day): Day => addMonths(today, -12 * YEARS_OF_STORY);

export function person(seed: number, n: number, today: Day): Person {
  const chance = chanceFrom(seedOf(seed, n));
  const begins = addDays(storyBegins(today), 21);
  // More and more people are referred as the years go by.
  const referredOn = addDays(begins, Math.floor(chance.next() ** 0.7 * (today - begins)));
  const sex = chance.isTrue(0.86) ? 'female' : 'male';
  const age = Math.round(chance.around(56, 93));
  const bornDay = dayFromCivil(yearOf(referredOn) - age, chance.between(1, 12), chance.between(1, 28));
  const story = storyOf(chance);
  const unit: UnitId = chance.isTrue(0.68) ? 'thornbeck' : 'saltmere';
  const weight = Math.round(chance.around(sex === 'female' ? 46 : 58, sex === 'female' ? 86 : 98) * 10) / 10;
  const clearance = story === 'low clearance' ? chance.around(22, 34) : chance.around(42, 88);
  const creatinine = Math.min(
    140,
    Math.max(46, Math.round(((140 - age - 4) * weight * (sex === 'female' ? 1.04 : 1.23)) / clearance)),
  );
  return {
    id: `mv-${String(n).padStart(4, '0')}`,
    chance,
    unit,
    town: unit === 'thornbeck' ? 'Thornbeck' : 'Saltmere',
    given: givenName(chance, sex),
    family: familyName(chance),
    sex,
    born: isoDay(bornDay),
    number: patientNumber(n),
    story,
    referredOn,
    diesOn: chance.isTrue(0.28) ? addDays(referredOn, chance.between(40, 2600)) : undefined,
    weight,
    creatinine,
    vitaminD: chance.isTrue(0.3) ? chance.between(18, 47) : chance.between(51, 104),
  };
}

const yearOf = (on: Day): number => Number(isoDay(on).slice(0, 4));
const isoDay = (on: Day): string => plainDate(on);
