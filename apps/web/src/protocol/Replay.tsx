import { Link } from '@tanstack/react-router';
import type { ReplayAnswer } from '@twelvemonth/exchange';
import { Button } from '../paper/Button.tsx';
import { Trouble } from '../paper/Trouble.tsx';
import { post } from '../server/request.ts';
import { dayInWords } from '../words/dates.ts';
import { counted } from '../words/texts.ts';
import css from './Protocol.module.css';
import { useParts } from './use-parts.ts';

/** Signed decisions decided again by the protocol in force then: the proof that each names its version and keeps its answer. */
export function Replay() {
  const { now, begin, stop } = useParts<ReplayAnswer>((after, signal) => post('replay', { after }, {}, signal));
  const last = now.parts.at(-1);
  const differences = now.parts.flatMap((part) => part.differences);
  const decisions = now.parts.reduce((so, part) => so + part.decisions, 0);
  return (
    <section aria-labelledby="replay" className="screenOnly">
      <h3 id="replay">Signed decisions, decided again</h3>
      <p>
        {now.state === 'running' ? (
          <Button onClick={stop}>Stop</Button>
        ) : (
          <Button onClick={begin}>Decide them again</Button>
        )}
      </p>
      <output className={css['progress']}>
        {now.state === 'running' && `${last?.looked ?? 0} of ${last?.of ?? 'everyone'} …`}
        {now.state === 'stopped' && `stopped after ${last?.looked ?? 0} of ${last?.of ?? 'everyone'}`}
        {now.state === 'done' &&
          `${counted(decisions, 'signed decision')} under rules ${last?.ruleSet ?? ''}: ${
            differences.length === 0
              ? 'each comes out as it was signed.'
              : `${differences.length} come out differently:`
          }`}
      </output>
      {now.error !== undefined && <Trouble error={now.error} />}
      {differences.length > 0 && (
        <table className={`stacks ${css['changes']}`}>
          <thead>
            <tr>
              <th scope="col">who</th>
              <th scope="col">on</th>
              <th scope="col">signed</th>
              <th scope="col">now</th>
              <th scope="col">why it may differ</th>
            </tr>
          </thead>
          <tbody>
            {differences.map((one) => (
              <tr key={`${one.patient} ${one.on} ${one.signed}`}>
                <th scope="row">
                  <Link to="/people/$patient" params={{ patient: one.patient }}>
                    {one.name}
                  </Link>
                </th>
                <td>{dayInWords(one.on)}</td>
                <td>{one.signed}</td>
                <td>{one.now}</td>
                <td>{one.because}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
