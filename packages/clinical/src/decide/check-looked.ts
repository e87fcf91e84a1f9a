/** Hazard 77: whoever lets a drip run, the first time or again, has looked along the line. */
import { lineLookedAlong } from '../kinds/infusion-started.ts';
import { fieldWrong } from './check-fields.ts';
import type { Refusal } from './refusal.ts';

export const lookAlong = 'look: vented set, no air in it, clamp shut until the rate is set; then say so';

export const checkLooked = ({ alongTheLine }: { readonly alongTheLine?: string | undefined }): readonly Refusal[] =>
  alongTheLine === lineLookedAlong
    ? []
    : [fieldWrong('alongTheLine', 'nobody says that they looked along the line', lookAlong)];
