import { packProducts, typedBecause } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { rateInWords } from '../rate-words.ts';
import { useStep } from '../use-step.ts';
import { ExpiryField } from './ExpiryField.tsx';
import { Order } from './Order.tsx';
import { ScanPack } from './ScanPack.tsx';
import { type Identifier, identifierOptions } from './identifiers.ts';
import { type ScannedPack, nothingTyped, packToRecord } from './pack-in-hand.ts';

/** The preparer reads the pack, alone. What is read here is not shown to the checker before they have read it themselves. */
export function PreparationStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [scanned, setScanned] = useState<ScannedPack>();
  const [typed, setTyped] = useState(nothingTyped);
  const [byHand, setByHand] = useState(!data.packsListed);
  const [minutes, setMinutes] = useState<number>();
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [clear, setClear] = useState<'yes' | 'no'>();
  const pack = packToRecord(byHand ? undefined : scanned, typed, data.packsListed);
  const { injection } = data;
  const rest = (injection !== undefined || minutes !== undefined) && identifiers.length >= 2 && clear !== undefined;
  const missing =
    pack === undefined
      ? byHand
        ? 'Read every line first'
        : 'Scan the pack first'
      : rest
        ? undefined
        : 'Read every line first';
  const asks = {
    batch: byHand || (scanned !== undefined && scanned.batch === undefined),
    expiry: byHand || (scanned !== undefined && scanned.expiresOn === undefined),
  };
  return (
    <StepForm
      title="Preparation"
      help={`Read each from the pack itself, not from memory. The scan is a reading${injection?.checkedByAnother === false ? '.' : '; another person makes the check.'}`}
      step={step}
      act="Prepared"
      missing={missing}
      send={() =>
        step.record({
          kind: 'preparation',
          body: {
            ...pack,
            ...(injection === undefined ? { minutes } : {}),
            identifiers,
            clearAndColourless: clear === 'yes',
          },
        })
      }
    >
      <Order data={data} />
      {!byHand && <ScanPack patient={data.patient} scanned={scanned} take={setScanned} />}
      {byHand && data.packsListed && (
        <ChoiceField
          label="Why it is typed and not scanned"
          help="It stands in the record as typed."
          at="typedBecause"
          size="big"
          value={typed.because}
          onChange={(because) => setTyped({ ...typed, because })}
          options={typedBecause.map((value) => ({ value }))}
        />
      )}
      {byHand && !data.packsListed && (
        <Note>
          Packs cannot be scanned here: the pharmacist has not listed the packs of this unit yet. The record says that
          the pack was typed.
        </Note>
      )}
      {byHand && (
        <ChoiceField
          label="The pack says"
          at="product"
          size="big"
          value={typed.product}
          onChange={(product) => setTyped({ ...typed, product })}
          options={packProducts.map((value) => ({ value }))}
          openUpTo={packProducts.length}
        />
      )}
      {asks.batch && (
        <TextField
          label="Batch"
          at="batch"
          short
          value={typed.batch}
          onChange={(batch) => setTyped({ ...typed, batch })}
        />
      )}
      {asks.expiry && (
        <ExpiryField
          label="Expiry"
          at="expiresOn"
          value={typed.expiresOn}
          onChange={(expiresOn) => setTyped({ ...typed, expiresOn })}
        />
      )}
      {data.packsListed && (
        <p>
          <Button size="big" onClick={() => setByHand(!byHand)}>
            {byHand ? 'Scan it after all' : 'It cannot be scanned: type it'}
          </Button>
        </p>
      )}
      {injection === undefined ? (
        <NumberField
          label="To run in"
          help={
            minutes === undefined || minutes <= 0
              ? undefined
              : `${rateInWords(data.bagMilliliters, minutes)}. Set it before the check.`
          }
          unit="minutes"
          at="minutes"
          value={minutes}
          onChange={setMinutes}
        />
      ) : (
        injection.packs > 1 && <Note>One dose is {injection.packs} of these: read each of them.</Note>
      )}
      <TicksField
        label="Identifiers compared with the order"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      <ChoiceField
        label={injection === undefined ? 'Clear and colourless?' : 'Clear, and of the colour its product text says?'}
        at="clearAndColourless"
        size="big"
        value={clear}
        onChange={setClear}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
    </StepForm>
  );
}
