import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { LookAheadView } from '@twelvemonth/exchange';
import { type UnitAhead, changedCase } from '@twelvemonth/planning';
import { useMemo, useState } from 'react';
import { Picture } from '../drawing/Picture.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { NoUnitYet } from '../frame/NoUnitYet.tsx';
import { useUnit } from '../frame/unit.ts';
import { Awaited } from '../paper/Awaited.tsx';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';
import { Why } from '../paper/Why.tsx';
import { lookAhead } from '../server/queries.ts';
import { longDay } from '../words/dates.ts';
import { Headline, Needs } from './Answer.tsx';
import css from './LookAhead.module.css';
import { SliderField } from './SliderField.tsx';
import { demandPicture, waitPicture } from './ahead-pictures.ts';
import { fullRuns, weeksTogether } from './ahead-size.ts';
import { useAhead } from './use-ahead.ts';
import { type WhatIfs, asItIs, changesOf, slidersFor } from './what-ifs.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';

const usualTargetWeeks = 4;
const usualInOf100 = 90;
const percent = 100;

/** Three years of places asked for and waits, with what-ifs that answer while a slider moves. Nothing is booked by it. */
export function LookAheadScreen() {
  const { unit } = useUnit();
  const asked = useQuery({ ...lookAhead(unit?.unit), enabled: unit !== undefined });
  return unit === undefined ? (
    <Page title="Look ahead">
      <NoUnitYet />
    </Page>
  ) : (
    <Awaited query={asked} what="what the notes say of the coming years">
      {(data) => <Sheet key={data.unit} data={data} />}
    </Awaited>
  );
}

function Sheet({ data }: { data: LookAheadView }) {
  return (
    <Page
      title="Look ahead"
      sub={`${data.unitName}: three years from ${longDay(data.today)}`}
      acts={
        <>
          <Button onClick={() => window.print()}>Print</Button>
          <Link to="/sessions">all sessions</Link>
        </>
      }
    >
      {data.hasUsualSettings && (
        <Note tone="caution">
          The unit has not written its own minutes and staff for planning: starting values stand in (common practice, no
          source). They are written under Settings.
        </Note>
      )}
      {data.ahead === undefined ? <Note>{data.says}</Note> : <Years data={data} ahead={data.ahead} />}
    </Page>
  );
}

const drawnOptions = [
  { value: 'to fit the place', says: 'to fit the place' },
  { value: 'at referral', says: 'at referral' },
] as const;

function Years({ data, ahead }: { data: LookAheadView; ahead: UnitAhead }) {
  const usual = useMemo(() => asItIs(ahead), [ahead]);
  const [what, setWhat] = useState<WhatIfs>(usual);
  const [targetWeeks, setTargetWeeks] = useState(usualTargetWeeks);
  const [inOf100, setInOf100] = useState(usualInOf100);
  const own = useMemo(() => changedCase(ahead, {}), [ahead]);
  const changed = useMemo(() => changedCase(ahead, changesOf(ahead, what)), [ahead, what]);
  const isChanged = JSON.stringify(what) !== JSON.stringify(usual);
  const set = <Key extends keyof WhatIfs>(key: Key, value: WhatIfs[Key]): void =>
    setWhat((before) => ({ ...before, [key]: value }));
  const probability = inOf100 / percent;
  const before = useAhead(own, targetWeeks, probability);
  const now = useAhead(isChanged ? changed : own, targetWeeks, probability);
  const shownBefore = isChanged ? before.answer : undefined;
  const hasPlaces = changed.offer.placesPerWeek > 0;
  const { answer } = now;
  const shown = isChanged ? changed : own;
  const picture = answer && { answer, before: shownBefore, today: data.today, every: weeksTogether };
  return (
    <>
      <div className={css['bench']}>
        <section className={css['answer']} aria-labelledby="ahead-answer">
          <div className={css['pinned']}>
            <h2 id="ahead-answer">{isChanged ? 'With these changes' : 'As things stand'}</h2>
            {!hasPlaces && <Note tone="stop">There are no places at all: everybody waits and it never recovers.</Note>}
            {hasPlaces && answer === undefined && <output className="quiet">looking ahead …</output>}
            {hasPlaces && picture !== undefined && (
              <>
                <div aria-live="polite">
                  <Headline of={shown} answer={picture.answer} targetWeeks={targetWeeks} inOf100={inOf100} />
                </div>
                <Working of={now} />
                <Picture draw={(width) => demandPicture(picture, shown.offer, width)} />
              </>
            )}
          </div>
          {hasPlaces && picture !== undefined && (
            <div className={css['detail']}>
              <Picture draw={(width) => waitPicture(picture, targetWeeks, width)} />
              <p className="quiet">
                Line: on average. Hatched: four in five futures. Light: nineteen in twenty. Each point is a mean of{' '}
                {weeksTogether} weeks.
              </p>
              <Needs of={shown} answer={picture.answer} />
              {shownBefore !== undefined && (
                <p className="quiet">
                  As things stand (dotted): {shownBefore.found.demandPerWeekInLastYear.toFixed(1)} places a week asked
                  for in the third year, {Math.round(shownBefore.chance * percent)} of 100 futures keep the target,{' '}
                  {shownBefore.needed ?? 'no number of'} places would be enough.
                </p>
              )}
            </div>
          )}
        </section>
        <section className={`${css['whatIfs']} screenOnly`} aria-labelledby="what-ifs">
          <h2 id="what-ifs">What if</h2>
          <p className="quiet">Nothing is changed or booked here: it only shows what would come of it.</p>
          <div className={css['sliders']}>
            {slidersFor(ahead, what).map((slider) => (
              <SliderField
                key={slider.key}
                slider={slider}
                value={what[slider.key]}
                usual={usual[slider.key]}
                onChange={(value) => set(slider.key, value)}
              />
            ))}
          </div>
          <ChoiceField
            label="Bloods are drawn"
            help="Drawn at referral they run out while people wait; drawn to fit the place they do not."
            value={what.bloodsDrawn}
            onChange={(value) => set('bloodsDrawn', value ?? usual.bloodsDrawn)}
            options={drawnOptions}
          />
          <div className={css['target']}>
            <NumberField
              label="Nobody waits longer than"
              unit="weeks"
              value={targetWeeks}
              onChange={(value) => setTargetWeeks(Math.max(0, value ?? usualTargetWeeks))}
            />
            <NumberField
              label="in so many futures"
              unit="of 100"
              value={inOf100}
              onChange={(value) => setInOf100(Math.min(percent, Math.max(1, value ?? usualInOf100)))}
            />
          </div>
          <Button onClick={() => setWhat(usual)} aria-disabled={!isChanged}>
            All as it is
          </Button>
        </section>
      </div>
      <section aria-labelledby="ahead-read">
        <h2 id="ahead-read">Read from the notes</h2>
        <ReadFigures data={data} />
      </section>
    </>
  );
}

/** While it is worked out: how far, and a way to end it. */
function Working({ of: { played, stop, isStopped, answer } }: { of: ReturnType<typeof useAhead> }) {
  if (isStopped)
    return <p className="quiet">Stopped: what stands here is from few futures. Move something to go on.</p>;
  return (
    <p className={`${css['working']} quiet`}>
      {played === undefined ? (
        `From ${fullRuns} futures.`
      ) : (
        <>
          {answer?.isRough === true ? 'From few futures; more are played' : 'Playing futures'}{' '}
          {played > 0 && played < fullRuns ? (
            <progress aria-label="Futures played" value={played} max={fullRuns} />
          ) : (
            '…'
          )}{' '}
          <Button size="slim" onClick={stop}>
            Stop
          </Button>
        </>
      )}
    </p>
  );
}

function ReadFigures({ data }: { data: LookAheadView }) {
  const starting = data.read.filter(({ starting }) => starting !== undefined);
  return (
    <>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">is</th>
            <th scope="col">counted from</th>
          </tr>
        </thead>
        <tbody>
          {data.read.map((figure) => (
            <tr key={figure.what}>
              <th scope="row">
                <InUnitWords>{figure.what}</InUnitWords>
              </th>
              <td>{figure.is}</td>
              <td>
                <InUnitWords>{figure.from}</InUnitWords>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Why about="where they come from" word="starting values">
        <p>
          What a unit has counted itself is drawn towards a starting value that weighs as much as 20 people; the more it
          has counted, the less that weighs.
        </p>
        <ul>
          {starting.map((figure) => (
            <li key={figure.what}>
              <InUnitWords>
                {figure.what}: {figure.starting}
              </InUnitWords>
            </li>
          ))}
        </ul>
      </Why>
    </>
  );
}
