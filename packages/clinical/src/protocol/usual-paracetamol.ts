/** The amounts of the UK starter: one published UK policy. A unit strikes rows out, changes them, and says where they come from. */
import type { ParacetamolRow } from './paracetamol.ts';

const TELFORD = {
  source: 'NHS Telford 2018: oral paracetamol by weight; six hours between doses with an eGFR below 30',
  status: 'read',
} as const;
const hours = { hoursBetween: 4, lowEgfr: 30, hoursBetweenWithLowEgfr: 6 } as const;

/** Between the policy's "up to 40 kg" and "41 to 49 kg" the lower row holds. Below 33 kg there is no row. */
export const usualParacetamol: readonly ParacetamolRow[] = [
  {
    id: '33 to 40 kg',
    fromKg: '33',
    belowKg: '41',
    leastMilligrams: 500,
    mostMilligrams: 500,
    timesADay: 4,
    mostGramsADay: 2,
    ...hours,
    ...TELFORD,
  },
  {
    id: '41 to 49 kg',
    fromKg: '41',
    belowKg: '50',
    leastMilligrams: 500,
    mostMilligrams: 1000,
    timesADay: 3,
    mostGramsADay: 3,
    ...hours,
    ...TELFORD,
  },
  {
    id: 'from 50 kg',
    fromKg: '50',
    leastMilligrams: 500,
    mostMilligrams: 1000,
    timesADay: 4,
    mostGramsADay: 4,
    ...hours,
    ...TELFORD,
  },
];
