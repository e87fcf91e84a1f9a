/** A letter as a value: what it says, apart from how it looks. Kept with the letter that was signed, so that it prints again. */
import { z } from 'zod';
import { shortText, textField } from './fields.ts';

/** 400 bloods, 30 doses: more rows than any letter has. */
const mostRows = 80;
const rows = z
  .array(z.tuple([shortText, textField]).readonly())
  .max(mostRows)
  .readonly();

const letterBlock = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('paragraph'), text: textField }).readonly(),
  z
    .object({ kind: z.literal('list'), heading: shortText, items: z.array(textField).min(1).max(mostRows).readonly() })
    .readonly(),
  z.object({ kind: z.literal('facts'), heading: shortText, rows }).readonly(),
  /** A form of its own page, filled in by hand and sent back. */
  z
    .object({
      kind: z.literal('reply'),
      heading: shortText,
      about: textField,
      questions: z.array(shortText).min(1).max(mostRows).readonly(),
      sendBackTo: textField,
    })
    .readonly(),
]);
export type LetterBlock = z.infer<typeof letterBlock>;

const lines = z.array(textField).max(20).readonly();

export const letterSheet = z
  .object({
    language: z.enum(['en-GB', 'en-US']),
    /** Version of the wording. */
    version: shortText,
    title: shortText,
    from: lines,
    to: lines,
    dated: shortText,
    /** Whom it is about; empty on a letter to that very person. */
    about: z.string().max(400),
    blocks: z.array(letterBlock).min(1).max(mostRows).readonly(),
    closing: lines,
    /** Printed small at the foot: owner, version. */
    foot: textField,
    demo: z.boolean(),
  })
  .readonly();
export type LetterSheet = z.infer<typeof letterSheet>;
