/** The line under a person's name: what must be known before anything is done for them. */
import type { PersonView } from '@twelvemonth/exchange';
import { dotted, unbroken } from '../words/texts.ts';

export const headerWords = (data: PersonView): string =>
  dotted(
    `born ${data.bornInWords}${data.age === undefined ? '' : ` (${data.age})`}`,
    unbroken(data.number),
    data.allergies,
    data.armToAvoid !== undefined &&
      `use the ${data.armToAvoid === 'left' ? 'right' : 'left'} arm, avoid the ${data.armToAvoid}${data.armToAvoidBecause === undefined ? '' : ` (${data.armToAvoidBecause})`}`,
    ...data.needs,
    data.formerNames.length > 0 && `formerly ${data.formerNames.join(', ')}`,
    data.telephone === undefined ? undefined : unbroken(data.telephone),
    data.familyDoctor,
  );
