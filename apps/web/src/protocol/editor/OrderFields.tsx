import { requirements } from '@twelvemonth/clinical';
import { TextField } from '../../fields/TextField.tsx';
import { Button } from '../../paper/Button.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { ReasonField } from './ReasonField.tsx';
import { type Draft, changedPaths, movedUp } from './draft.ts';

/** The order in which trouble is named, and the cautions that stand beside every verdict. */
export function OrderFields({ draft }: { draft: Draft }) {
  const { sheet, set } = draft;
  const changed = changedPaths(draft);
  return (
    <>
      <FoldedPart part={partOf.gravity}>
        <p className="quiet">In this order trouble is named. It decides no verdict.</p>
        <ol>
          {sheet.gravity.map((id, index) => (
            <li key={id}>
              {requirements[id].title}{' '}
              {index > 0 && (
                <Button size="slim" onClick={() => set({ gravity: movedUp(sheet.gravity, index) })}>
                  earlier<span className="unseen">: {requirements[id].title}</span>
                </Button>
              )}
            </li>
          ))}
        </ol>
        <ReasonField draft={draft} path="gravity" changed={changed.has('gravity')} />
      </FoldedPart>
      <FoldedPart part={partOf.cautions}>
        <TextField
          label="Beside every verdict, one a line"
          at="cautions"
          lines="several"
          value={sheet.cautions.join('\n')}
          onChange={(text) => set({ cautions: text.split('\n') })}
        />
        <ReasonField draft={draft} path="cautions" changed={changed.has('cautions')} />
      </FoldedPart>
    </>
  );
}
