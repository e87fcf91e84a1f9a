/**
 * Steps of a visit that one signature covers: arrive to go, to the start and while it runs, finish to leave. The second check
 * is always signed alone. What is no step of a visit is never signed by PIN or badge.
 */
import type { Act, KindName } from '@twelvemonth/clinical';

export type StepGroup = 'arrive to go' | 'start' | 'finish to leave' | 'second check';

const groupOfKind: Partial<Record<KindName, StepGroup>> = {
  arrived: 'arrive to go',
  weight: 'arrive to go',
  observations: 'arrive to go',
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

/** Taken out to be placed again, or at the end: the lines beside it say. A flush belongs before or after the medicine. */
function groupOfLines(lines: readonly Line[]): StepGroup | undefined {
  if (lines.some(({ kind }) => kind === 'cannula')) return 'start';
  const [first] = lines.map(({ kind, body }) =>
    kind === 'cannula-removed'
      ? 'finish to leave'
      : kind === 'flush'
        ? (body as { when?: unknown } | undefined)?.when === 'before'
          ? 'start'
          : 'finish to leave'
        : groupOfKind[kind],
  );
  return first;
}
