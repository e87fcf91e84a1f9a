/** What the staff of a unit have shown they can do, by the newest word about each. */
import { type Day, day } from '../calendar/day.ts';
import type { BodyOfKind } from '../kinds/index.ts';
import { registrants } from '../ledger/role.ts';
import { asWritten } from '../record/newest-written.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

type Body = BodyOfKind<'competence'>;
export type Competence = Body['what'];

/** The newest word about one competence of one person; undefined: nothing was ever shown. */
export const competenceOf = (unit: SubjectRecord, staff: string, what: Competence): Body | undefined =>
  asWritten(unit, 'competence').findLast(({ body }) => body.staff === staff && body.what === what)?.body;

export function isInDate(unit: SubjectRecord, staff: string, what: Competence, on: Day): boolean {
  const shown = competenceOf(unit, staff, what);
  return shown !== undefined && day(shown.until) >= on;
}

/** A registered person who may give and check medicines into a vein that day. */
export const mayGiveAndCheck = (unit: SubjectRecord, staff: string, on: Day): boolean => {
  const shown = competenceOf(unit, staff, 'medicines into a vein');
  return shown !== undefined && registrants.includes(shown.role) && day(shown.until) >= on;
};

/** Whether the unit keeps competences at all: from then on a session is opened before a medicine runs. */
export const keepsCompetences = (unit: SubjectRecord): boolean => factsOf(unit, 'competence').length > 0;
