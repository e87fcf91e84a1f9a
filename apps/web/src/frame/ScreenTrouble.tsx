import { Button } from '../paper/Button.tsx';
import { Note } from '../paper/Note.tsx';
import { Page } from '../paper/Page.tsx';

const isNotFetched = (error: unknown): boolean =>
  error instanceof Error && /preload CSS|dynamically imported|module script/i.test(error.message);

/** A defect of the screen itself. Nothing of the notes is touched by it. */
export function ScreenTrouble({ error }: { error: unknown }) {
  if (isNotFetched(error)) {
    return (
      <Page title="This screen could not be fetched">
        <p>
          The server cannot be reached, or its screens have been replaced by newer ones. What was recorded is not
          affected.
        </p>
        <p style={{ marginTop: '1rem' }}>
          <Button tone="act" onClick={() => window.location.reload()}>
            Load again
          </Button>
        </p>
      </Page>
    );
  }
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
