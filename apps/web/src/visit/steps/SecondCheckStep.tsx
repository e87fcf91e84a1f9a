import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { me } from '../../server/queries.ts';
import type { Signature } from '../../server/use-act.ts';
import { SignatureFields } from '../../signing/SignatureFields.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { useFromPaper } from '../from-paper.ts';
import { ChecksDiffer } from './ChecksDiffer.tsx';
import { Order } from './Order.tsx';
import { readExpiry } from '../read-expiry.ts';
import { useDateOrder } from '../../words/american.ts';
import { type Identifier, identifierOptions } from './identifiers.ts';
import { ReadOffPack } from './ReadOffPack.tsx';
import { nothingRead, readPack } from './read-pack.ts';

/**
 * Another person's own reading. Nothing the preparer read stands anywhere on this screen, whoever is signed in; the checker
 * signs with a name and password of their own, here, for this one act.
 */
export function SecondCheckStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [pack, setPack] = useState(nothingRead);
  const [expiry, setExpiry] = useState('');
  const [runsBy, setRunsBy] = useState<'pump' | 'drops'>();
  const [pumpMillilitersPerHour, setRate] = useState<number>();
  const [minutes, setMinutes] = useState<number>();
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [signature, setSignature] = useState<Signature>();
  const paper = useFromPaper();
  const [signedOnPaperBy, setSignedOnPaperBy] = useState<string>();
  const { preparation } = data;
  const reader = useQuery(me).data;
  const expiryMonth = readExpiry(expiry, useDateOrder())?.slice(0, 7);
  const packRead = readPack(pack);
  const whole =
    packRead !== undefined &&
    expiryMonth !== undefined &&
    (data.injection !== undefined ||
      (runsBy === 'pump' ? pumpMillilitersPerHour !== undefined : runsBy === 'drops' && minutes !== undefined)) &&
    identifiers.length >= 2;
  if (preparation === undefined) return <p>Nothing is prepared yet.</p>;
  if (data.check !== undefined && !data.check.agrees) return <ChecksDiffer data={data} done={done} />;
  return (
    <StepForm
      title="Independent second check"
      help={
        <>
          For someone other than <strong>{preparation.by}</strong>, who prepared it
          {data.mayCheck === undefined
            ? ''
            : data.mayCheck.length === 0
              ? '; nobody whom the opening names may'
              : `: ${data.mayCheck.join(', ')}`}
          . Read pack, order and patient yourself. You are not shown what was read before; the two are compared when you
          have signed.
        </>
      }
      step={step}
      act={paper === undefined ? 'Sign my reading' : 'Record what stands on the sheet'}
      missing={
        !whole
          ? 'Read every line first'
          : paper !== undefined
            ? signedOnPaperBy === undefined
              ? 'Whose signature is it?'
              : undefined
            : signature === undefined
              ? 'Sign with your own name'
              : undefined
      }
      send={() =>
        step.act(
          {
            name: 'second check',
            preparation: preparation.entry,
            ...(paper === undefined ? {} : { signedOnPaperBy }),
            reading: {
              ...packRead,
              expiryMonth,
              identifiers,
              ...(data.injection !== undefined ? {} : runsBy === 'pump' ? { pumpMillilitersPerHour } : { minutes }),
            },
          },
          paper === undefined ? signature : undefined,
        )
      }
    >
      <Order data={data} />
      <ReadOffPack value={pack} onChange={setPack} />
      <TextField
        label="Expiry, month and year"
        help="As printed on the pack, in figures: month, then year."
        at="expiryMonth"
        short
        value={expiry}
        onChange={setExpiry}
      />
      {data.injection === undefined && (
        <ChoiceField
          label="It will run by"
          at="runsBy"
          size="big"
          value={runsBy}
          onChange={setRunsBy}
          options={[
            { value: 'pump', says: 'a pump' },
            { value: 'drops', says: 'counted drops, no pump' },
          ]}
        />
      )}
      {runsBy === 'pump' && (
        <NumberField
          label="The pump shows"
          help="Read it off the pump's own display."
          unit="mL/h"
          at="pumpMillilitersPerHour"
          value={pumpMillilitersPerHour}
          onChange={setRate}
        />
      )}
      {runsBy === 'drops' && (
        <NumberField label="To run in" unit="minutes" at="minutes" value={minutes} onChange={setMinutes} />
      )}
      <TicksField
        label="Identifiers you compared yourself"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      {paper === undefined ? (
        <>
          <h3>Your signature</h3>
          {/* At their own screen they type their password only: 40 seconds are for reading. */}
          <SignatureFields
            patient={data.patient}
            username={reader?.staff === preparation.byStaff ? undefined : reader?.username}
            onChange={setSignature}
          />
        </>
      ) : (
        <ChoiceField
          label="Whose signature stands on the sheet"
          help="It is written as a signature on paper; the nurse in charge is asked to see the sheet."
          at="signedOnPaperBy"
          size="big"
          value={signedOnPaperBy}
          onChange={setSignedOnPaperBy}
          options={paper.checkers
            .filter(({ staff }) => staff !== preparation.byStaff)
            .map(({ staff, name }) => ({ value: staff, says: name }))}
        />
      )}
    </StepForm>
  );
}
