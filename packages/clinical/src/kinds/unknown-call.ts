import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { saidInCall } from './advice-call.ts';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** A call about somebody who is not found here: kept at the unit until it is known whom it was about, or that it is nobody of ours. */
export const unknownCall = entryKind({
  name: 'unknown-call',
  of: 'unit',
  shape: 1,
  label: 'call about somebody not found',
  help: 'The name as it was said, what is known, and the call.',
  writes: careRoles,
  body: z.object({ ...saidInCall, nameSaid: shortText, knownOfThem: shortText.optional() }).readonly(),
  example: {
    caller: 'care home',
    redFlags: ['none of these'],
    about: 'asks whether the drip may be on the same day as a vaccine',
    advice: 'to be asked when we know the name; we ring back',
    nameSaid: 'Mrs Ashdown or Ashdene',
  },
});
