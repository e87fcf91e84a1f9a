import { gradedTerms, gradesOf } from '@twelvemonth/clinical';
import { Note } from '../../paper/Note.tsx';

/** What the grades of the chosen term say, beside the field in which one of them is written. */
export function GradeTexts({ term }: { term: unknown }) {
  const known = gradedTerms.find((each) => each === term);
  if (known === undefined) return null;
  return (
    <Note>
      <p>Grades of {known}, CTCAE 5.0 in short (from memory: look them up where it matters):</p>
      <ul>
        {gradesOf(known).map(({ grade, says }) => (
          <li key={grade}>
            <strong>{grade}</strong>: {says}
          </li>
        ))}
      </ul>
    </Note>
  );
}
