/** What a rule sheet chooses between, beside its numbers: each policy with its answers, as the sheet's own shape has them. */
import { z } from 'zod';
import { type ProtocolSheet, protocolSchema } from './protocol.ts';

export type PolicyValue = string | boolean;
export type Policy = {
  /** The field of the sheet. */
  readonly key: keyof ProtocolSheet;
  readonly title: string;
  readonly options: readonly { readonly value: PolicyValue; readonly says: string }[];
};

const titles: Readonly<Record<string, string>> = {
  resultDaysCounted: 'days until a result may be used are',
  vitaminDPolicy: 'where vitamin D was never measured',
  hipRepairNeedsLoading: 'after a hip repair, vitamin D is loaded before the first dose',
  dentalCheck: 'a dental check is',
  pharmacyVerification: 'a pharmacist verifies the prescription',
  homeDoseByOne: 'one practitioner gives a dose at home alone',
};

/** Fields that are chosen but decide nothing about a dose. */
const noPolicy: readonly (keyof ProtocolSheet)[] = ['teachingOnly'];

/** "hipRepairNeedsLoading" as "hip repair needs loading": for a policy nobody has given a title. */
const inWords = (key: string): string => key.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

export const policies: readonly Policy[] = (
  Object.entries(protocolSchema.unwrap().shape) as [keyof ProtocolSheet, z.ZodType][]
).flatMap(([key, field]): Policy[] => {
  const options = noPolicy.includes(key) ? undefined : optionsOf(field);
  return options === undefined ? [] : [{ key, title: titles[key] ?? inWords(key), options }];
});

function optionsOf(field: z.ZodType): Policy['options'] | undefined {
  const inside = field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : field;
  if (inside instanceof z.ZodEnum)
    return inside.options.map((value) => ({ value: String(value), says: String(value) }));
  if (!(inside instanceof z.ZodBoolean)) return undefined;
  return [
    { value: true, says: 'yes' },
    { value: false, says: 'no' },
  ];
}

export const policyValue = (sheet: ProtocolSheet, { key }: Policy): PolicyValue => sheet[key] as PolicyValue;
export const policySays = ({ options }: Policy, value: PolicyValue): string =>
  options.find((option) => option.value === value)?.says ?? String(value);
