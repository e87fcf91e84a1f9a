/** Refusals of single fields in words for the summary: which field, and what is wrong with it. */
import { type KindName, kindNamed, kindNames } from '@twelvemonth/clinical';
import { fieldWords } from '../kind-form/field-words.ts';
import type { Refusal } from '../server/server-problem.ts';
import { decisionLabels } from '../words/decision-labels.ts';
import { dripLabels } from '../words/drip-labels.ts';

const spaced = (key: string): string => key.replaceAll(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

const labels: Readonly<Record<string, string>> = { ...decisionLabels, ...dripLabels };

/** The label of the field where its form has one of its own, else the last named part of a path: "line.body.quantity.unit" is about the unit. */
function fieldName(field: string): string {
  const named = field.split('.').filter((part) => !/^\d+$/.test(part));
  const last = named.at(-1) ?? '';
  const label = named.length === 1 ? labels[last] : undefined;
  return label === undefined ? spaced(last) : label.replace(/\?$/, '').toLowerCase();
}

/** Machine words of the schema, said as a person would. */
function saysPlainly(says: string): string {
  return says
    .replace(/Invalid option: expected one of .*$/s, 'choose one')
    .replace(/Invalid input: expected (?:string|number|boolean|array|object), received undefined/, 'is missing')
    .replace(/Too small: expected array to have >=1 items/, 'at least one')
    .replace(/Too small: expected number to be >=(-?\d+)/, 'at least $1')
    .replace(/Too big: expected number to be <=(-?\d+)/, 'at most $1')
    .replace(/Invalid number: must be a multiple of (\d+)/, 'in steps of $1')
    .replace(/Invalid input: expected int, received number/, 'a whole number')
    .replace(/a date that exists, written YYYY-MM-DD/, 'a date that exists')
    .replace(/a birth date as YYYY-MM-DD.*/, 'a birth date: day, month, year, or only the year')
    .replace(/Invalid discriminator value.*$|Invalid input$/, 'choose one');
}

/** The kind whose form was refused: its label stands before what is wrong with one of its fields. */
const kindOf = ({ name, says }: Refusal): KindName | undefined =>
  name === 'field-wrong' ? kindNames.find((kind) => says.startsWith(`${kindNamed(kind).label}: `)) : undefined;

/** Beside the field, where its label stands already. */
export const atField = (refusal: Refusal): string => {
  const kind = kindOf(refusal);
  return saysPlainly(kind === undefined ? refusal.says : refusal.says.slice(`${kindNamed(kind).label}: `.length));
};

/** What to do instead; the help of a whole form is none. */
export const remedyOf = (refusal: Refusal): string | undefined =>
  kindOf(refusal) === undefined ? refusal.remedy : undefined;

export const inSummary = (refusal: Refusal): string => {
  const { name, says, field } = refusal;
  const kind = kindOf(refusal);
  const [, ofKind] = /(?:^|\.)body\.(\w+)/.exec(field ?? '') ?? [];
  if (kind !== undefined && ofKind !== undefined) return `${fieldWords(kind, ofKind).label}: ${atField(refusal)}`;
  const plain = saysPlainly(says);
  const about = name === 'field-wrong' && field !== undefined ? fieldName(field) : '';
  return about === '' || plain.toLowerCase().includes(about) ? plain : `${about}: ${plain}`;
};
