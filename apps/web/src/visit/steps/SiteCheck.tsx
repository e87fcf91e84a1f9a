import { siteSignNames } from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { TicksField } from '../../fields/TicksField.tsx';
import { Button } from '../../paper/Button.tsx';
import { Note } from '../../paper/Note.tsx';
import { timeOfDay } from '../../words/dates.ts';
import css from '../Visit.module.css';
import type { Step } from '../use-step.ts';

type Props = {
  readonly site: NonNullable<VisitView['site']>;
  readonly paused: boolean;
  readonly ranSeconds: number;
  readonly step: Step;
};

/** Whether somebody is to look at the site now. */
export const isLookDue = (
  { afterMinutes, last, well }: Props['site'],
  { ranSeconds, paused }: Pick<Props, 'ranSeconds' | 'paused'>,
): boolean =>
  paused || (!well && (afterMinutes === undefined || last !== undefined || ranSeconds >= afterMinutes * 60));

/**
 * The look at the site while it runs. Below the countdown and its buttons, and there from the start: when the time comes
 * only the words change, nothing above moves. Swelling or pain stops the drip first; what is seen is written once it stands still.
 */
export function SiteCheck({ site, paused, ranSeconds, step }: Props) {
  const [seen, setSeen] = useState<readonly (typeof siteSignNames)[number][]>([]);
  const { afterMinutes: minutes, last, well } = site;
  const due = isLookDue(site, { ranSeconds, paused });
  return (
    <section aria-label="The site">
      <h3 style={{ marginTop: '1.6rem' }}>The site</h3>
      {last !== undefined && (
        <p>
          {timeOfDay(last.at, step.zone)}: {last.says} ({last.by})
        </p>
      )}
      {due ? (
        <Note tone="caution" speaks="politely">
          <strong>{last === undefined ? 'Look at the site now.' : 'Look at the site again.'}</strong> Swelling or pain
          is infiltration until shown otherwise: stop, look, resite.
        </Note>
      ) : (
        <Note>
          {well ? 'Look again whenever it hurts.' : `Look at the site once it has run ${minutes ?? 0} minutes.`}{' '}
          Swelling or pain is infiltration until shown otherwise: stop, look, resite.
        </Note>
      )}
      {paused && (
        <TicksField
          label="What is seen"
          at="line.body.seen"
          size="big"
          value={seen}
          onChange={setSeen}
          options={siteSignNames.map((value) => ({ value }))}
        />
      )}
      <div className={css['go']}>
        <Button
          size="big"
          busy={step.attempt.busy}
          disabled={seen.length > 0}
          onClick={() => step.record({ kind: 'site-check', body: { looks: 'well' } })}
        >
          Site looks well
        </Button>
        {paused ? (
          <Button
            tone="act"
            size="big"
            busy={step.attempt.busy}
            disabled={seen.length === 0}
            onClick={() => step.record({ kind: 'site-check', body: { looks: 'not well', seen } })}
          >
            {seen.length === 0 ? 'What is seen?' : 'Record what is seen'}
          </Button>
        ) : (
          <Button
            size="big"
            busy={step.attempt.busy}
            onClick={() =>
              step.act({ name: 'pause infusion', reason: 'swelling or pain at the site', because: 'the site' })
            }
          >
            Swelling or pain: it stands still now
          </Button>
        )}
      </div>
    </section>
  );
}
