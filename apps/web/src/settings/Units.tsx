import type { UnitView } from '@twelvemonth/exchange';
import { useState } from 'react';
import { useServiceToday } from '../frame/unit.ts';
import { Button } from '../paper/Button.tsx';
import { shortDay } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import { PlanningForm } from './PlanningForm.tsx';
import css from './Settings.module.css';
import { UnitForm } from './UnitForm.tsx';
import { weekdayNames } from './weekdays.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';

const daysOf = (weekdays: readonly number[]): string =>
  weekdays.length === 0 ? 'no fixed days' : weekdays.map((each) => weekdayNames[each - 1]).join(', ');

/** Closures that are over tell nobody anything. */
const stillToCome = (days: readonly string[], today: string): readonly string[] => days.filter((day) => day >= today);

/** Which form of a unit is open. */
const planningOf = ({ unit }: UnitView): string => `planning of ${unit}`;

const planningWords = ({ planning }: UnitView): string =>
  planning === undefined
    ? 'Planning: nothing of its own written yet, starting values stand in (common practice, no source).'
    : `Planning: ${counted(planning.nurses, 'nurse')} at the chairs, ${planning.preparers} preparing, ${counted(planning.secondCheckers, 'second checker')}; at most ${planning.mostFirstVisits} first visits a session, ${planning.reservedPercent} % kept for those first in line, ${counted(planning.noticeDays, 'day')} of notice.`;

export function Units({ units, mayChange }: { units: readonly UnitView[]; mayChange: boolean }) {
  const today = useServiceToday();
  const [open, setOpen] = useState<string>();
  return (
    <section aria-labelledby="units">
      <h2 id="units">Units</h2>
      {units.length === 0 && <p className="quiet">No unit yet. Add the first one.</p>}
      {units.map((unit) => (
        <div key={unit.unit} className={css['unit']}>
          {open === unit.unit ? (
            <UnitForm unit={unit} close={() => setOpen(undefined)} />
          ) : open === planningOf(unit) ? (
            <PlanningForm unit={unit} close={() => setOpen(undefined)} />
          ) : (
            <>
              <h3>{unit.name}</h3>
              <p>
                <InUnitWords>
                  {unit.chairs} chairs, {unit.opensAt} to {unit.closesAt}, sessions on {daysOf(unit.sessionWeekdays)};
                  bloods on {daysOf(unit.bloodWeekdays)}; an arrival every {unit.minutesBetweenArrivals} minutes.
                </InUnitWords>
              </p>
              <p className="quiet">
                {unit.zone} · {unit.telephone} ·{' '}
                {unit.protocolVersion === undefined ? 'no protocol in force' : `protocol ${unit.protocolVersion}`}
              </p>
              {stillToCome(unit.closedDays, today).length > 0 && (
                <p className="quiet">Closed on {stillToCome(unit.closedDays, today).map(shortDay).join(', ')}.</p>
              )}
              <p className="quiet">{planningWords(unit)}</p>
              {mayChange && (
                <div className={css['acts']}>
                  <Button size="slim" onClick={() => setOpen(unit.unit)}>
                    Change<span className="unseen"> {unit.name}</span>
                  </Button>
                  <Button size="slim" onClick={() => setOpen(planningOf(unit))}>
                    Planning<span className="unseen"> of {unit.name}</span>
                  </Button>
                </div>
              )}
            </>
          )}
        </div>
      ))}
      {mayChange &&
        (open === 'new' ? (
          <div className={css['unit']}>
            <UnitForm unit={undefined} close={() => setOpen(undefined)} />
          </div>
        ) : (
          <Button onClick={() => setOpen('new')}>Add a unit</Button>
        ))}
    </section>
  );
}
