import type { ReadinessWire } from '@twelvemonth/exchange';
import { dayInWords } from '../words/dates.ts';
import css from './Person.module.css';

type Requirement = ReadinessWire['requirements'][number];

/** The whole working: what went in, from which entry; the formula with its numbers; each threshold with its source; cautions. */
export function Working({
  working,
  requirement,
  patient,
}: {
  working: Requirement['working'];
  requirement: Requirement;
  /** Where the entries stand on another page than this one. */
  patient?: string;
}) {
  const entriesAt = patient === undefined ? '' : `/people/${encodeURIComponent(patient)}`;
  return (
    <div className={css['working']}>
      {working.inputs.length > 0 && (
        <section>
          <h3>what went in</h3>
          <ul>
            {working.inputs.map((input) => (
              <li key={`${input.label} ${input.text} ${input.on ?? ''}`}>
                {input.label}: <strong>{input.text}</strong>
                {input.on !== undefined && <span className="quiet"> on {dayInWords(input.on)}</span>}
                {input.entry !== undefined && (
                  <>
                    {' '}
                    <a href={`${entriesAt}#entry-${input.entry}`}>entry</a>
                  </>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      {working.formulas.length > 0 && (
        <section>
          <h3>sum</h3>
          <ul>
            {working.formulas.map((formula) => (
              <li key={`${formula.name} ${formula.put}`}>
                {formula.name}: {formula.put} = <span className={css['formula']}>{formula.gives}</span>
                <div className="quiet small">{formula.source}</div>
              </li>
            ))}
          </ul>
        </section>
      )}
      {working.thresholds.length > 0 && (
        <section>
          <h3>measured against</h3>
          <ul>
            {working.thresholds.map((threshold) => (
              <li key={threshold.label}>
                {threshold.label}: <strong>{threshold.text}</strong>
                <div className="quiet small">
                  source: {threshold.source} ({threshold.status})
                </div>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h3>under</h3>
        <p>protocol {working.protocolVersion}</p>
        {requirement.clearedBy !== '' && <p className="quiet small">can be cleared by: {requirement.clearedBy}</p>}
        {requirement.exceptionPossible && <p className="quiet small">a prescriber may make an exception</p>}
        {working.cautions.map((caution) => (
          <p key={caution} className="small">
            <strong>Caution:</strong> {caution}
          </p>
        ))}
      </section>
    </div>
  );
}
