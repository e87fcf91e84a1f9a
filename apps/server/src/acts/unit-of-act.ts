/** The unit an act is judged by, as it stands now. */
import { type Act, isSubjectOf, judgedBy, sessionOf, subjectId, unitOfPatient, visitOn } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import type { UnitNow } from '../register/units.ts';

export async function unitOfAct(
  act: Act,
  { notes, units }: Pick<AtHand, 'notes' | 'units'>,
): Promise<UnitNow | undefined> {
  const ofSession = async (session: string): Promise<UnitNow | undefined> => {
    const list = sessionOf(await notes.of('session', session));
    return list === undefined ? undefined : units.named(list.unit);
  };
  const by = judgedBy(act);
  if (by === undefined) return (await units.all())[0];
  if (isSubjectOf('unit', by)) return units.named(subjectId(by));
  if (isSubjectOf('session', by)) return ofSession(subjectId(by));
  const record = await notes.of('patient', subjectId(by));
  const own = await units.named(unitOfPatient(record));
  // The visit of today is judged by the unit where the person is, also when another unit looks after them.
  const here = own === undefined ? undefined : visitOn(record, own.today)?.arrived.body.session;
  return (here === undefined ? undefined : await ofSession(here)) ?? own;
}
