/**
 * A dose given at home, dripped or injected: whoever wrote it gave it, another registered person made the second check, and where
 * that other one did not go along the protocol has to let one practitioner go alone. Of an injection nobody checks by another
 * person's eyes anywhere, by the protocol, it is not asked at home either.
 * What was given otherwise is still written, as an incident:
 * a dose nobody wrote down is given twice.
 */
import type { Fact, SubjectRecord } from '../record/patient-record.ts';
import { protocolInForceOn } from '../protocol/in-force.ts';
import { isTakenDaily } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import { checkNotExceptionAuthor } from './check-giver.ts';
import { fieldWrong } from './check-fields.ts';
import { type Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Surroundings } from './surroundings.ts';

type Dose = Fact<'dose'>;

/** What is taken daily at home nobody gives. */
const isHomeDose = ({ body: { setting, medicine } }: Pick<Dose, 'body'>): boolean =>
  setting === 'home' && !isTakenDaily(medicine);

/** Unless every regimen of it says that no other person checks it. */
function asksForCheck({ body: { medicine } }: Pick<Dose, 'body'>, { sheet }: Protocol): boolean {
  const regimens = sheet.regimens.filter((regimen) => regimen.medicine === medicine);
  return regimens.length === 0 || regimens.some(({ secondCheck }) => secondCheck !== 'not asked for');
}

const protocolOn = ({ on }: Pick<Dose, 'on'>, { context }: Surroundings): Protocol | undefined =>
  context === undefined ? undefined : protocolInForceOn(context.protocols, on);

const remedy =
  'two registered people go, or it is given at the unit; a telephone call is no check. If it was given so all the same, write under "incident" what happened and whom you told';

/** Of a day before the unit had a protocol it is history, and nobody asks. */
export function checkHomeDose(dose: Dose, record: SubjectRecord, path: string, now: Surroundings): readonly Refusal[] {
  const protocol = protocolOn(dose, now);
  const { checkedBy, checkedWhen, incident } = dose.body;
  if (!isHomeDose(dose)) {
    return checkedBy === undefined && checkedWhen === undefined
      ? []
      : [fieldWrong(`${path}.checkedBy`, 'a check at home, of what nobody gave at home', 'leave it empty')];
  }
  if (checkedBy === now.by.staff)
    return [
      refusal('checker-is-preparer', 'Whoever writes a dose given at home gave it: the second check is another’s.', {
        field: `${path}.checkedBy`,
        remedy: 'name who checked it; if nobody did, leave it empty and write under "incident" what happened',
      }),
    ];
  const author =
    checkedBy === undefined ? [] : checkNotExceptionAuthor(record, 'makes the second check', now, checkedBy);
  if (protocol === undefined || incident !== undefined || !asksForCheck(dose, protocol)) return author;
  if (checkedBy === undefined)
    return [fieldWrong(`${path}.checkedBy`, 'nobody is named who made the second check', remedy)];
  if (checkedWhen === undefined)
    return [
      ...author,
      fieldWrong(
        `${path}.checkedWhen`,
        'it is not said when the second check was made',
        'there, or when it was prepared, before they left; a telephone call is no check',
      ),
    ];
  return checkedWhen === 'there, before it ran' || protocol.sheet.homeDoseByOne !== 'not allowed'
    ? author
    : [
        ...author,
        refusal('not-alone-at-home', `Protocol ${protocol.version} lets nobody give a dose at home alone.`, {
          field: `${path}.checkedWhen`,
          remedy,
        }),
      ];
}

/** Written before a check was asked for: it is corrected without one. */
export const isHomeDoseOfBefore = (dose: Dose): boolean =>
  isHomeDose(dose) && dose.body.checkedBy === undefined && dose.body.incident === undefined;

/** The entry keeps the rule it was given under, whatever was sent; a correction is written under the rule of that same day. */
export function underHomeRule(fact: Fact, now: Surroundings): Fact['body'] {
  if (fact.kind !== 'dose') return fact.body;
  const dose = fact as Dose;
  const { homeRule: _, ...body } = dose.body;
  const protocol = isHomeDose(dose) && body.checkedBy !== undefined ? protocolOn(dose, now) : undefined;
  return protocol === undefined
    ? body
    : { ...body, homeRule: { oneAlone: protocol.sheet.homeDoseByOne, protocolVersion: protocol.version } };
}

/** That they checked it is said by whoever is named, in their own name, signed with their own secret: nobody else's word is that proof. */
export function checkConfirmedByChecker(target: Fact | undefined, path: string, now: Surroundings): readonly Refusal[] {
  if (target?.kind !== 'dose' || target.id !== target.first) return [];
  const { checkedBy, incident } = (target as Dose).body;
  return checkedBy === undefined || incident !== undefined || checkedBy === now.by.staff
    ? []
    : [
        refusal('not-yours-to-do', 'That this dose at home was checked is confirmed by whoever made the check.', {
          field: path,
          remedy:
            'let them write it in their own name; if they did not check it, correct the dose: nobody named, and under "incident" what happened',
        }),
      ];
}
