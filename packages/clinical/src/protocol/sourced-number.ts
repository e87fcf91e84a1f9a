/** A number of a rule sheet with where it comes from and how its source was seen. */
import { z } from 'zod';
import { parseScaled } from '../exact/decimal.ts';
import { textField } from '../kinds/fields.ts';

export const sourceStatus = z.enum([
  'read',
  'secondary',
  'from memory',
  'common practice, no source',
  'local decision',
  /** Only ever put in when an older sheet is read (upgrade.ts); never written, never signed. */
  'added by an upgrade, not signed',
]);
export type SourceStatus = z.infer<typeof sourceStatus>;

const decimalText = z.string().refine((text) => parseScaled(text) !== undefined, 'a number with at most 4 decimals');

export const sourcedNumber = z
  .object({
    /** Empty where the source is silent. */
    value: decimalText.nullable(),
    suggestion: decimalText.optional(),
    source: textField,
    status: sourceStatus,
  })
  .readonly();
export type SourcedNumber = z.infer<typeof sourcedNumber>;

/** One that is never empty: it stands in place of the sheet's own. */
export const decidedNumber = z.object({ value: decimalText, source: textField, status: sourceStatus }).readonly();
export type DecidedNumber = z.infer<typeof decidedNumber>;
