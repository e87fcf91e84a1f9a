import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { dateField, shortText, textField } from './fields.ts';

/** Somebody one speaks to about the person: a care home, a carer, a relative, a legal proxy. A contact of its own, one entry each. */
export const contactPerson = entryKind({
  name: 'contact-person',
  of: 'patient',
  shape: 1,
  label: 'whom we speak to',
  help: 'Who, how to reach them, and whether the person agreed that we speak with them about it. One entry each; a newer one of the same name replaces it.',
  writes: careRoles,
  body: z
    .object({
      who: shortText,
      relation: z.enum(['care home', 'carer', 'relative', 'legal proxy', 'other']),
      telephone: shortText.optional(),
      address: textField.optional(),
      /** The person's own word; nobody is told anything where it is not a yes or a proxy's document was seen. */
      mayBeTold: z.enum(['yes, they agreed', 'only that we rang', 'no', 'not asked yet']),
      /** They are rung in place of the person. */
      speakToFirst: z.boolean(),
      /** A legal proxy shows a document: which, seen on which day, and what it covers. */
      document: shortText.optional(),
      documentSeenOn: dateField.optional(),
      /** The last day on which it held. */
      until: dateField.optional(),
    })
    .readonly(),
  example: {
    who: 'Heron House, Sister Lind',
    relation: 'care home',
    telephone: '01632 960155',
    mayBeTold: 'yes, they agreed',
    speakToFirst: true,
  },
});
