/**
 * A regimen as the rule sheet holds it: the medicine, how often and how many doses, how it is given, what of the sheet is
 * otherwise for it, and what must follow it. A prescription names one; without one the sheet's first is meant.
 */
import { z } from 'zod';
import { shortText, textField } from '../kinds/fields.ts';
import { dayQuestionSchema } from './day-question.ts';
import { isGivenBelowAnyClearance, regimenMedicines } from './medicines.ts';
import { numberKeyNames } from './number-keys.ts';
import { requirementIds } from './requirement-ids.ts';
import { decidedNumber, sourceStatus } from './sourced-number.ts';

/** Requirements that no regimen may leave out: nobody is treated unidentified, unasked, twice over or without an order. */
const alwaysAsked = [
  'identity',
  'illness',
  'symptoms',
  'calcium',
  'interval',
  'other-bone-medicines',
  'course',
  'prescription',
  'consent',
] as const satisfies readonly (typeof requirementIds)[number][];

export const regimenSchema = z
  .object({
    id: shortText,
    title: shortText,
    medicine: z.enum(regimenMedicines),
    /** In a chair as an infusion, as an injection, or injected at home by the person, every day. */
    given: z.enum(['infusion', 'injection', 'daily at home']).default('infusion'),
    /** Whether another person checks an injection before it is given; absent: another person. The drip is always checked. */
    secondCheck: z.enum(['another person', 'not asked for']).optional(),
    /** Months from one dose to the next; of what is taken daily, from one start to the next. */
    intervalMonths: z.number().int().min(1).max(36),
    /** Doses before a review; of what is taken daily, starts. */
    plannedDoses: z.number().int().min(1).max(24),
    /** How long a treatment taken daily lasts. */
    lastsMonths: z.number().int().min(1).max(60).optional(),
    /** Whether the next dose is called for. A single treatment has none: it ends, and only a relapse begins another. */
    recall: z.enum(['next dose', 'none']).default('next dose'),
    /** Its doses are no part of another regimen's course: a single treatment of another disease. */
    countedApart: z.boolean().default(false),
    /** Another bone medicine must follow the last dose: a promise with a date. */
    followOn: z
      .object({
        /** Months from the last planned dose, or from the end of what is taken daily, to the day the next is due. */
        dueMonths: z.number().int().min(0).max(12),
        /** Months from there by which it must be reached. */
        reachMonths: z.number().int().min(0).max(12),
        /** Months before it is due from which it is on the worklist. */
        listMonths: z.number().int().min(0).max(12),
        /** Months before it is due from which someone without a booked replacement is first in line. */
        firstInLineMonths: z.number().int().min(0).max(12),
        source: textField,
        status: sourceStatus,
      })
      .readonly()
      .optional(),
    /** Requirements that are not asked for this medicine. */
    leavesOut: z
      .array(z.enum(requirementIds))
      .refine((ids) => !ids.some((id) => alwaysAsked.some((one) => one === id)), 'one of them is asked of every dose')
      .readonly()
      .default([]),
    /** Below the clearance floor it is not given; or, where no product text refuses it there, a prescriber decides. */
    belowClearanceFloor: z.enum(['not given', 'a prescriber decides']).default('not given'),
    /** Numbers of the sheet that are otherwise for this medicine. */
    numbers: z.partialRecord(z.enum(numberKeyNames), decidedNumber).readonly().default({}),
    /** Asked on the day beside the sheet's own questions. */
    dayQuestions: z.array(dayQuestionSchema).readonly().default([]),
    cautions: z.array(textField).readonly().default([]),
    source: textField,
    status: sourceStatus.default('local decision'),
  })
  .readonly()
  .refine(
    ({ given, lastsMonths }) => (given === 'daily at home') === (lastsMonths !== undefined),
    'what is taken daily says how long it lasts, and nothing else does',
  )
  .refine(
    ({ given, secondCheck }) => given === 'injection' || secondCheck !== 'not asked for',
    'only an injection may go without another person: the drip never does',
  )
  .refine(
    ({ medicine, belowClearanceFloor }) => belowClearanceFloor === 'not given' || isGivenBelowAnyClearance(medicine),
    'its product text refuses it below a clearance: nobody decides otherwise',
  )
  .refine(
    ({ medicine, leavesOut }) => !isGivenBelowAnyClearance(medicine) || !leavesOut.includes('kidney-function'),
    'denosumab and romosozumab ask the kidneys: low calcium threatens where they fail',
  );
export type Regimen = z.infer<typeof regimenSchema>;

/** A bisphosphonate into a vein, refused below the clearance floor: near the floor the kidneys are looked at afterwards. */
export const asksCreatinineAfter = ({ given, belowClearanceFloor, leavesOut }: Regimen): boolean =>
  given !== 'daily at home' && belowClearanceFloor === 'not given' && !leavesOut.includes('kidney-function');
