/** Someone with everything good, doses and orders of any medicine, and what the engine says under a regimen. */
import {
  type RequirementId,
  courseOf,
  day,
  evidenceOf,
  everyDay,
  readiness,
  requirements,
  teaching,
  underRegimen,
  verdictOn,
} from '@twelvemonth/clinical';
import { type Line, asked, at, bloods, born, clear, personOf, weighed } from './person.ts';

type Medicine =
  | 'zoledronic acid 5 mg'
  | 'denosumab 60 mg'
  | 'denosumab 120 mg'
  | 'ibandronate 3 mg'
  | 'romosozumab 210 mg'
  | 'teriparatide';
export const dose = (
  on: string,
  medicine: Medicine,
  setting: 'this service' | 'ward' | 'home' | 'elsewhere' = 'this service',
  id?: string,
) => at(on, 'dose', { medicine, setting }, id);
export const ordered = (regimen: string, on = '2026-01-06', more: object = {}) =>
  at(on, 'prescription', { regimen, validFrom: '2026-01-01' as never, validUntil: '2028-12-31' as never, ...more });
export const good = [
  ...clear,
  born('1941-06-02'),
  weighed('2026-11-24', '56.2'),
  ...bloods('2026-11-01', { creatinine: '79 umol/L', 'adjusted calcium': '2.29 mmol/L', 'vitamin D': '68 nmol/L' }),
];
const context = { protocols: [{ from: day('2015-01-01'), protocol: teaching }], calendar: everyDay };
export const asking = (lines: readonly Line[]) => readiness(personOf(lines), context, asked);
export const said = (lines: readonly Line[], id: RequirementId, on = '2026-11-25') =>
  verdictOn(asking(lines), day(on)).requirements.find(({ requirement }) => requirement === id);
export const under = (id: string, lines: readonly Line[], regimen: string, on = '2026-11-25') =>
  requirements[id as RequirementId]
    .judge(evidenceOf(personOf(lines), asked), underRegimen(teaching, regimen))
    .on(day(on)).verdict;
export const course = (lines: readonly Line[], on = '2026-11-25') => courseOf(personOf(lines), teaching, day(on));
