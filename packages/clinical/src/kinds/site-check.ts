import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

export const siteSignNames = [
  'pain',
  'pain along the cannula',
  'redness',
  'swelling',
  'hardening',
  'a cord along the vein',
  'fever',
] as const;

/** The cannula's site was looked at while the medicine runs. Well means: none of the signs was seen. */
export const siteCheck = entryKind({
  name: 'site-check',
  of: 'patient',
  shape: 1,
  label: 'look at the site',
  help: 'Looks well, or what is seen. Swelling or pain is infiltration until shown otherwise: stop, look, resite.',
  writes: registrants,
  body: z.discriminatedUnion('looks', [
    z.strictObject({ looks: z.literal('well') }).readonly(),
    z
      .object({
        looks: z.literal('not well'),
        seen: z.array(z.enum(siteSignNames)).min(1, 'say what is seen').readonly(),
        note: textField.optional(),
      })
      .readonly(),
  ]),
  example: { looks: 'not well', seen: ['pain', 'swelling'] },
});
