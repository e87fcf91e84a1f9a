/** The parts of a rule sheet as the editor folds them: what belongs to each, how much of it is changed, to be decided or unsourced. */
import { emptyNumbers, numberGroups, policies, unsourcedChanges } from '@twelvemonth/clinical';
import { counted } from '../../words/texts.ts';
import { type Draft, changedPaths } from './draft.ts';

export type Part = {
  readonly title: string;
  /** "13 numbers"; undefined where nothing is counted. */
  readonly holds?: string;
  readonly owns: (path: string) => boolean;
};

const listed = (name: string, order?: string) => (path: string) =>
  path === name || path.startsWith(`${name}.`) || path === order;

const policyKeys: ReadonlySet<string> = new Set(policies.map(({ key }) => key));

export const partOf = {
  policies: { title: 'Policies', owns: (path) => policyKeys.has(path) },
  regimens: { title: 'Regimens', owns: listed('regimens', 'regimenOrder') },
  switches: { title: 'From one medicine to another', owns: listed('switches') },
  carryOn: { title: 'What speaks for carrying on after the planned doses', owns: listed('carryOn') },
  paracetamol: { title: 'Paracetamol by mouth after the dose', owns: listed('paracetamol') },
  dayQuestions: { title: 'Questions of the day', owns: listed('dayQuestions') },
  gravity: { title: 'Order of gravity', owns: listed('gravity') },
  cautions: { title: 'Cautions', owns: listed('cautions') },
} as const satisfies Readonly<Record<string, Part>>;

export const numberParts: readonly Part[] = numberGroups.map(({ title, keys }) => {
  const paths = new Set(keys.map((key) => `numbers.${key}`));
  return { title, holds: counted(keys.length, 'number'), owns: (path) => paths.has(path) };
});

export const parts: readonly Part[] = [...numberParts, ...Object.values(partOf)];

export type Tally = { readonly changed: number; readonly undecided: number; readonly unsourced: number };

/** Where a change or a refusal is, without what is wrong with it: "reasons.gravity" and "numbers.x.source" are about gravity and x. */
const placeOf = (path: string): string => path.replace(/^reasons\./, '').replace(/\.(?:source|value|reason)$/, '');

export const isAbout = ({ owns }: Part, path: string): boolean => {
  const place = placeOf(path);
  return owns(place) || owns(place.split('.').slice(0, 2).join('.'));
};

export function talliesOf(draft: Draft): ReadonlyMap<Part, Tally> {
  const changed = [...changedPaths(draft)];
  const unsourced = unsourcedChanges(draft.base, draft.sheet);
  const undecided = emptyNumbers(draft.sheet).map(({ key }) => `numbers.${key}`);
  return new Map(
    parts.map((part) => [
      part,
      {
        changed: changed.filter((path) => isAbout(part, path)).length,
        undecided: undecided.filter((path) => isAbout(part, path)).length,
        unsourced: unsourced.filter(({ path }) => isAbout(part, path)).length,
      },
    ]),
  );
}
