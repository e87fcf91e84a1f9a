/** What is ordered today, and whether the drip of this unit is for it. */
import { protocolFor } from '../course/prescribed.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import type { Regimen } from '../protocol/regimen.ts';
import { injectionOf } from '../kinds/products.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import type { Visit } from '../visit/visit.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

/** The regimen ordered today; undefined without a protocol in force. */
export function orderedRegimen(record: SubjectRecord, now: Surroundings): Regimen | undefined {
  const protocol = now.context === undefined ? undefined : protocolInForceOn(now.context.protocols, now.today);
  return protocol === undefined ? undefined : protocolFor(protocol, record, now.today).regimen;
}

/** The go was given by the rules of the ordered medicine: the drip of zoledronic acid 5 mg is run for no other order. */
export function checkDripIsOrdered(record: SubjectRecord, now: Surroundings, field?: string): readonly Refusal[] {
  const regimen = orderedRegimen(record, now);
  if (regimen === undefined || regimen.medicine === 'zoledronic acid 5 mg') return [];
  return [
    refusal('wrong-product', `Ordered is ${regimen.medicine}; this is the infusion of zoledronic acid 5 mg.`, {
      ...(field === undefined ? {} : { field }),
      remedy: 'give what is ordered and record it as a dose given, or ask the prescriber for another prescription',
    }),
  ];
}

/** What a go today is for, where what is ordered is injected here. */
export function injectionToGive(record: SubjectRecord, now: Surroundings): Visit['injection'] {
  const regimen = orderedRegimen(record, now);
  if (regimen === undefined || regimen.given !== 'injection' || injectionOf(regimen.medicine) === undefined)
    return undefined;
  return { medicine: regimen.medicine, checkedByAnother: regimen.secondCheck !== 'not asked for' };
}

/** The order may have been changed since the go: what is prepared and given is what the go was for, and is still ordered. */
export function checkStillOrdered(
  record: SubjectRecord,
  { injection }: Visit,
  now: Surroundings,
  field?: string,
): readonly Refusal[] {
  if (injection === undefined) return checkDripIsOrdered(record, now, field);
  const ordered = orderedRegimen(record, now)?.medicine;
  return ordered === undefined || ordered === injection.medicine
    ? []
    : [
        refusal('wrong-product', `Ordered is ${ordered}; the go was for ${injection.medicine}.`, {
          ...(field === undefined ? {} : { field }),
          remedy: 'withdraw the decision with the reason, and decide by the order that stands',
        }),
      ];
}
