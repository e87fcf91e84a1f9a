/** A unit as it stands, as the entry has it: what a form changes is put over this, and the rest stays. */
import type { PlainDate } from '@twelvemonth/clinical';
import type { UnitView } from '@twelvemonth/exchange';
import type { BodyOf } from '../server/paths.ts';

type SetUnit = Extract<BodyOf<'act'>['act'], { readonly name: 'set unit' }>;

export function unitBodyOf(unit: UnitView): SetUnit['body'] {
  const {
    unit: _id,
    protocolVersion: _version,
    protocolReviewBy: _review,
    protocolUnsigned: _unsigned,
    ...body
  } = unit;
  return { ...body, closedDays: body.closedDays as PlainDate[] };
}
