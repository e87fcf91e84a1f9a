import type { lineLookedAlong } from '@twelvemonth/clinical';
import { Link } from '@tanstack/react-router';
import type { VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { FieldTroubles } from '../../fields/field-trouble.ts';
import { Button } from '../../paper/Button.tsx';
import { buttonLook } from '../../paper/button-look.ts';
import { Outcome } from '../../paper/Outcome.tsx';
import { timeOfDay } from '../../words/dates.ts';
import { counted, dotted } from '../../words/texts.ts';
import type { StepProps } from '../StepBody.tsx';
import css from '../Visit.module.css';
import { useTick } from '../server-now.ts';
import { type Step, useStep } from '../use-step.ts';
import { AlongTheLineTick } from './AlongTheLineTick.tsx';
import { SiteCheck, isLookDue } from './SiteCheck.tsx';
import { PauseForm } from './PauseForm.tsx';
import { StopEarlyForm } from './StopEarlyForm.tsx';
import { UnmeasuredFinish } from './UnmeasuredFinish.tsx';

const asClock = (seconds: number): string =>
  `${Math.floor(seconds / 60)} min ${String(Math.floor(seconds % 60)).padStart(2, '0')} s`;

/** What a whole bag holds is the server's to say; the rate line carries it. */
export function Running({ data, done }: StepProps) {
  const step = useStep(data, done);
  const { infusion } = data;
  const [open, setOpen] = useState<'pause' | 'stop'>();
  useTick(infusion !== undefined && !infusion.paused);
  if (infusion === undefined) return null;
  if (infusion.ranSeconds === undefined) return <UnmeasuredFinish data={data} done={done} />;
  const since = infusion.paused ? 0 : (step.now() - Date.parse(data.serverTime)) / 1000;
  const ran = infusion.ranSeconds + since;
  const left = Math.max(0, infusion.leastMinutes * 60 - ran);
  const planned = infusion.plannedMinutes * 60;
  const overMinutes = Math.floor((ran - planned) / 60);
  const share = (seconds: number): string =>
    `${Math.min(100, (100 * seconds) / Math.max(planned, infusion.leastMinutes * 60))}%`;
  return (
    <FieldTroubles value={step.attempt.refusals}>
      <h2>{infusion.paused ? 'Paused' : 'Running'}</h2>
      {infusion.pause !== undefined && (
        <p>
          {timeOfDay(infusion.pause.at, step.zone)}: <strong>{infusion.pause.reason}</strong> ({infusion.pause.by})
        </p>
      )}
      <p className={css['clock']} role="timer">
        {infusion.paused ? asClock(ran) : left > 0 ? asClock(Math.ceil(left)) : asClock(ran)}
      </p>
      <p style={{ fontSize: '1.12rem' }}>
        {infusion.paused
          ? 'run so far; the pause does not count'
          : left > 0
            ? 'to the earliest finish'
            : 'run; it may be finished when the bag is empty'}
        {/* On a tablet the site stands below the edge of the screen; the line is there from the start, and nothing moves. */}
        {data.site !== undefined && isLookDue(data.site, { ranSeconds: ran, paused: infusion.paused }) && (
          <strong>: look at the site now</strong>
        )}
      </p>
      <div className={css['bar']} aria-hidden="true">
        <span style={{ width: share(ran) }} />
        <i style={{ insetInlineStart: share(infusion.leastMinutes * 60) }} />
      </div>
      <p className="quiet">
        {dotted(
          `started ${timeOfDay(infusion.startedAt, step.zone)}`,
          `planned ${infusion.plannedMinutes} min`,
          `at least ${infusion.leastMinutes} min of running time`,
          !infusion.paused &&
            infusion.earliestFinish !== undefined &&
            left > 0 &&
            `not before ${timeOfDay(infusion.earliestFinish, step.zone)}`,
        )}
      </p>
      {!infusion.paused && overMinutes > 0 && (
        <p>
          <strong>{counted(overMinutes, 'minute')} longer than planned:</strong> look at the site, the line and the
          rate.
        </p>
      )}
      <Outcome of={{ ...step.attempt, answer: undefined }} />
      <div className={css['go']}>
        {infusion.paused ? (
          <RunsAgain data={data} step={step} />
        ) : (
          <>
            <Button
              tone={left > 0 ? 'quiet' : 'act'}
              size="big"
              busy={step.attempt.busy}
              disabled={left > 0}
              onClick={() => step.act({ name: 'finish infusion', milliliters: data.bagMilliliters })}
            >
              {left > 0 ? 'Finish (not yet)' : `The bag is empty: ${data.bagMilliliters} mL given`}
            </Button>
            <Button
              size="big"
              aria-expanded={open === 'pause'}
              onClick={() => setOpen(open === 'pause' ? undefined : 'pause')}
            >
              Pause
            </Button>
            <Button
              size="big"
              busy={step.attempt.busy}
              onClick={() => step.act({ name: 'pause infusion', reason: 'a reaction', because: 'a reaction' })}
            >
              A reaction: it stands still now
            </Button>
          </>
        )}
        <Button
          size="big"
          aria-expanded={open === 'stop'}
          onClick={() => setOpen(open === 'stop' ? undefined : 'stop')}
        >
          Stop early
        </Button>
      </div>
      {open === 'pause' && !infusion.paused && <PauseForm step={step} />}
      {open === 'stop' && <StopEarlyForm step={step} />}
      {data.site !== undefined && (
        <SiteCheck key={data.site.last?.at} site={data.site} ranSeconds={ran} paused={infusion.paused} step={step} />
      )}
    </FieldTroubles>
  );
}

/** After swelling or pain: first the look, then another cannula, then it runs again. */
function RunsAgain({ data, step }: { data: VisitView; step: Step }) {
  if (data.resite !== undefined)
    return (
      <Link
        className={buttonLook('act', 'big')}
        to="/people/$patient/visit"
        params={{ patient: data.patient }}
        search={{ step: 'cannula' }}
      >
        Another cannula first
      </Link>
    );
  if (data.stoppedPack !== undefined)
    return (
      <Button tone="act" size="big" disabled>
        Its batch is stopped: it does not run again
      </Button>
    );
  return <LookAndGoOn lookFirst={data.site?.lookFirst === true} step={step} />;
}

/** The line was shut, perhaps off: whoever lets it run again has looked along it, as at the start. */
function LookAndGoOn({ lookFirst, step }: { lookFirst: boolean; step: Step }) {
  const [alongTheLine, setAlongTheLine] = useState<typeof lineLookedAlong>();
  return (
    <div>
      <AlongTheLineTick label="Along the line, before it runs again" value={alongTheLine} onChange={setAlongTheLine} />
      <Button
        tone="act"
        size="big"
        busy={step.attempt.busy}
        disabled={lookFirst || alongTheLine === undefined}
        onClick={() => step.act({ name: 'resume infusion', alongTheLine })}
      >
        {lookFirst
          ? 'Look at the site first'
          : alongTheLine === undefined
            ? 'Look along the line first'
            : 'It runs again'}
      </Button>
    </div>
  );
}
