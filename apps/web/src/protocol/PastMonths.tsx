import type { WhatIfAnswer } from '@twelvemonth/exchange';
import { useState } from 'react';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { post } from '../server/request.ts';
import { counted } from '../words/texts.ts';
import css from './Protocol.module.css';
import { useParts } from './use-parts.ts';

const stretches = ['3', '6', '12', '24'] as const;

/** What if: the past months had this sheet been in force. Counted on asking, with progress, and stopped at any time. */
export function PastMonths({ unit, version }: { unit: string; version: string }) {
  const [months, setMonths] = useState<(typeof stretches)[number]>('6');
  const { now, begin, stop } = useParts<WhatIfAnswer>((after, signal) =>
    post('whatIf', { version, months: Number(months), after }, { unit }, signal),
  );
  const last = now.parts.at(-1);
  const sum = (key: 'decisions' | 'putOff' | 'ready' | 'bloodsAgain' | 'withoutDate' | 'delayDays'): number =>
    now.parts.reduce((so, part) => so + part[key], 0);
  const longest = Math.max(0, ...now.parts.map(({ longestDelayDays }) => longestDelayDays));
  return (
    <section aria-labelledby="what-if" className="screenOnly">
      <h3 id="what-if">What if it had been in force</h3>
      <p className="quiet">
        Every go and every put-off of the past months, decided again from what was known then. It counts what would have
        stood in the way on the day; what people would have done earlier, had they known, nobody can count.
      </p>
      <ChoiceField
        label="Months back"
        value={months}
        onChange={(value) => value !== undefined && setMonths(value)}
        options={stretches.map((value) => ({ value }))}
      />
      <p>{now.state === 'running' ? <Button onClick={stop}>Stop</Button> : <Button onClick={begin}>Count</Button>}</p>
      <output className={css['progress']}>
        {now.state === 'running' && `looking back: ${last?.looked ?? 0} of ${last?.of ?? 'everyone'} …`}
        {now.state === 'stopped' && `stopped after ${last?.looked ?? 0} of ${last?.of ?? 'everyone'}`}
        {now.state === 'done' && `${counted(last?.looked ?? 0, 'person', 'people')} looked at`}
      </output>
      {now.error !== undefined && <Trouble error={now.error} />}
      {now.parts.length > 0 && (
        <dl className={css['counts']}>
          <Count says="decisions in those months" is={sum('decisions')} />
          <Count says="doses given that would have been put off" is={sum('putOff')} />
          <Count says="of them with blood to be drawn again" is={sum('bloodsAgain')} />
          <Count says="of them without a date" is={sum('withoutDate')} />
          <Count says={`days of delay, all together (longest ${longest})`} is={sum('delayDays')} />
          <Count says="doses put off that would have been ready" is={sum('ready')} />
        </dl>
      )}
    </section>
  );
}

const Count = ({ says, is }: { says: string; is: number }) => (
  <div>
    <dt>{says}</dt>
    <dd>{is}</dd>
  </div>
);
