import { Link } from '@tanstack/react-router';
import { Page } from '../paper/Page.tsx';

export function NotHere() {
  return (
    <Page title="There is no such screen">
      <p>
        The address may be mistyped. <Link to="/">Go to today</Link>, or find the person by name with the field above.
      </p>
    </Page>
  );
}
