/** The packs a unit keeps, as its pharmacist listed them last. */
import type { BodyOfKind } from '../kinds/index.ts';
import { newestWritten } from '../record/newest-written.ts';
import type { SubjectRecord } from '../record/patient-record.ts';

export type Formulary = BodyOfKind<'formulary'>;

/** Nobody has listed a pack: nothing can be scanned, and the record says that packs were typed. */
export const noFormulary: Formulary = { packs: [], packsCarrySerial: false };

export const formularyOf = (unit: SubjectRecord): Formulary => newestWritten(unit, 'formulary')?.body ?? noFormulary;
