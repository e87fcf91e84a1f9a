/** What two people's notes say of each identifier, side by side. */
import { partialDateText } from '../calendar/partial-date.ts';
import { comparedBy } from '../kinds/same-person.ts';
import { digitsOf } from '../projection/fold-text.ts';
import { type SubjectRecord, latest } from './patient-record.ts';

export type Identifier = (typeof comparedBy)[number];
export type Compared = {
  readonly identifier: Identifier;
  /** As it is written; undefined: not recorded. */
  readonly these: string | undefined;
  readonly other: string | undefined;
  readonly says: 'the same' | 'differs' | 'not recorded in both';
};

export const sideBySide = (these: SubjectRecord, other: SubjectRecord): readonly Compared[] =>
  comparedBy.map((identifier) => {
    const [one, two] = [written(identifier, these), written(identifier, other)];
    return {
      identifier,
      these: one,
      other: two,
      says:
        one === undefined || two === undefined
          ? 'not recorded in both'
          : plain(identifier, one) === plain(identifier, two)
            ? 'the same'
            : 'differs',
    };
  });

function written(identifier: Identifier, record: SubjectRecord): string | undefined {
  const identity = latest(record, 'identity')?.body;
  const contact = latest(record, 'contact')?.body;
  switch (identifier) {
    case 'name':
      return identity === undefined ? undefined : `${identity.given} ${identity.family}`;
    case 'former name':
      return identity?.formerNames?.join(', ');
    case 'birth date':
      return identity === undefined ? undefined : partialDateText(identity.born);
    case 'number':
      return identity?.number;
    case 'address':
      return contact?.address;
    case 'telephone':
      return contact?.telephone;
    case 'family doctor':
      return contact?.familyDoctor;
  }
}

/** Capitals, spaces and, in numbers, everything but the figures make no difference. */
function plain(identifier: Identifier, text: string): string {
  const figures = identifier === 'number' || identifier === 'telephone' ? digitsOf(text) : '';
  return figures === '' ? text.trim().toLowerCase().replace(/\s+/g, ' ') : figures;
}
