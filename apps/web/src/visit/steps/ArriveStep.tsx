import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { useUnit } from '../../frame/unit.ts';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { type Identifier, identifierOptions } from './identifiers.ts';

export function ArriveStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const { unit } = useUnit();
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [chair, setChair] = useState<string>();
  if (data.session === undefined) {
    return (
      <>
        <h2>Not on today's list</h2>
        <p>
          <Link to="/people/$patient/book" params={{ patient: data.patient }} className="finger">
            Book a place on today's session first
          </Link>
          , then record the arrival.
        </p>
      </>
    );
  }
  const inChair = (value: string | undefined): string =>
    data.seated
      .filter((other) => String(other.chair) === value)
      .map(({ name }) => name)
      .join(' and ');
  const chairs = Array.from({ length: unit?.chairs ?? 0 }, (_, index) => {
    const value = String(index + 1);
    const sits = inChair(value);
    return { value, says: sits === '' ? value : `${value} (${sits})` };
  });
  const sits = inChair(chair);
  return (
    <StepForm
      title="Arrived"
      help="Ask, do not read out: “What is your full name? When were you born?” Tick what they said and what matched."
      step={step}
      act="They are here"
      missing={identifiers.length < 2 ? 'Two identifiers first' : undefined}
      send={() =>
        step.record({
          kind: 'arrived',
          body: { session: data.session, identifiers, ...(chair === undefined ? {} : { chair: Number(chair) }) },
        })
      }
    >
      {data.lastTime.length > 0 && (
        <Note>
          <strong>Last time:</strong> {data.lastTime.join('; ')}
        </Note>
      )}
      <TicksField
        label="Asked and matched"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      <ChoiceField label="Chair" at="chair" size="big" value={chair} onChange={setChair} options={chairs} optional />
      {sits !== '' && (
        <Note tone="caution" speaks="politely">
          In chair {chair} by the notes: {sits}. Look who sits there, and whose notes these are. Whoever has moved:
          correct the chair in their notes.
        </Note>
      )}
    </StepForm>
  );
}
