/** Who works in Marlowe Vale. All invented. One person may hold several roles; each act is signed in one. */
import type { Author, Role } from '@twelvemonth/clinical';

export type DemoStaff = {
  /** Author of entries. */
  readonly staff: string;
  readonly username: string;
  readonly name: string;
  readonly roles: readonly Role[];
  /** Home unit; absent: both. */
  readonly unit?: UnitId;
};
export type UnitId = 'thornbeck' | 'saltmere';

const person = (name: string, roles: readonly Role[], unit?: UnitId): DemoStaff => {
  const plain = name.replace(/^Dr /, '').toLowerCase();
  return {
    staff: plain.replace(/\s+/g, '-'),
    username: plain.replace(/\s+/g, '.'),
    name,
    roles,
    ...(unit === undefined ? {} : { unit }),
  };
};

export const demoStaff: readonly DemoStaff[] = [
  person('Imre Sandoval', ['nurse in charge', 'nurse'], 'thornbeck'),
  person('Dana Whitlock', ['nurse'], 'thornbeck'),
  person('Teodora Linwood', ['nurse in charge', 'nurse'], 'thornbeck'),
  person('Casimir Holt', ['nurse'], 'thornbeck'),
  person('Maren Oakshott', ['nurse in charge', 'nurse'], 'saltmere'),
  person('Jonah Pellow', ['nurse in charge', 'nurse'], 'saltmere'),
  person('Ffion Tarrant', ['nurse'], 'saltmere'),
  person('Dr Halina Quillfeather', ['prescriber']),
  person('Dr Osric Benbow', ['prescriber']),
  person('Priya Lanchester', ['pharmacist']),
  person('Colm Aldersey', ['pharmacist']),
  person('Bettina Rowe', ['clerk'], 'thornbeck'),
  person('Gwil Hartnoll', ['clerk'], 'saltmere'),
  person('Sunniva Drake', ['assistant'], 'thornbeck'),
  person('Tobias Fennimore', ['assistant'], 'saltmere'),
  person('Margit Coldwell', ['service lead']),
  person('Edwin Sallowby', ['auditor']),
  person('Nia Thackerby', ['administrator']),
];

/** Someone of a unit who holds a role, the `turn`-th of them, in that role. */
export function inRole(role: Role, unit: UnitId, turn: number): Author {
  const able = demoStaff.filter((one) => one.roles.includes(role) && (one.unit === undefined || one.unit === unit));
  const chosen = able[turn % able.length];
  if (chosen === undefined) throw new RangeError(`nobody at ${unit} is a ${role}`);
  return { staff: chosen.staff, role };
}

/** Everyone who may give medicines at a unit, in their plainest role. */
export const nursesAt = (unit: UnitId): readonly Author[] =>
  demoStaff
    .filter((one) => one.unit === unit && one.roles.includes('nurse'))
    .map(({ staff }): Author => ({ staff, role: 'nurse' }));
