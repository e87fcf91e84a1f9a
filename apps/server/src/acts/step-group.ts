/**
 * Steps of a visit that one signature covers: arrive to go, to the start and while it runs, finish to leave. The second check
 * is always signed alone. What is no step of a visit is never signed by PIN or badge.
 */
import type { Act, KindName } from '@twelvemonth/clinical';

export type StepGroup = 'arrive to go' | 'start' | 'finish to leave' | 'second check';

const groupOfKind: Partial<Record<KindName, StepGroup>> = {
  arrived: 'arrive to go',
  weight: 'arrive to go',
  checklist: 'arrive to go',
  cannula: 'start',
  preparation: 'start',
  'site-check': 'start',
  reaction: 'start',
  observed: 'finish to leave',
  left: 'finish to leave',
};

export function stepGroupOf(act: Act): StepGroup | undefined {
  switch (act.name) {
    case 'decide':
      return 'arrive to go';
    case 'start infusion':
    case 'give injection':
    case 'pause infusion':
    case 'resume infusion':
      return 'start';
    case 'finish infusion':
      return 'finish to leave';
    case 'second check':
      // Signed on the day sheet: what is typed back in says whose signature stands there.
      return act.signedOnPaperBy === undefined ? act.name : undefined;
    case 'record':
      return groupOfLines([act.line]);
    case 'record together':
      return groupOfLines(act.lines);
    default:
      return undefined;
  }
}

type Line = { readonly kind: KindName; readonly body?: unknown };

/** One signature stands for one group: lines of another group, or of none, beside them are sent by themselves. */
export const isOfSeveralGroups = (act: Act): boolean => act.name === 'record together' && groupsOf(act.lines).size > 1;

/** The one group of all the lines; lines of several have none. */
function groupOfLines(lines: readonly Line[]): StepGroup | undefined {
  const [group, ...others] = groupsOf(lines);
  return others.length === 0 ? group : undefined;
}

type When = 'before' | 'during' | 'after';
const whenOf = (body: unknown): When | undefined => (body as { when?: When } | undefined)?.when;
const groupOfObservations: Readonly<Record<When, StepGroup>> = {
  before: 'arrive to go',
  during: 'start',
  after: 'finish to leave',
};

/** Taken out to be placed again, or at the end: a cannula beside it says. A flush and observations: before or after the medicine. */
function groupsOf(lines: readonly Line[]): ReadonlySet<StepGroup | undefined> {
  const isPlacedAgain = lines.some(({ kind }) => kind === 'cannula');
  return new Set(
    lines.map(({ kind, body }) => {
      const when = whenOf(body);
      switch (kind) {
        case 'cannula-removed':
          return isPlacedAgain ? 'start' : 'finish to leave';
        case 'flush':
          return when === 'before' ? 'start' : 'finish to leave';
        case 'observations':
          return when === undefined ? undefined : groupOfObservations[when];
        default:
          return groupOfKind[kind];
      }
    }),
  );
}
