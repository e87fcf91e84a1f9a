/** The form of a new referral, and the act it becomes. Fields left empty are left out, so that "not known" stays not known. */
import { type DateOrder, readTypedDate } from '../words/dates.ts';

export type ReferralForm = {
  readonly given: string;
  readonly family: string;
  readonly former: string;
  readonly born: string;
  readonly sex: 'female' | 'male' | undefined;
  readonly number: string;
  readonly telephone: string;
  readonly address: string;
  readonly familyDoctor: string;
  readonly needs: string;
  readonly arm: 'left' | 'right' | undefined;
  readonly from: string;
  readonly reason: string;
  readonly tier: 'first in line' | 'high' | 'routine' | undefined;
  readonly unit: string | undefined;
  readonly on: string | undefined;
};

export const emptyReferral: ReferralForm = {
  given: '',
  family: '',
  former: '',
  born: '',
  sex: undefined,
  number: '',
  telephone: '',
  address: '',
  familyDoctor: '',
  needs: '',
  arm: undefined,
  from: '',
  reason: '',
  tier: undefined,
  unit: undefined,
  on: undefined,
};

const lines = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
const stated = <Value extends object>(values: Value): Partial<Value> =>
  Object.fromEntries(
    Object.entries(values).filter(
      ([, value]) => value !== undefined && value !== '' && !(Array.isArray(value) && value.length === 0),
    ),
  ) as Partial<Value>;

/** A birth date as typed: whole in any order of typing we read, else as it stands (a year, a year and month). */
const bornAsWritten = (typed: string, order: DateOrder): string =>
  readTypedDate(typed, '1999-12-31', order) ?? typed.trim();

/** What the server is asked; what is missing it names, field by field. */
export function registerAct(
  patient: string,
  form: ReferralForm,
  unit: string,
  notTheSameAs: readonly string[],
  order: DateOrder,
): object {
  const contact = stated({
    telephone: form.telephone,
    address: form.address,
    familyDoctor: form.familyDoctor,
    needs: lines(form.needs),
    armToAvoid: form.arm,
  });
  return {
    name: 'register',
    patient,
    identity: {
      given: form.given,
      family: form.family,
      born: bornAsWritten(form.born, order),
      number: form.number,
      ...stated({ formerNames: lines(form.former), sex: form.sex }),
    },
    ...(Object.keys(contact).length === 0 ? {} : { contact }),
    referral: { from: form.from, reason: form.reason, tier: form.tier, unit },
    on: form.on,
    ...(notTheSameAs.length === 0 ? {} : { notTheSameAs }),
  };
}
