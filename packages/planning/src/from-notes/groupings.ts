/** Groups in which the waits are reported side by side: age, sex, needs on the day. Nobody is chosen by them. */
import { type Day, type SubjectRecord, ageOn, latest, parseDay } from '@twelvemonth/clinical';

/** How people are grouped, and the group of each. */
export type Grouping = { readonly by: string; readonly of: readonly string[] };

const olderFrom = 75;
const oldestFrom = 85;

function ageGroup(record: SubjectRecord, today: Day): string {
  const born = parseDay(latest(record, 'identity')?.body.born ?? '');
  if (born === undefined) return 'birth date not whole';
  const age = ageOn(born, today);
  if (age >= oldestFrom) return `${oldestFrom} and older`;
  return age >= olderFrom ? `${olderFrom} to ${oldestFrom - 1}` : `under ${olderFrom}`;
}

const sexGroup = (record: SubjectRecord): string => latest(record, 'identity')?.body.sex ?? 'not recorded';

const needGroup = (record: SubjectRecord): string =>
  (latest(record, 'contact')?.body.needs ?? []).length > 0 ? 'with needs on the day' : 'no need recorded';

export const groupingsOf = (records: readonly SubjectRecord[], today: Day): readonly Grouping[] => [
  { by: 'age', of: records.map((record) => ageGroup(record, today)) },
  { by: 'sex', of: records.map(sexGroup) },
  { by: 'needs', of: records.map(needGroup) },
];
