import { lineLookedAlong, lineNotOnPaper } from '@twelvemonth/clinical';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { TicksField } from '../../fields/TicksField.tsx';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useFromPaper } from '../from-paper.ts';
import { sentence } from '../../words/texts.ts';
import { useTick } from '../server-now.ts';
import { useStep } from '../use-step.ts';
import { rateInWords } from '../rate-words.ts';
import { AlongTheLineTick } from './AlongTheLineTick.tsx';
import { Order } from './Order.tsx';
import { type Identifier, identifierOptions } from './identifiers.ts';
import { ReadOffPack } from './ReadOffPack.tsx';
import { nothingRead, readPack } from './read-pack.ts';
import { Running } from './Running.tsx';

export function InfusionStep({ data, done }: StepProps) {
  // Looked at before the check agreed it begins anew once it has.
  return data.infusion === undefined ? (
    <Start key={data.checkedMinutes} data={data} done={done} />
  ) : (
    <Running key={String(data.infusion.paused)} data={data} done={done} />
  );
}

function Start({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [identifiers, setIdentifiers] = useState<readonly Identifier[]>([]);
  const [alongTheLine, setAlongTheLine] = useState<AlongTheLine>();
  const [pack, setPack] = useState(nothingRead);
  const fromPaper = useFromPaper();
  useTick(true);
  const waitedMinutes =
    data.check?.agoSeconds === undefined
      ? undefined
      : data.check.agoSeconds / 60 + Math.max(0, step.now() - Date.parse(data.serverTime)) / 60_000;
  /** The server counts for itself: a device that slept has counted too little. */
  const saysServer = step.attempt.refusals.find(({ field }) => field === 'packAgain')?.says;
  const interrupted =
    fromPaper === undefined &&
    step.time === undefined &&
    data.interruptionMinutes !== undefined &&
    data.check !== undefined &&
    (waitedMinutes === undefined || waitedMinutes > data.interruptionMinutes || saysServer !== undefined);
  const packAgain = interrupted ? readPack(pack) : undefined;
  const [minutes, setMinutes] = useState(data.checkedMinutes);
  return (
    <StepForm
      title="Start the infusion"
      help="At the chair: ask who they are once more, then connect. Press when it starts to run."
      step={step}
      act={step.time === undefined ? 'It runs now' : `It ran from ${step.time}`}
      missing={
        interrupted && packAgain === undefined
          ? 'Read the pack once more'
          : identifiers.length < 2
            ? 'Two identifiers first'
            : alongTheLine === undefined
              ? 'Look along the line first'
              : minutes === undefined
                ? 'How many minutes?'
                : undefined
      }
      send={() => step.act({ name: 'start infusion', plannedMinutes: minutes, identifiers, alongTheLine, packAgain })}
    >
      <Order data={data} />
      {interrupted && (
        <>
          <Note tone="caution" speaks="politely">
            <strong>
              {saysServer !== undefined
                ? `${sentence(saysServer)}.`
                : waitedMinutes === undefined
                  ? 'How long ago the second check was cannot be measured: the clock was changed or the machine restarted.'
                  : `${Math.floor(waitedMinutes)} minutes went by since the second check.`}
            </strong>{' '}
            Read the pack once more, and ask who they are.
          </Note>
          <ReadOffPack value={pack} onChange={setPack} />
        </>
      )}
      <TicksField
        label="Asked and matched at the chair"
        at="identifiers"
        size="big"
        value={identifiers}
        onChange={setIdentifiers}
        options={identifierOptions}
      />
      <LineField fromPaper={fromPaper !== undefined} value={alongTheLine} onChange={setAlongTheLine} />
      <NumberField
        label="To run in"
        unit="minutes"
        help={
          data.checkedMinutes === undefined
            ? undefined
            : `As prepared and checked. ${rateInWords(data.bagMilliliters, data.checkedMinutes)}.`
        }
        at="plannedMinutes"
        value={minutes}
        onChange={setMinutes}
      />
    </StepForm>
  );
}

type AlongTheLine = typeof lineLookedAlong | typeof lineNotOnPaper;

/** Looked along before it is connected; of what ran on paper the sheet may be silent, and that is written as such. */
function LineField({
  fromPaper,
  value,
  onChange,
}: {
  fromPaper: boolean;
  value: AlongTheLine | undefined;
  onChange: (value: AlongTheLine | undefined) => void;
}) {
  const label = 'Along the line, before it is connected';
  return fromPaper ? (
    <ChoiceField
      label={label}
      at="alongTheLine"
      value={value}
      onChange={onChange}
      options={[{ value: lineLookedAlong, says: `ticked: ${lineLookedAlong}` }, { value: lineNotOnPaper }]}
    />
  ) : (
    <AlongTheLineTick label={label} value={value === lineLookedAlong ? value : undefined} onChange={onChange} />
  );
}
