/**
 * The starter by UK guidance: only what it says otherwise than the EU-like starter, which has the rest. Citations and how each
 * was seen: the status beside it.
 */
import type { NumberKey } from './number-keys.ts';
import type { ProtocolSheet } from './protocol.ts';
import type { SourcedNumber } from './sourced-number.ts';
import { usualParacetamol } from './usual-paracetamol.ts';
import { NOS_2018, PRODUCT_TEXT, SILENT, open, said, starterSheet } from './starter.ts';

const HARMONY = 'UK Pathology Harmony interval; Schini 2020, Clin Endocrinol doi 10.1111/cen.14326';

const NOGG = 'NOGG 2021, updated 2024, Gregson 2022, doi 10.1007/s11657-022-01061-5';

const differs: Partial<Record<NumberKey, SourcedNumber>> = {
  adjustedWeightFromPercent: open(
    '120',
    'MHRA Drug Safety Update October 2019: actual weight, ideal or adjusted at the extremes of body mass (from memory); Winter 2012, Pharmacotherapy 32:604: from 120 or 130 % of ideal weight',
  ),
  bloodsValidDays: open(
    '56',
    'label: before each dose, without a number; two months: Manchester 2012, Endocrine Abstracts 28 P161; UK units use two to twelve weeks',
    'read',
  ),
  calciumLow: said('2.20', HARMONY),
  calciumHigh: said('2.60', HARMONY),
  vitaminDFloor: said('50', `${NOS_2018}: above 50 nmol/L sufficient; 40 to 50 seen in UK units`),
  vitaminDFloorNgPerMl: said('20', 'Manchester 2012, Endocrine Abstracts 28 P161: action below 20 ng/mL'),
  loadingDoses: said(
    '6',
    `${NOS_2018}: up to about 300,000 IU over 6 to 10 weeks, here 50,000 IU weekly`,
    'from memory',
  ),
  loadingEveryDays: said('7', `${NOS_2018}: weekly split doses`, 'from memory'),
  loadingUnitsPerDose: said('50000', `${NOS_2018}: 50,000 IU weekly for six weeks`, 'from memory'),
  hipRepairDays: said(
    '14',
    `${PRODUCT_TEXT} 4.2: two or more weeks after hip fracture repair; earlier in published UK protocols (Johansen 2023, Age Ageing afad172; its day from memory): then by a prescriber's exception`,
  ),
  maxConsecutiveDoses: said('6', `${NOGG}: review at three years, up to six years of infusions`, 'from memory'),
  breakMonths: said('36', `${NOGG}: reassess three years after zoledronate`, 'from memory'),
  continueFromAge: said('70', `${NOGG}: up to six years from this age on`, 'from memory'),
  continueHipTScore: said('-2.5', `${NOGG}: up to six years at or below this`, 'from memory'),
  steroidMgPerDay: said('7.5', `${NOGG}: no pause while on 7.5 mg of prednisolone a day or more`, 'from memory'),
  runningMinutesUsual: open('30', `${SILENT}; 30 minutes: Manchester 2012, Endocrine Abstracts 28 P161`, 'read'),
};

export const starterUk: ProtocolSheet = {
  ...starterSheet,
  paracetamol: usualParacetamol,
  version: 'starter-uk',
  title: 'UK-like: the product text with UK guidance',
  numbers: { ...starterSheet.numbers, ...differs },
  /** Longer intervals are practice elsewhere. */
  regimens: starterSheet.regimens
    .filter(({ id }) => id !== 'zoledronic-acid-18-monthly' && id !== 'zoledronic-acid-24-monthly')
    .map((regimen) =>
      regimen.id === 'zoledronic-acid-yearly'
        ? {
            ...regimen,
            source: `${PRODUCT_TEXT} 4.2: once a year (read); review after three doses: NOGG 2021, updated 2024 (from memory)`,
          }
        : regimen,
    ),
};
