/** The numbers of a rule sheet by what they decide, in the order a screen shows them. Every number is in exactly one group. */
import { type NumberKey, numberKeyNames } from './number-keys.ts';

const beginnings: readonly (readonly [title: string, begins: RegExp])[] = [
  ['Kidneys and weight', /^(?:clearance|nearLimit|creatinine|baseline|adjustedWeight|weight)/],
  ['How long blood tests count', /^(?:bloods|result|wellDays|surgerySample)/],
  ['Calcium', /^calcium/],
  ['Vitamin D', /^(?:vitaminD|loading|maintenance)/],
  ['Asked and waited for', /^(?:adult|hip|exception|pregnancy|otherProduct|consent|teeth|dental)/],
  ['The course and its review', /^(?:maxConsecutive|break|continue|failure|leastChange|marker|heightLoss|steroid)/],
  ['Denosumab', /^(?:denosumab|replacement)/],
  ['The day of the dose', /^(?:running|site|interruption|observe|putOff|cannula)/],
  ['Recall', /^(?:recall|overdue)/],
  ['Looked at again', /^(?:lookAgain|askAgain|aftercare|fever|letter)/],
];
const OTHER = 'Other numbers';

const groupOf = (key: NumberKey): string => beginnings.find(([, begins]) => begins.test(key))?.[0] ?? OTHER;

export type NumberGroup = { readonly title: string; readonly keys: readonly NumberKey[] };

export const numberGroups: readonly NumberGroup[] = [...beginnings.map(([title]) => title), OTHER]
  .map((title) => ({ title, keys: numberKeyNames.filter((key) => groupOf(key) === title) }))
  .filter(({ keys }) => keys.length > 0);
