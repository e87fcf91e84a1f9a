import { z } from 'zod';
import { clinicalRoles } from '../ledger/role.ts';
import { densityQuantity } from '../exact/quantity.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

export const densitySites = ['lumbar spine', 'total hip', 'femoral neck'] as const;
export type DensitySite = (typeof densitySites)[number];

const scorePrinted = (says: string) => z.string().regex(/^-?\d{1,2}(\.\d{1,2})?$/, says);

/** One site of a bone density scan, as the report prints it. `effectiveAt` is the day of the scan. */
export const boneDensity = entryKind({
  name: 'bone-density',
  of: 'patient',
  shape: 1,
  label: 'bone density scan',
  help: 'One site: the density in g/cm2 and the T-score as printed, and the scanner: only scans of one scanner are compared.',
  writes: clinicalRoles,
  body: z
    .object({
      site: z.enum(densitySites),
      side: z.enum(['left', 'right']).optional(),
      /** Which machine: scans of different ones are not comparable. */
      scanner: shortText,
      density: densityQuantity,
      /** As printed on the report; never worked out again. */
      tScore: scorePrinted('a T-score as printed, such as -2.8').optional(),
      /** The same beside people of the person's age and sex. */
      zScore: scorePrinted('a Z-score as printed, such as -0.7').optional(),
      /** The smallest change this scanner and its staff can tell from noise, at this site, where the report prints it. */
      leastChange: densityQuantity.optional(),
    })
    .readonly(),
  example: {
    site: 'total hip',
    side: 'left',
    scanner: 'Thornbeck 1',
    density: { comparator: '', value: '0.642', unit: 'g/cm2' },
    tScore: '-2.5',
  },
});
