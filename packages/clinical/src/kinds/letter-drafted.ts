import { z } from 'zod';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { letterReaders, letterSubjects } from './letter.ts';
import { letterSheet } from './letter-sheet.ts';

/** A letter put before a registered person: it goes out once one of them has signed it. */
export const letterDrafted = entryKind({
  name: 'letter-drafted',
  of: 'patient',
  shape: 1,
  label: 'letter drafted',
  help: 'To whom, about what; waits for a signature.',
  writes: careRoles,
  body: z.object({ to: z.enum(letterReaders), about: z.enum(letterSubjects), sheet: letterSheet }).readonly(),
  example: {
    to: 'patient',
    about: 'invitation',
    sheet: {
      language: 'en-GB',
      version: 'letters-1',
      title: 'Your place for the drip',
      from: ['Thornbeck Day Unit'],
      to: ['Wilhelmina Arkwright-Poe', '1 Heron Street, Thornbeck'],
      dated: 'Wednesday 25 November 2026',
      about: '',
      blocks: [{ kind: 'paragraph', text: 'We have a place for you on Thursday 3 December 2026.' }],
      closing: ['Yours sincerely'],
      foot: 'Thornbeck Day Unit. letters-1',
      demo: true,
    },
  },
});
