import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';

/** A link to an address the server gave: a screen of ours, with its query. */
export function ToLink({ to, className, children }: { to: string; className?: string; children: ReactNode }) {
  const [path = '/', query = ''] = to.split('?');
  return (
    <Link to={path as '/'} search={Object.fromEntries(new URLSearchParams(query)) as never} className={className ?? ''}>
      {children}
    </Link>
  );
}
