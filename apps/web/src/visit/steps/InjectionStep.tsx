import type { VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { AtTheNeedle } from './AtTheNeedle.tsx';
import { Order } from './Order.tsx';
import { type Identifier, identifierOptions } from './identifiers.ts';

type Site = NonNullable<VisitView['injection']>['sites'][number];

/** What was prepared and checked goes in: who they are is asked once more, then where, and how many packs make the dose. */
export function InjectionStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [injectedInto, setInjectedInto] = useState<Site>();
  const [injections, setInjections] = useState<number>();
  const { injection } = data;
  if (injection === undefined) return <p>There is no go for an injection.</p>;
  return (
    <StepForm
      title="Give the injection"
      help="At the chair: ask who they are once more, then inject."
      step={step}
      act={step.time === undefined ? 'It is given now' : `It was given at ${step.time}`}
      missing={
        identifiers.length < 2
          ? 'Two identifiers first'
          : injectedInto === undefined
            ? 'Where was it injected?'
            : injections === undefined
              ? 'How many injections?'
              : undefined
      }
      send={() => step.act({ name: 'give injection', injectedInto, injections, identifiers })}
    >
      <Order data={data} />
      <AtTheNeedle lines={data.atTheNeedle} />
      <TicksField
        label="Asked and matched at the chair"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      <ChoiceField
        label="Injected into"
        help={`It goes ${injection.goes}.`}
        at="injectedInto"
        size="big"
        value={injectedInto}
        onChange={setInjectedInto}
        options={injection.sites.map((value) => ({ value }))}
      />
      <NumberField
        label="How many"
        unit="injections"
        help={`One dose is ${injection.packs} of ${injection.product}.`}
        at="injections"
        value={injections}
        onChange={setInjections}
      />
    </StepForm>
  );
}
