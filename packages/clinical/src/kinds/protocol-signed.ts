import { z } from 'zod';
import type { PlainDate } from '../calendar/day.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText } from './fields.ts';

/** One of the two signatures a version needs, on the same content hash and the same first day. */
export const protocolSigned = entryKind({
  name: 'protocol-signed',
  of: 'protocol',
  shape: 1,
  label: 'protocol signed',
  help: 'A clinician and a pharmacist sign the same text and the same first day in force.',
  writes: ['prescriber', 'pharmacist'],
  body: z
    .object({
      version: shortText,
      contentHash: shortText,
      as: z.enum(['clinician', 'pharmacist']),
      inForceFrom: dateField,
    })
    .readonly(),
  example: {
    version: 'thornbeck-3',
    contentHash: 'sha256:...',
    as: 'clinician',
    inForceFrom: '2026-09-01' as PlainDate,
  },
});
