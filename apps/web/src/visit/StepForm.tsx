import { type ReactNode, useState } from 'react';
import { TextField } from '../fields/TextField.tsx';
import { ActForm } from '../fields/ActForm.tsx';
import { Button } from '../paper/Button.tsx';
import { Outcome } from '../paper/Outcome.tsx';
import css from './Visit.module.css';
import { useFromPaper } from './from-paper.ts';
import type { Step } from './use-step.ts';

type Props = {
  readonly title: string;
  readonly help?: ReactNode;
  readonly step: Step;
  /** The words on the one big button. */
  readonly act: string;
  readonly send: () => void;
  /** What is still missing, in words; the button waits for it. */
  readonly missing?: string | undefined;
  /** Steps that may be written in a little later have a time of their own. */
  readonly timed?: boolean;
  /** What the time is the time of: "Began". */
  readonly timedAs?: string;
  readonly children: ReactNode;
};

/** The form of one step: its fields, one big button, and what came of it. */
export function StepForm({ title, help, step, act, send, missing, timed = true, timedAs = 'Time', children }: Props) {
  return (
    <ActForm
      refusals={step.attempt.refusals}
      send={() => {
        if (missing === undefined) send();
      }}
    >
      <h2>{title}</h2>
      {help !== undefined && <div className="quiet">{help}</div>}
      {children}
      {timed && <WhenField of={timedAs} time={step.time} setTime={step.setTime} />}
      <Outcome of={step.attempt} />
      <div className={css['go']}>
        <Button type="submit" tone="act" size="big" busy={step.attempt.busy} disabled={missing !== undefined}>
          {missing ?? act}
        </Button>
      </div>
    </ActForm>
  );
}

/** Now, in one tap less than none; another time of today when it is written in later. */
export function WhenField({
  of = 'Time',
  time,
  setTime,
}: {
  of?: string;
  time: string | undefined;
  setTime: (time: string | undefined) => void;
}) {
  const paper = useFromPaper();
  const [open, setOpen] = useState(paper !== undefined);
  if (!open) {
    return (
      <p className="quiet" style={{ marginTop: '1rem' }}>
        {of}: now.{' '}
        <Button tone="plain" onClick={() => setOpen(true)}>
          it was at another time
        </Button>
      </p>
    );
  }
  return (
    <TextField
      label={paper === undefined ? `${of} today` : 'Time on the sheet'}
      help={`Hours and minutes, 24 hours: 10:40.${paper === undefined ? ' Leave empty for now.' : ''}`}
      short
      at="effectiveAt"
      value={time ?? ''}
      onChange={(typed) => setTime(typed.trim() === '' ? undefined : typed.trim())}
    />
  );
}
