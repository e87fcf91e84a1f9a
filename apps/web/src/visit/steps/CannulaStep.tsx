import { Link } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { TextField } from '../../fields/TextField.tsx';
import { Note } from '../../paper/Note.tsx';
import type { StepProps } from '../StepBody.tsx';
import { StepForm } from '../StepForm.tsx';
import { useStep } from '../use-step.ts';
import { AtTheNeedle } from './AtTheNeedle.tsx';

const sites = ['left forearm', 'right forearm', 'left hand', 'right hand', 'left elbow', 'right elbow'] as const;
const gauges = ['24', '22', '20'] as const;
const tryCounts = ['1', '2', '3', '4'] as const;

const oldLooksOptions = ['looks well', 'red', 'swollen', 'bruised'] as const;

export function CannulaStep({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [site, setSite] = useState<(typeof sites)[number]>();
  const [gauge, setGauge] = useState<(typeof gauges)[number]>();
  const [tries, setTries] = useState<(typeof tryCounts)[number]>();
  const [placed, setPlaced] = useState<'yes' | 'no'>();
  const { resite } = data;
  const [oldLooks, setOldLooks] = useState<(typeof oldLooksOptions)[number]>();
  const removesOld = resite?.oldIsIn === true;
  const avoided = data.armToAvoid !== undefined && site?.startsWith(data.armToAvoid) === true;
  const [because, setBecause] = useState('');
  const whole =
    site !== undefined &&
    gauge !== undefined &&
    tries !== undefined &&
    placed !== undefined &&
    (!removesOld || oldLooks !== undefined) &&
    (!avoided || because.trim() !== '');
  return (
    <StepForm
      title={resite === undefined ? 'Cannula' : 'Another cannula'}
      help={resite === undefined ? undefined : <Resiting data={data} />}
      step={step}
      act="Record"
      missing={whole ? undefined : avoided && because.trim() === '' ? 'Why this arm?' : 'Site, gauge, tries, in or not'}
      send={() =>
        step.record(...(removesOld ? [{ kind: 'cannula-removed' as const, body: { site: oldLooks } }] : []), {
          kind: 'cannula',
          body: {
            site,
            gauge,
            tries: Number(tries),
            placed: placed === 'yes',
            ...(avoided ? { armToAvoidUsedBecause: because.trim() } : {}),
          },
        })
      }
    >
      {removesOld && (
        <ChoiceField
          label={`The old cannula, ${resite.oldSite}, is out: its site`}
          at="cannula-removed"
          size="big"
          value={oldLooks}
          onChange={setOldLooks}
          options={oldLooksOptions.map((value) => ({ value }))}
        />
      )}
      {data.armToAvoid === undefined ? (
        <Note>No arm to avoid is recorded. Ask: lymph nodes removed, a fistula, a stroke?</Note>
      ) : (
        <Note tone="caution">
          Avoid the {data.armToAvoid} arm{data.armToAvoidBecause === undefined ? '' : `: ${data.armToAvoidBecause}`}.
        </Note>
      )}
      <FailedTries data={data} />
      <AtTheNeedle lines={data.atTheNeedle} />
      <ChoiceField
        label={resite === undefined ? 'Site' : 'New site'}
        at="site"
        size="big"
        value={site}
        onChange={setSite}
        options={sites.map((value) => ({
          value,
          says: data.armToAvoid !== undefined && value.startsWith(data.armToAvoid) ? `${value} (avoid)` : value,
        }))}
      />
      {avoided && (
        <>
          <Note tone="stop" speaks="at once">
            This is the arm to avoid.
          </Note>
          <TextField
            label="Why this arm all the same, and who agreed"
            at="armToAvoidUsedBecause"
            value={because}
            onChange={setBecause}
          />
        </>
      )}
      <ChoiceField
        label="Gauge"
        at="gauge"
        size="big"
        value={gauge}
        onChange={setGauge}
        options={gauges.map((value) => ({ value }))}
      />
      <ChoiceField
        label="Tries, this operator"
        at="tries"
        size="big"
        value={tries}
        onChange={setTries}
        options={tryCounts.map((value) => ({ value }))}
      />
      <ChoiceField
        label="Is it in?"
        at="placed"
        size="big"
        value={placed}
        onChange={setPlaced}
        options={[{ value: 'yes' }, { value: 'no' }]}
      />
    </StepForm>
  );
}

/** What was tried today; after the protocol's number of tries another pair of hands. */
function FailedTries({ data: { failedTries, triedEnough } }: { data: VisitView }) {
  if (failedTries.length === 0) return null;
  return (
    <Note tone="caution">
      {failedTries.map(({ entry, says, by }) => (
        <p key={entry}>
          Today: {says} ({by}).
        </p>
      ))}
      {triedEnough.length > 0 && (
        <p>
          <strong>Somebody other than {triedEnough.join(' and ')} tries next, and records it.</strong> Warm the arm and
          let them drink first. No vein? Put the dose off, below.
        </p>
      )}
    </Note>
  );
}

const Resiting = ({ data: { patient, resite } }: { data: VisitView }) => (
  <p>
    The infusion stands still: {resite?.says}. It goes on through another cannula, flushed like the first, from the same
    pack. No vein?{' '}
    <Link to="/people/$patient/visit" params={{ patient }} search={{ step: 'infusion' }}>
      Stop it for good
    </Link>{' '}
    and say how much was given: never a second pack.
  </p>
);
