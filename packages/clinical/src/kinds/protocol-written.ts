import { z } from 'zod';
import { entryKind } from './entry-kind.ts';
import { shortText } from './fields.ts';

/** A version of the protocol as it would apply, whole. Not in force until two people have signed its hash. */
export const protocolWritten = entryKind({
  name: 'protocol-written',
  of: 'protocol',
  shape: 1,
  label: 'protocol written',
  help: 'The whole rule sheet.',
  writes: ['nurse in charge', 'prescriber', 'pharmacist', 'service lead'],
  body: z.object({ version: shortText, content: z.string().min(2).max(200000), contentHash: shortText }).readonly(),
  example: { version: 'thornbeck-3', content: '{}', contentHash: 'sha256:...' },
});
