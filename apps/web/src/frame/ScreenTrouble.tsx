import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';

/** A defect of the screen itself. Nothing of the notes is touched by it. */
export function ScreenTrouble({ error }: { error: unknown }) {
  return (
    <Page title="This screen stopped working">
      <Note tone="stop" speaks="at once">
        <p>
          The notes are not affected. Load the screen again; if it comes back, tell whoever looks after the service and
          quote:
        </p>
        <p>
          <code>{error instanceof Error ? error.message : String(error)}</code>
        </p>
      </Note>
      <p style={{ marginTop: '1rem' }}>
        <Button tone="act" onClick={() => window.location.reload()}>
          Load again
        </Button>
      </p>
    </Page>
  );
}
