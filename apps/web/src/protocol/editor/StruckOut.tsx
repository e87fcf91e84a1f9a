import { Button } from '../../paper/Button.tsx';
import { ReasonField } from './ReasonField.tsx';
import type { Draft } from './draft.ts';

/** What the sheet it begins from has and the draft has not: why it went, and the way back. */
export function StruckOut({
  draft,
  list,
  items,
  putBack,
}: {
  draft: Draft;
  list: 'regimens' | 'dayQuestions' | 'carryOn' | 'paracetamol';
  items: readonly { readonly id: string; readonly says: string }[];
  putBack?: (id: string) => void;
}) {
  const kept: readonly { readonly id: string }[] = draft.sheet[list];
  return items
    .filter(({ id }) => !kept.some((one) => one.id === id))
    .map(({ id, says }) => (
      <div key={id}>
        <p>
          Struck out: <s>{says}</s>{' '}
          {putBack !== undefined && (
            <Button size="slim" onClick={() => putBack(id)}>
              put back<span className="unseen">: {says}</span>
            </Button>
          )}
        </p>
        <ReasonField draft={draft} path={`${list}.${id}`} changed />
      </div>
    ));
}
