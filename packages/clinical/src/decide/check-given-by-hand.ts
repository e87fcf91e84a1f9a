/** A dose written by hand for somebody who is, or was, here that day. */
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import type { Visit } from '../visit/visit.ts';
import { checkGiver } from './check-giver.ts';
import { orderedRegimen } from './ordered-medicine.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import { checkGo, outOfOrder } from './step-order.ts';
import type { Surroundings } from './surroundings.ts';

/** What is not dripped is written as a dose given. While the person is here for it, that needs the decision to go like a drip. */
export function checkGivenByHand(
  { body, on }: Fact<'dose'>,
  record: SubjectRecord,
  visit: Visit | undefined,
  now: Surroundings,
): readonly Refusal[] {
  if (visit === undefined || body.setting !== 'this service') return [];
  if (body.medicine === 'zoledronic acid 5 mg') return checkDripped(visit);
  if (visit.over || on !== now.today) return [];
  if (visit.injection !== undefined && visit.dose === undefined)
    return outOfOrder(
      'An injection is prepared, checked and given step by step.',
      'go on with the visit: it is written there',
    );
  const refusals = [...checkGo(visit)];
  const ordered = orderedRegimen(record, now)?.medicine;
  if (ordered !== undefined && ordered !== body.medicine) {
    refusals.push(
      refusal('wrong-product', `Ordered is ${ordered}, not ${body.medicine}.`, {
        field: 'line.body.medicine',
        remedy: 'check what was given; tell the nurse in charge if it was not what is ordered',
      }),
    );
  }
  return [...refusals, ...checkGiver(record, on, now)];
}

/**
 * The drip of a visit is what its steps made: a dose in one line would pass over the go, the pack, the second check and the running
 * time. Where its end was withdrawn it is finished once more.
 */
const checkDripped = ({ over }: Visit): readonly Refusal[] =>
  outOfOrder(
    'A drip of this visit is prepared, checked, started and finished step by step.',
    `${over ? 'withdraw “left” with the reason, then ' : ''}go on with the visit; what ran on paper is typed in there, with its times`,
  );
