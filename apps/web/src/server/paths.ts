/** Where the server answers what: the contract's own addresses, held to it by type and without its schemas in the bundle. */
import type { routes } from '@twelvemonth/exchange';
import type { z } from 'zod';

type Routes = typeof routes;
export type RouteName = keyof Routes;

export const paths = {
  status: '/api/status',
  firstAdministrator: '/api/first-administrator',
  signIn: '/api/sign-in',
  signOut: '/api/sign-out',
  me: '/api/me',
  act: '/api/acts',
  people: '/api/people',
  search: '/api/search',
  person: '/api/people/:patient',
  readinessOn: '/api/people/:patient/readiness',
  bookingCheck: '/api/people/:patient/booking-check',
  visit: '/api/people/:patient/visit',
  supports: '/api/people/:patient/supports',
  readPack: '/api/people/:patient/pack',
  review: '/api/people/:patient/review',
  deciding: '/api/people/:patient/deciding',
  patientPack: '/api/people/:patient/patient-pack',
  patientPackDocument: '/api/people/:patient/patient-pack/document',
  letter: '/api/people/:patient/letter',
  notes: '/api/people/:patient/notes',
  letters: '/api/letters',
  lettersOfPerson: '/api/people/:patient/letters',
  writtenLetter: '/api/people/:patient/written-letter',
  reminders: '/api/reminders',
  sendReminder: '/api/reminders/send',
  ownPage: '/api/people/:patient/own-page',
  handOverPage: '/api/own-page',
  questionsOnPaper: '/api/people/:patient/own-page/questions',
  lettersDocument: '/api/letters/document',
  calendar: '/api/people/:patient/calendar',
  letterDocument: '/api/people/:patient/letters/:entry/document',
  today: '/api/today',
  sessions: '/api/sessions',
  session: '/api/sessions/:session',
  sessionDay: '/api/sessions/:session/day',
  sessionPlanning: '/api/sessions/:session/planning',
  daySheet: '/api/sessions/:session/day-sheet',
  aftercare: '/api/aftercare',
  aftercareOfPerson: '/api/people/:patient/aftercare',
  cohort: '/api/cohort',
  comingBack: '/api/people/:patient/coming-back',
  reactionReport: '/api/people/:patient/reaction-report',
  fill: '/api/fill',
  standby: '/api/sessions/:session/standby',
  lookAhead: '/api/look-ahead',
  adviceLine: '/api/advice-line',
  recall: '/api/recall',
  workList: '/api/work',
  pharmacy: '/api/pharmacy',
  stock: '/api/stock',
  trace: '/api/stock/trace',
  batchesOfPerson: '/api/people/:patient/batches',
  dryRun: '/api/import/dry-run',
  accept: '/api/import/accept',
  waitingRows: '/api/import/waiting',
  settleRow: '/api/import/settle',
  protocols: '/api/protocols',
  protocolDraft: '/api/protocols/draft',
  flips: '/api/protocols/flips',
  whatIf: '/api/protocols/what-if',
  replay: '/api/protocols/replay',
  settings: '/api/settings',
  addStaff: '/api/staff',
  addStaffForToday: '/api/staff/for-today',
  enrolDevice: '/api/devices',
  withdrawDevice: '/api/devices/withdraw',
  mySignature: '/api/my-signature',
  setMySignature: '/api/my-signature',
  signing: '/api/people/:patient/signing',
  changeStaff: '/api/staff/change',
  events: '/api/events',
  openApi: '/api/openapi.json',
} as const satisfies { readonly [Name in RouteName]: Routes[Name]['path'] };

export type AnswerOf<Name extends RouteName> = Routes[Name] extends { answer: infer Schema extends z.ZodType }
  ? z.infer<Schema>
  : undefined;
export type BodyOf<Name extends RouteName> = Routes[Name] extends { body: infer Schema extends z.ZodType }
  ? z.input<Schema>
  : undefined;

export type Asked = Readonly<Record<string, string | number | undefined>>;

/** Puts values into `:places` of a path; what has no place becomes the query. */
export function addressOf(name: RouteName, asked: Asked = {}): string {
  const query = new URLSearchParams();
  let address: string = paths[name];
  for (const [key, value] of Object.entries(asked)) {
    if (value === undefined) continue;
    if (address.includes(`:${key}`)) address = address.replace(`:${key}`, encodeURIComponent(String(value)));
    else query.set(key, String(value));
  }
  const text = query.toString();
  return text === '' ? address : `${address}?${text}`;
}
