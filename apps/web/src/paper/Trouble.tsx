import { ServerProblem } from '../server/server-problem.ts';
import { InUnitWords } from '../words/InUnitWords.tsx';
import { Button } from './Button.tsx';
import { Note } from './Note.tsx';
import { inSummary } from './refusal-words.ts';

/** Something that could not be fetched: what, what to quote when asking for help, and another try. */
export function Trouble({ error, again }: { error: Error; again?: () => void }) {
  const problem = error instanceof ServerProblem ? error.problem : undefined;
  return (
    <Note tone="stop" speaks="at once">
      <p>
        <strong>{problem?.title ?? error.message}</strong>
      </p>
      {problem?.detail !== undefined && (
        <p>
          <InUnitWords>{problem.detail}</InUnitWords>
        </p>
      )}
      {problem?.refusals?.map((refusal) => (
        <p key={`${refusal.name} ${refusal.field ?? ''} ${refusal.says}`}>
          <InUnitWords>{inSummary(refusal)}</InUnitWords>
        </p>
      ))}
      {problem?.instance !== undefined && <p>Number to quote when you ask for help: {problem.instance}</p>}
      {again !== undefined && (
        <p>
          <Button size="slim" onClick={again}>
            Try again
          </Button>
        </p>
      )}
    </Note>
  );
}
