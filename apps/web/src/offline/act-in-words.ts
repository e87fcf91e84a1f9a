/** What somebody wrote, in the words that the notes would have for it. */
import { type Fact, type KindName, entryText, isKindName } from '@twelvemonth/clinical';
import type { ActBody } from '@twelvemonth/exchange';

const lineInWords = ({ kind, body }: { readonly kind: KindName; readonly body?: unknown }): string =>
  isKindName(kind) ? entryText({ kind, body } as Fact) : kind;

export function actInWords(act: ActBody['act']): string {
  switch (act.name) {
    case 'record':
      return lineInWords(act.line);
    case 'record together':
      return act.lines.map(lineInWords).join('; ');
    case 'write advice call':
      return lineInWords({ kind: 'advice-call', body: act.body });
    case 'write unknown call':
      return lineInWords({ kind: 'unknown-call', body: act.body });
    case 'decide':
      return [`decision: ${act.decision}`, act.reasonCode, act.note, act.nextStep, act.nextOwner, act.nextBy]
        .filter((part) => part !== undefined)
        .join(', ');
    case 'finish infusion':
      return [`infusion finished, ${act.milliliters} mL`, act.stoppedBecause]
        .filter((part) => part !== undefined)
        .join(', ');
    default:
      return act.name;
  }
}
