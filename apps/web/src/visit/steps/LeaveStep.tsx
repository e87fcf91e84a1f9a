import { Link } from '@tanstack/react-router';
import { waysToLeave } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { dayInWords } from '../../words/dates.ts';
import { MeasuredSoFar } from '../MeasuredSoFar.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';

export function LeaveStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [card, setCard] = useState<'yes' | 'no'>();
  const [leaves, setLeaves] = useState<(typeof waysToLeave)[number]>();
  const [note, setNote] = useState('');
  return (
    <StepForm
      title="See them off"
      help={<Next data={data} />}
      step={step}
      act="They have left"
      missing={
        card === undefined
          ? 'Do they hold the card?'
          : leaves === undefined
            ? 'Fit to go?'
            : leaves !== 'fit to go' && note.trim() === ''
              ? 'By whom, or what was said?'
              : undefined
      }
      send={() =>
        step.record({
          kind: 'left',
          body: { cardGiven: card === 'yes', leaves, ...(note.trim() === '' ? {} : { note: note.trim() }) },
        })
      }
    >
      <p>
        <Link to="/people/$patient/pack" params={{ patient: data.patient }} className="finger">
          Print the sheets they take home
        </Link>{' '}
        <span className="quiet">afterwards and next year, with this dose in them</span>
      </p>
      {data.observations.some(({ when }) => when === 'after') && <MeasuredSoFar data={data} />}
      <ChoiceField
        label="Do they hold the card that says whom to call?"
        at="cardGiven"
        size="big"
        value={card}
        onChange={setCard}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
      <ChoiceField
        label="Steady, drinking, somebody with them if they need it: how do they go?"
        help="A transport that waits is no reason to go unfit: let it wait, or move it."
        at="leaves"
        size="big"
        value={leaves}
        onChange={setLeaves}
        options={waysToLeave.map((value) => ({ value }))}
      />
      <TextField label="Who takes them home, anything promised" at="note" value={note} onChange={setNote} />
    </StepForm>
  );
}

/** What they are told at the door, with its days. */
function Next({ data: { nextDue, seeOff } }: Pick<StepProps, 'data'>) {
  const { batch, ringFrom, bloods } = seeOff ?? {};
  return (
    <>
      {batch !== undefined && <p>Given from batch {batch}.</p>}
      {nextDue !== undefined && <p>The next dose is due on {dayInWords(nextDue)}.</p>}
      {ringFrom !== undefined && (
        <p>
          We ring them from {dayInWords(ringFrom)}
          {bloods !== undefined && `; bloods from ${dayInWords(bloods.from)} to ${dayInWords(bloods.until)}`}. If nobody
          has rung by the day on their card, they ring us.
        </p>
      )}
    </>
  );
}
