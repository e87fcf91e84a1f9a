import { useState } from 'react';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { Why } from '../paper/Why.tsx';
import type { StepProps } from '../visit/StepBody.tsx';
import { StepForm } from '../visit/StepForm.tsx';
import { useStep } from '../visit/use-step.ts';
import { IncidentField } from '../visit/steps/IncidentField.tsx';

/** The end of an infusion as the sheet tells it: no clock of ours timed it, so a person did, and pauses do not count. */
export function PaperFinish({ data, done }: StepProps) {
  const step = useStep(data, done);
  const [milliliters, setMilliliters] = useState<number>();
  const [pausedMinutes, setPausedMinutes] = useState<number>();
  const [timedBy, setTimedBy] = useState('');
  const [reason, setReason] = useState('');
  const [incident, setIncident] = useState('');
  const tooFast = step.attempt.refusals.some(({ name }) => name === 'ran-too-fast');
  const lacking =
    milliliters === undefined
      ? 'How much was given?'
      : pausedMinutes === undefined
        ? 'How long did it stand still?'
        : timedBy.trim() === ''
          ? 'Who timed it?'
          : undefined;
  return (
    <>
      <StepForm
        title="The infusion ended"
        help="The time on the sheet is the one beside “ended at”."
        step={step}
        act="Finished"
        missing={lacking}
        send={() =>
          step.act({
            name: 'finish infusion',
            milliliters,
            pausedMinutes,
            timedBy,
            ...(reason.trim() === '' ? {} : { stoppedBecause: reason }),
            ...(incident.trim() === '' ? {} : { incident }),
          })
        }
      >
        <NumberField label="Given" unit="mL" at="milliliters" value={milliliters} onChange={setMilliliters} />
        <NumberField
          label="Stood still, all pauses together"
          help="From the sheet: paused from ... to .... Never paused: 0. Paused minutes do not count."
          unit="minutes"
          at="pausedMinutes"
          value={pausedMinutes}
          onChange={setPausedMinutes}
        />
        <TextField label="Who timed it, by which clock" at="timedBy" value={timedBy} onChange={setTimedBy} />
        <TextField
          label="If it was stopped early: why"
          optional
          at="stoppedBecause"
          value={reason}
          onChange={setReason}
        />
        <IncidentField tooFast={tooFast} onlyIf="the times are right" value={incident} onChange={setIncident} />
      </StepForm>
      {data.site !== undefined && data.site.last === undefined && (
        <div style={{ marginTop: '1.6rem' }}>
          <Why word="the site after 5 minutes" about="is ticked on the sheet">
            <SiteOnPaper data={data} done={done} />
          </Why>
        </div>
      )}
    </>
  );
}

/** What was not well stands with the stop, and with the site at the removal. */
function SiteOnPaper({ data, done }: StepProps) {
  const step = useStep(data, done);
  return (
    <StepForm
      title="The site"
      help="Ticked “well” on the sheet. If it was not well, say so where the infusion was stopped and the cannula taken out."
      step={step}
      act="It looked well"
      send={() => step.record({ kind: 'site-check', body: { looks: 'well' } })}
    >
      {null}
    </StepForm>
  );
}
