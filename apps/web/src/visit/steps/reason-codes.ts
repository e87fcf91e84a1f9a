/** Why a dose was put off or a prescriber asked, from the decision's own schema. */
import { type Shape, shapeOf } from '../../kind-form/shape.ts';
import { kindNamed } from '@twelvemonth/clinical';

const shape = shapeOf(kindNamed('go-decision').body);
const field: Shape | undefined =
  shape?.is === 'group' ? shape.fields.find(({ key }) => key === 'reasonCode')?.shape : undefined;

export const reasonCodes = (field?.is === 'choice' ? field.values : []).map((value) => ({ value }));
