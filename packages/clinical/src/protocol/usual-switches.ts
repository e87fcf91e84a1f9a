/** The switches a starter sheet begins with. Where no row fits, nothing is assumed: a prescriber is asked. */
import type { SwitchRule } from './switch-rule.ts';

const resorptionDown = [
  'zoledronic acid 5 mg',
  'denosumab 60 mg',
  'ibandronate 3 mg',
  'pamidronate',
] as const satisfies SwitchRule['to'];
const bonesUp = ['romosozumab 210 mg', 'teriparatide'] as const satisfies SwitchRule['to'];

export const usualSwitches: readonly SwitchRule[] = [
  {
    from: 'romosozumab 210 mg',
    to: resorptionDown,
    earliestMonths: 1,
    latestMonths: 2,
    source: 'romosozumab product text: an antiresorptive follows (read); at month 12 to 13 (from memory)',
    status: 'from memory',
  },
  {
    from: 'teriparatide',
    to: resorptionDown,
    earliestMonths: 0,
    latestMonths: 1,
    source: 'an antiresorptive promptly, within about a month of the end: AACE and NOGG',
    status: 'from memory',
  },
  {
    from: 'teriparatide',
    to: ['romosozumab 210 mg'],
    earliestMonths: 0,
    latestMonths: 1,
    source: 'no gap after the end, as before an antiresorptive',
    status: 'common practice, no source',
  },
  {
    from: 'ibandronate 3 mg',
    to: resorptionDown,
    earliestMonths: 3,
    source: 'when the next dose would be due',
    status: 'from memory',
  },
  {
    from: 'pamidronate',
    to: resorptionDown,
    earliestMonths: 3,
    source: 'when the next dose would be due',
    status: 'from memory',
  },
  {
    from: 'zoledronic acid 5 mg',
    to: ['denosumab 60 mg', 'ibandronate 3 mg', 'pamidronate'],
    earliestMonths: 12,
    source: 'when the next dose would be due',
    status: 'common practice, no source',
  },
  {
    from: 'zoledronic acid 5 mg',
    to: bonesUp,
    earliestMonths: 0,
    source: 'a fracture on treatment does not wait for the anniversary',
    status: 'common practice, no source',
  },
  {
    from: 'ibandronate 3 mg',
    to: bonesUp,
    earliestMonths: 0,
    source: 'a fracture on treatment does not wait for the next due date',
    status: 'common practice, no source',
  },
];
