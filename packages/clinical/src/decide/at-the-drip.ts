/** What the acts at the drip share: who is here, and what each writes. */
import type { KindName } from '../kinds/index.ts';
import type { Draft } from '../ledger/entry.ts';
import { subject } from '../ledger/subject.ts';
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { type Visit, visitOn } from '../visit/visit.ts';
import type { ActNamed } from './act.ts';
import { checkCareGoesOn, checkKnown } from './check-care.ts';
import { draftNow } from './draft.ts';
import { patientIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

type OfInfusion = ActNamed<'start infusion' | 'pause infusion' | 'resume infusion' | 'finish infusion'>;

/** What every act at the chair needs first: a person who is here and not gone. */
export function atTheChair(
  act: OfInfusion | ActNamed<'give injection'>,
  now: Surroundings,
): { record: SubjectRecord; visit: Visit | undefined; refusals: Refusal[] } {
  const record = patientIn(now, act.patient);
  const refusals = [...checkKnown(record), ...checkCareGoesOn(record, undefined, now.today, now)];
  const visit = visitOn(record, now.today);
  if (visit === undefined)
    refusals.push(
      refusal('not-here', 'Nobody has recorded that this person arrived today.', {
        remedy: 'record the arrival first',
      }),
    );
  else if (visit.over) refusals.push(refusal('visit-over', 'They have gone home.'));
  return { record, visit, refusals };
}

export const notRunning = (says: string, remedy: string): Refusal => refusal('not-running', says, { remedy });

export const stepOf = <Kind extends KindName>(
  act: OfInfusion,
  kind: Kind,
  body: Fact<Kind>['body'],
  now: Surroundings,
): Draft => draftNow(subject('patient', act.patient), kind, body as never, now);
