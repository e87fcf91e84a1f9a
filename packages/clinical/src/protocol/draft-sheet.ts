/** A version somebody has drafted from another: read, with every change sourced and named after whoever decided it. */
import { type Unsourced, sayWhere, unsourcedChanges } from './changes.ts';
import { numberKeyNames, numberKeys } from './number-keys.ts';
import { type ProtocolSheet, protocolSchema } from './protocol.ts';
import type { Regimen } from './regimen.ts';

/** A field of the draft and what is wrong with it. */
export type DraftTrouble = Unsourced;

/** The sheet as drafted, numbers that may still be empty included; or everything that is wrong with it, by field. */
export function readDraft(
  from: ProtocolSheet,
  content: unknown,
): { readonly sheet: ProtocolSheet } | { readonly troubles: readonly DraftTrouble[] } {
  const read = protocolSchema.safeParse(content);
  const troubles = [
    ...strangeNumbers(content),
    ...(read.success
      ? []
      : read.error.issues.map(({ path, message }) => ({
          path: path.filter((part) => part !== 'value').join('.'),
          says: path.at(-1) === 'source' ? sayWhere : message,
        }))),
  ];
  return read.success && troubles.length === 0
    ? { sheet: { ...read.data, teachingOnly: from.teachingOnly } }
    : { troubles };
}

function strangeNumbers(content: unknown): DraftTrouble[] {
  const numbers = (content as { readonly numbers?: unknown } | null)?.numbers;
  return Object.keys(typeof numbers === 'object' && numbers !== null ? numbers : {})
    .filter((key) => !Object.hasOwn(numberKeys, key))
    .map((key) => ({ path: `numbers.${key}`, says: 'there is no such number in a protocol' }));
}

/** The sheet to be written: what was changed is a local decision with its author's name; refused where a change has no source. */
export function draftBy(
  name: string,
  from: ProtocolSheet,
  drafted: ProtocolSheet,
): { readonly sheet: ProtocolSheet } | { readonly troubles: readonly DraftTrouble[] } {
  const troubles = unsourcedChanges(from, drafted);
  if (troubles.length > 0) return { troubles };
  const numbers = { ...drafted.numbers };
  for (const key of numberKeyNames) {
    const [old, now] = [from.numbers[key], drafted.numbers[key]];
    if (now.value === null || (old.value === now.value && old.source === now.source)) {
      numbers[key] = { ...now, status: old.status };
      continue;
    }
    const accepted = old.value === null && now.value === old.suggestion && now.source === old.source;
    numbers[key] = {
      ...now,
      source: accepted ? `suggestion accepted by ${name}; ${now.source}` : `decided by ${name}: ${now.source}`,
      status: 'local decision',
    };
  }
  return {
    sheet: { ...drafted, numbers, regimens: drafted.regimens.map((regimen) => ownNumbersBy(name, from, regimen)) },
  };
}

/** A number of a regimen's own that was changed has the source of the regimen's change: one reason, said once. */
function ownNumbersBy(name: string, { regimens }: ProtocolSheet, regimen: Regimen): Regimen {
  const before = regimens.find(({ id }) => id === regimen.id)?.numbers ?? {};
  const numbers = { ...regimen.numbers };
  for (const key of numberKeyNames) {
    const own = numbers[key];
    if (own !== undefined && own.value !== before[key]?.value)
      numbers[key] = { ...own, source: `decided by ${name}: ${regimen.source}`, status: 'local decision' };
  }
  return { ...regimen, numbers };
}
