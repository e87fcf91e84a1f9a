import { Link } from '@tanstack/react-router';
import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import { useUnit } from '../frame/unit.ts';
import { timeOfDay } from '../words/dates.ts';
import { MeasuredSoFar } from './MeasuredSoFar.tsx';
import { dotted, sentence } from '../words/texts.ts';

/** A step that is done: what was recorded, by whom. The preparer's reading is never shown here before the second check. */
export function StepDone({ data, step }: { data: VisitView; step: VisitStep }) {
  const { unit } = useUnit();
  const checked = data.check !== undefined;
  const says =
    step.step === 'preparation' && !checked
      ? 'Prepared. What was read is not shown before the second check.'
      : step.says;
  return (
    <>
      <h2>{sentence(step.step)}: done</h2>
      <p className="quiet">{dotted(step.at !== undefined && timeOfDay(step.at, unit?.zone), step.by)}</p>
      {says !== undefined && <p>{says}</p>}
      {step.step === 'second check' && data.check !== undefined && (
        <p>
          {data.check.agrees ? 'The two readings agree.' : `They differ: ${data.check.differs.join(', ')}.`} Checked by{' '}
          {data.check.by}.
        </p>
      )}
      {(step.step === 'observations' || step.step === 'observe') && <MeasuredSoFar data={data} />}
      {step.step === 'infusion' && data.infusion !== undefined && <p>{data.infusion.says}</p>}
      <p style={{ marginTop: '1rem' }}>
        <Link to="/people/$patient" params={{ patient: data.patient }} hash="notes" className="finger">
          Wrong? Correct or withdraw it in the notes
        </Link>
      </p>
    </>
  );
}
