import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';

const looks = ['looks well', 'red', 'swollen', 'bruised'] as const;

export function RemovalStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [site, setSite] = useState<(typeof looks)[number]>();
  const [flush, setFlush] = useState<number>();
  const given = data.infusion?.finishedAt !== undefined;
  const send = (): void =>
    step.record(
      ...(flush === undefined
        ? []
        : [{ kind: 'flush' as const, body: { milliliters: flush, ranFreely: true, when: 'after' } }]),
      { kind: 'cannula-removed', body: { site } },
    );
  return (
    <StepForm
      title="Remove the cannula"
      step={step}
      act="It is out"
      missing={site === undefined ? 'How does the site look?' : undefined}
      send={send}
    >
      {given && (
        <NumberField
          label="Flushed after, ran freely"
          help="Leave empty if it was not flushed, or did not run freely."
          unit="mL saline"
          at="milliliters"
          value={flush}
          onChange={setFlush}
        />
      )}
      <ChoiceField
        label="The site"
        at="site"
        size="big"
        value={site}
        onChange={setSite}
        options={looks.map((value) => ({ value }))}
      />
    </StepForm>
  );
}
