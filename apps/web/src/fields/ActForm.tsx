import type { ReactNode } from 'react';
import type { Refusal } from '../server/server-problem.ts';
import { FieldTroubles } from './field-trouble.ts';

/** A form whose one button sends what was typed; what the server refuses is told beside the field it is about. */
export function ActForm({
  refusals,
  send,
  className,
  children,
}: {
  refusals: readonly Refusal[];
  send: () => void;
  className?: string | undefined;
  children: ReactNode;
}) {
  return (
    <FieldTroubles value={refusals}>
      <form
        className={className}
        onSubmit={(event) => {
          event.preventDefault();
          send();
        }}
      >
        {children}
      </form>
    </FieldTroubles>
  );
}
