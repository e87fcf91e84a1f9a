/**
 * Whoever is counted on works here, in the role that is said of them: an opening that names somebody nobody knows, or an assistant
 * as a nurse, would open a session with too few registered people. Hazards 25 and 35.
 */
import { type Act, type Role, registrants } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { Refused } from '../problem.ts';

type Named = {
  readonly staff: string;
  readonly field: string;
  /** One of these they hold. */
  readonly as: readonly Role[];
};

/** Undefined: nobody is named, or everybody who is works here and is what is said. */
export function namedStaffRefused(act: Act, { accounts }: Pick<AtHand, 'accounts'>): Refused | undefined {
  const reasons = namedIn(act).flatMap(({ staff, field, as }) => {
    const member = accounts.member(staff);
    if (member?.active === true && member.roles.some((role) => as.includes(role))) return [];
    const says =
      member?.active === true
        ? `${member.name} is not here as ${as.join(' or ')}.`
        : `${member?.name ?? `“${staff}”`} does not work here.`;
    return [
      {
        name: 'field-wrong',
        says,
        field,
        remedy: 'name who is here; an administrator says who works here, and as what',
      },
    ];
  });
  const [first] = reasons;
  return first === undefined ? undefined : new Refused(422, first.name, first.says, { reasons });
}

function namedIn(act: Act): readonly Named[] {
  switch (act.name) {
    case 'open session':
      return [
        ...act.body.present.map(({ staff, role }, index) => ({
          staff,
          field: `body.present.${index}.staff`,
          as: [role],
        })),
        ...act.body.secondCheckers.map((staff, index) => ({
          staff,
          field: `body.secondCheckers.${index}`,
          as: registrants,
        })),
      ];
    case 'record competence':
      return [{ staff: act.body.staff, field: 'body.staff', as: [act.body.role] }];
    default:
      return [];
  }
}
