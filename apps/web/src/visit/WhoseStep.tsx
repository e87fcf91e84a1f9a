import { entryKinds, plural, rolesFor, type Role } from '@twelvemonth/clinical';
import type { VisitStep } from '@twelvemonth/exchange';
import { useActingRole } from '../frame/acting-role.ts';
import { Note } from '../paper/Note.tsx';

/** Who may record a step in their own name. The second check asks for its own signature always. */
const whose: Readonly<Record<VisitStep['step'], readonly Role[]>> = {
  arrive: entryKinds.arrived.writes,
  observations: entryKinds.observations.writes,
  checklist: entryKinds.checklist.writes,
  decision: rolesFor('decide'),
  cannula: entryKinds.cannula.writes,
  flush: entryKinds.flush.writes,
  preparation: entryKinds.preparation.writes,
  'second check': [],
  injection: rolesFor('give injection'),
  infusion: rolesFor('start infusion'),
  removal: entryKinds['cannula-removed'].writes,
  observe: entryKinds.observed.writes,
  leave: entryKinds.left.writes,
};

/** Told before the step is filled in, not after it was pressed. The form stays: somebody else may sign it here. */
export function WhoseStep({ step }: { step: VisitStep['step'] }) {
  const { role, roles } = useActingRole();
  const acting = role === undefined ? roles : [role];
  const may: readonly string[] = whose[step];
  if (acting.length === 0 || may.length === 0 || acting.some((one) => may.includes(one))) return null;
  return (
    <div style={{ marginBottom: '0.8rem' }}>
      <Note tone="caution">
        You are here as {plural(acting, 'and')}: this step is recorded by a {plural(may)}. Call one of them before you
        fill it in.
      </Note>
    </div>
  );
}
