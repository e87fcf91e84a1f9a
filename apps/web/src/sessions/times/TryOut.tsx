import { type Day, type Plan, type Rehearsal } from '@twelvemonth/planning';
import { useState } from 'react';
import { Picture } from '../../drawing/Picture.tsx';
import { Button } from '../../paper/Button.tsx';
import { finishPicture, presentPicture } from './rehearsal-pictures.ts';
import type { Planner } from './use-planner.ts';

const daysPlayed = 2_000;
const bottlenecks = { nurse: 'a nurse', chair: 'a chair', dose: 'the dose' } as const;

/** The plan tried out many times with delays: when it ends, how full it is, what people wait for. */
export function TryOut({ day, plan, planner }: { day: Day; plan: Plan; planner: Planner }) {
  const [tried, setTried] = useState<{ readonly plan: Plan; readonly rehearsal: Rehearsal }>();
  const rehearsal = tried?.plan === plan ? tried.rehearsal : undefined;
  const share = planner.working?.asks === 'rehearse' ? (planner.working.share ?? 0) : undefined;
  return (
    <section aria-labelledby="try-out">
      <h2 id="try-out">Try it out</h2>
      <p className="quiet">
        Plays this day {daysPlayed.toLocaleString('en-GB')} times: people come early or late, steps take longer or
        shorter, some do not come, cannulas fail. How often each happens is a starting value, partly without a source.
      </p>
      {share === undefined ? (
        <p className="screenOnly">
          <Button
            onClick={() =>
              planner.ask({ asks: 'rehearse', day, plan, days: daysPlayed }, (says) => {
                if (says.says === 'rehearsed') setTried({ plan, rehearsal: says.rehearsal });
              })
            }
          >
            Try out this day
          </Button>
        </p>
      ) : (
        <p>
          <progress aria-label="Days played" value={share} max={1} />{' '}
          <Button size="slim" onClick={planner.stop}>
            Stop
          </Button>
        </p>
      )}
      {rehearsal !== undefined && (
        <>
          <p>{finishPicture(day, rehearsal, 1).sentence}</p>
          <Picture draw={(width) => finishPicture(day, rehearsal, width)} />
          <p>
            {presentPicture(day, rehearsal, 1).sentence}{' '}
            {rehearsal.bottleneck === null
              ? 'Nobody waits.'
              : `People wait most for ${bottlenecks[rehearsal.bottleneck]}: ${Math.round(rehearsal.waitedFor[rehearsal.bottleneck])} minutes a day, all together.`}
          </p>
          <Picture draw={(width) => presentPicture(day, rehearsal, width)} />
        </>
      )}
    </section>
  );
}
