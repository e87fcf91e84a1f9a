import type { DryRunAnswer, RegisterMapping } from '@twelvemonth/exchange';
import { useState } from 'react';
import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { counted } from '../words/texts.ts';
import { ColumnMapping } from './ColumnMapping.tsx';
import css from './Import.module.css';
import { MappingOptions } from './MappingOptions.tsx';
import { Preview } from './Preview.tsx';
import { RowProblems } from './RowProblems.tsx';
import { saveAsFile } from './file-text.ts';

type Props = {
  readonly answer: DryRunAnswer;
  readonly checking: boolean;
  readonly taking: boolean;
  readonly check: (mapping: RegisterMapping) => void;
  readonly take: (mapping: RegisterMapping) => void;
};

/** The file as the server read it with this mapping: what each column means, what would be written, what is wrong. */
export function Draft({ answer, checking, taking, check, take }: Props) {
  const [mapping, setMapping] = useState(answer.mapping);
  const changed = JSON.stringify(mapping) !== JSON.stringify(answer.mapping);
  const { counts } = answer;
  return (
    <>
      <h2>What the columns mean</h2>
      {answer.passedOver > 0 && (
        <p className="quiet">{counted(answer.passedOver, 'line')} before the header passed over.</p>
      )}
      <MappingOptions mapping={mapping} change={setMapping} />
      <ColumnMapping columns={answer.columns} mapping={mapping} change={setMapping} />
      {answer.doubts.length > 0 && (
        <div style={{ marginTop: '0.8rem' }}>
          <Note tone="caution">
            <p>
              <strong>Only supposed, for you to confirm:</strong>
            </p>
            <ul>
              {answer.doubts.map((doubt) => (
                <li key={`${doubt.column ?? ''} ${doubt.says}`}>
                  {doubt.column !== undefined && <strong>{doubt.column}: </strong>}
                  {doubt.says}
                </li>
              ))}
            </ul>
          </Note>
        </div>
      )}
      {answer.mappingProblems.length > 0 && (
        <div style={{ marginTop: '0.8rem' }}>
          <Note tone="caution">
            <p>
              <strong>Before anything can be taken in:</strong>
            </p>
            <ul>
              {answer.mappingProblems.map((problem) => (
                <li key={`${problem.column ?? ''} ${problem.says}`}>
                  {problem.column !== undefined && <strong>{problem.column}: </strong>}
                  {problem.says} {problem.remedy}
                </li>
              ))}
            </ul>
          </Note>
        </div>
      )}
      <div className={css['acts']}>
        <Button tone={changed ? 'act' : 'quiet'} busy={checking} busyWords="checking …" onClick={() => check(mapping)}>
          Check the file with this mapping
        </Button>
        <Button
          size="slim"
          onClick={() => saveAsFile(`${mapping.name}.mapping.json`, JSON.stringify(mapping, undefined, 2))}
        >
          Save the mapping
        </Button>
      </div>
      <h2>What would be written</h2>
      <ul className={css['counts']}>
        <Count number={answer.rows} says="rows read" />
        <Count number={counts.newPeople} says="new people" />
        <Count number={counts.knownPeople} says="people known here" />
        <Count number={counts.newFacts} says="new facts" />
        <Count number={counts.alreadyHere} says="facts here already" />
        <Count number={counts.rowsWaiting} says="rows would wait" />
      </ul>
      <div className={css['acts']}>
        <Button
          tone={changed ? 'quiet' : 'act'}
          busy={taking}
          busyWords="taking in …"
          disabled={changed || answer.mappingProblems.length > 0}
          onClick={() => take(answer.mapping)}
        >
          {changed ? 'Check first' : 'Take it in'}
        </Button>
        <span className="quiet">Rows with trouble that blocks wait, whole, until someone settles them.</span>
      </div>
      <RowProblems problems={answer.problems} />
      <Preview preview={answer.preview} />
    </>
  );
}

const Count = ({ number, says }: { number: number; says: string }) => (
  <li>
    <strong>{number}</strong> {says}
  </li>
);
