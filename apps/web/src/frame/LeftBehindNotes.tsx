import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { readIt, useLeftBehind } from '../server/left-behind.ts';
import { ToLink } from './ToLink.tsx';

/** What was pressed and not recorded, told wherever whoever pressed it is by now. */
export function LeftBehindNotes() {
  const left = useLeftBehind();
  return (
    <div className="screenOnly">
      {left.map(({ id, screen, address, says }) => (
        <div key={id} style={{ marginBottom: '0.8rem' }}>
          <Note tone="stop" speaks="at once">
            <p>
              <strong>{screen}: what you pressed before you went on did not go through.</strong> {says.join(' ')}
            </p>
            <p>
              <ToLink to={address} className="finger">
                Go back there
              </ToLink>{' '}
              <Button onClick={() => readIt(id)}>I have read it</Button>
            </p>
          </Note>
        </div>
      ))}
    </div>
  );
}
