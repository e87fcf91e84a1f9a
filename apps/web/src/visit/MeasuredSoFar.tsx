import type { VisitView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { timeOfDay } from '../words/dates.ts';
import { dotted } from '../words/texts.ts';

/** What was measured at this visit before, during and after the dose, side by side: what changed is seen. */
export function MeasuredSoFar({ data }: { data: VisitView }) {
  const { unit } = useUnit();
  if (data.observations.length === 0) return null;
  return (
    <dl aria-label="Observations of this visit">
      {data.observations.map(({ when, at, by, says, earlyWarning }) => (
        <div key={`${at} ${says}`} style={{ marginBottom: '0.5rem' }}>
          <dt>
            <strong>{when} the dose</strong> <span className="quiet">{dotted(timeOfDay(at, unit?.zone), by)}</span>
          </dt>
          <dd style={{ margin: 0 }}>
            {says}. NEWS2 {earlyWarning}.
          </dd>
        </div>
      ))}
    </dl>
  );
}
