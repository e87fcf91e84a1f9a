import { policies, policyValue } from '@twelvemonth/clinical';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { sentence } from '../../words/texts.ts';
import { ReasonField } from './ReasonField.tsx';
import { FoldedPart } from './FoldedPart.tsx';
import { partOf } from './parts.ts';
import { type Draft, changedPaths } from './draft.ts';

/** What the sheet chooses between, beside its numbers. */
export function PolicyFields({ draft }: { draft: Draft }) {
  const changed = changedPaths(draft);
  return (
    <FoldedPart part={partOf.policies}>
      {policies.map((policy) => (
        <div key={policy.key}>
          <ChoiceField
            label={sentence(policy.title)}
            at={policy.key}
            value={String(policyValue(draft.sheet, policy))}
            onChange={(text) => {
              const option = policy.options.find(({ value }) => String(value) === text);
              if (option !== undefined) draft.set({ [policy.key]: option.value });
            }}
            options={policy.options.map(({ value, says }) => ({ value: String(value), says }))}
          />
          <ReasonField draft={draft} path={policy.key} changed={changed.has(policy.key)} />
        </div>
      ))}
    </FoldedPart>
  );
}
