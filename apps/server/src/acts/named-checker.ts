/** Whoever is named as having made a second check works here and may make one: on the day sheet, or of a dose at home. */
import { type Act, type BodyOfKind, kindNamed, mayDoAct } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';

type Named = { readonly staff: string; readonly field: string; readonly says: string };

/** Undefined: nobody is named, or somebody who may. */
export function namedCheckerRefused(act: Act, { accounts }: Pick<AtHand, 'accounts'>): Refused | undefined {
  const wrong = namedIn(act).find(
    ({ staff }) => accounts.member(staff)?.roles.some((role) => mayDoAct(role, 'second check')) !== true,
  );
  if (wrong === undefined) return undefined;
  const { says, field } = wrong;
  return new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field }] });
}

function namedIn(act: Act): readonly Named[] {
  switch (act.name) {
    case 'second check': {
      const says = 'Whose signature stands on the paper is not somebody here who may make a second check.';
      const { signedOnPaperBy } = act;
      return signedOnPaperBy === undefined ? [] : [{ staff: signedOnPaperBy, field: 'signedOnPaperBy', says }];
    }
    case 'record':
      return checkerOf(act.line, 'line');
    case 'record together':
      return act.lines.flatMap((line, index) => checkerOf(line, `lines.${index}`));
    default:
      return [];
  }
}

function checkerOf({ kind, body }: { readonly kind: string; readonly body?: unknown }, path: string): readonly Named[] {
  const read = kind === 'dose' ? kindNamed('dose').body.safeParse(body) : undefined;
  const { checkedBy } = read?.success === true ? (read.data as BodyOfKind<'dose'>) : {};
  const says = 'Who is named is not somebody here who may make a second check.';
  return checkedBy === undefined ? [] : [{ staff: checkedBy, field: `${path}.body.checkedBy`, says }];
}
