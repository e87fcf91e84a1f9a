import { type ProtocolSheet, sheetChanges } from '@twelvemonth/clinical';
import { useId } from 'react';
import { counted, sentence } from '../words/texts.ts';
import css from './Protocol.module.css';

/** What a version says otherwise than another, with the source of each change: what one reads before signing. */
export function Changes({
  before,
  after,
  against,
  level = 'h3',
}: {
  before: ProtocolSheet;
  after: ProtocolSheet;
  /** "the version in force, thornbeck-1" */
  against: string;
  level?: 'h2' | 'h3';
}) {
  const changes = sheetChanges(before, after);
  const id = useId();
  const Heading = level;
  return (
    <section aria-labelledby={id}>
      <Heading id={id}>What is decided otherwise</Heading>
      <p className="quiet">
        Compared with {against}: {changes.length === 0 ? 'nothing.' : `${counted(changes.length, 'change')}.`}
      </p>
      {changes.length > 0 && (
        <table className={`stacks ${css['changes']}`}>
          <thead>
            <tr>
              <th scope="col">what</th>
              <th scope="col">before</th>
              <th scope="col">after</th>
              <th scope="col">where it comes from</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((change) => (
              <tr key={change.path}>
                <th scope="row" style={{ fontWeight: 400 }}>
                  {sentence(change.what)}
                </th>
                <td>
                  {change.before} {change.before === 'empty' ? '' : change.unit}
                </td>
                <td>
                  <strong>
                    {change.after} {change.after === 'empty' ? '' : change.unit}
                  </strong>
                </td>
                <td className="small">{change.source === '' ? 'not said yet' : change.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
