import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { productNumberField, shortText, uuidField } from './fields.ts';

/** One pack, by its serial number, was scanned for one person: it is never scanned for another. */
export const packOpened = entryKind({
  name: 'pack-opened',
  of: 'pack',
  shape: 1,
  label: 'pack opened',
  help: 'Written by the scan at the preparation.',
  writes: registrants,
  body: z
    .object({ productNumber: productNumberField, serial: shortText, batch: shortText, patient: uuidField })
    .readonly(),
  example: { productNumber: '09506000134352', serial: 'S1042', batch: 'PA-2391', patient: 'p1' },
});
