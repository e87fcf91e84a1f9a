/**
 * When one bone medicine may follow another, and by when it must. From denosumab the sheet's numbers say so, whatever
 * follows; a tablet or another medicine has to be stopped, and then nothing is waited for. The rest stands in these rows.
 */
import { z } from 'zod';
import { regimenMedicines } from './medicines.ts';
import { sourceStatus } from './sourced-number.ts';
import { textField } from '../kinds/fields.ts';

/** Medicines whose end a row is about. After denosumab the sheet's numbers say when, whatever follows. */
export const switchMedicines = [
  'zoledronic acid 5 mg',
  'ibandronate 3 mg',
  'pamidronate',
  'romosozumab 210 mg',
  'teriparatide',
] as const;

export const switchRuleSchema = z
  .object({
    from: z.enum(switchMedicines),
    to: z.array(z.enum(regimenMedicines)).min(1).readonly(),
    /** Months after the last dose, or after the end of what is taken daily, from which the other may be given. */
    earliestMonths: z.number().int().min(0).max(36),
    /** Months by which it must be given; none: no hurry. */
    latestMonths: z.number().int().min(0).max(36).optional(),
    source: textField,
    status: sourceStatus,
  })
  .readonly()
  .refine(
    ({ earliestMonths, latestMonths }) => (latestMonths ?? earliestMonths) >= earliestMonths,
    'latest before earliest',
  );
export type SwitchRule = z.infer<typeof switchRuleSchema>;
