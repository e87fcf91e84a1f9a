/** How a letter is called in lists, and the entry that keeps it. */
import type { ActBody, WrittenLetterView } from '@twelvemonth/exchange';

type Which = Pick<WrittenLetterView, 'to' | 'about'>;

const names: Readonly<Record<string, string>> = {
  'patient/invitation': 'invitation',
  'patient/bloods needed': 'bloods needed',
  'patient/put off': 'why it was put off',
  'patient/no answer': 'please ring us',
  'patient/review': 'what the review decided',
  'patient/closing': 'end of care',
  'family doctor/dose given': 'to the family doctor: dose given',
  'family doctor/put off': 'to the family doctor: put off',
  'family doctor/review': 'to the family doctor: review',
  'family doctor/no answer': 'to the family doctor: cannot be reached',
  'family doctor/request': 'request to the family doctor',
  'dentist/request': 'request to the dentist',
  'other service/transfer': 'transfer, to be acknowledged',
};

export const letterName = ({ to, about }: Which): string => names[`${to}/${about}`] ?? `${about}, to the ${to}`;

type Act = ActBody['act'];
type Written = Pick<WrittenLetterView, 'patient' | 'to' | 'about' | 'sheet' | 'text' | 'chaseOn' | 'today'>;

const line = (patient: string, kind: string, body: object, effectiveAt: string): Act =>
  ({ name: 'record', patient, line: { kind, body, effectiveAt } }) as Act;

export const drafted = ({ patient, to, about, sheet, today }: Written): Act =>
  line(patient, 'letter-drafted', { to, about, sheet }, today);

export const signed = ({ patient, to, about, sheet, text, chaseOn, today }: Written, draft?: string): Act =>
  line(
    patient,
    'letter',
    {
      to,
      about,
      version: sheet.version,
      text,
      sheet,
      ...(draft === undefined ? {} : { draft }),
      ...(chaseOn === undefined ? {} : { chaseOn }),
    },
    today,
  );

export const sentBy = (
  { patient, entry }: { readonly patient: string; readonly entry: string },
  by: string,
  today: string,
): Act => line(patient, 'letter-sent', { letter: entry, by }, today);
