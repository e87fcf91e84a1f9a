import { z } from 'zod';
import { registrants } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { shortText, textField } from './fields.ts';

/** A nurse ends the person's care here, with the reason. */
export const closed = entryKind({
  name: 'closed',
  of: 'patient',
  shape: 1,
  label: 'closed',
  help: 'Why the service has nothing more to do. Where a bone medicine waits for its successor, who gives that.',
  writes: registrants,
  body: z
    .object({
      reason: textField,
      /** Who gives what a review decided to follow a medicine whose clock runs. */
      takenOverBy: shortText.optional(),
      /** A prescriber's decision that nothing follows, though the clock of a medicine runs: why, and what was said of the risk. */
      nothingFollows: textField.optional(),
    })
    .readonly(),
  example: { reason: 'kidney function too low for this medicine, on another treatment with the family doctor' },
});
