import { z } from 'zod';
import { gradedTerms, gradesOf } from '../formulas/grade-texts.ts';
import { ctcaeVersions } from '../formulas/reaction-grade.ts';
import { careRoles } from '../ledger/role.ts';
import { entryKind } from './entry-kind.ts';
import { textField } from './fields.ts';

export const reactionActions = [
  'infusion stopped',
  'help called',
  'laid flat, legs raised',
  'oxygen',
  'adrenaline',
  'fluid into a vein',
  'antihistamine',
  'paracetamol',
  'prescriber asked',
] as const;
export const reactionOutcomes = [
  'settled',
  'settling, watched on',
  'a prescriber took over',
  'sent to the emergency department',
  'admitted',
] as const;
export const infusionThen = ['had not started', 'went on', 'was paused', 'was stopped for good', 'had ended'] as const;

/** What the person felt after a dose, or at the chair: then with its onset (the entry's own time), grade, actions and outcome. */
export const reaction = entryKind({
  name: 'reaction',
  of: 'patient',
  shape: 1,
  label: 'reaction',
  help: "What, how long, how bad in the person's own words. A severe one holds every dose until a prescriber has decided about it.",
  writes: careRoles,
  body: z
    .object({
      what: textField,
      days: z.number().int().min(0).max(365).optional(),
      severity: z.enum(['mild', 'moderate', 'severe']),
      /** CTCAE: a grade means nothing without its term and version. */
      term: z.enum(gradedTerms).optional(),
      grade: z.number().int().min(1).max(4).optional(),
      gradeVersion: z.enum(ctcaeVersions).optional(),
      infusion: z.enum(infusionThen).optional(),
      actions: z.array(z.enum(reactionActions)).readonly().optional(),
      outcome: z.enum(reactionOutcomes).optional(),
    })
    .refine(
      ({ term, grade }) =>
        term === undefined || grade === undefined || grade >= Math.min(...gradesOf(term).map((one) => one.grade)),
      { path: ['grade'], error: 'the criteria have no such grade of this: it begins higher' },
    )
    .readonly(),
  example: { what: 'flu-like, aching', days: 2, severity: 'mild' },
});
