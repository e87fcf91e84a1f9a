/**
 * Who may ask which route: everything is refused that is not allowed here. Acts have a table of their own in the clinical
 * core (`rolesFor`); this one is about reading, and about the few writes that are not acts.
 *
 * An administrator runs the service and sees no patient. An auditor reads everything and writes nothing. A clerk books and
 * rings, and so sees the lists, a person's page and the notes a receptionist works with.
 */
import { type Role, careRoles, clinicalRoles, registrants } from '@twelvemonth/clinical';
import { routes } from '@twelvemonth/exchange';

export type RouteName = keyof typeof routes;
export type Allowed = 'anyone' | 'the first visitor' | readonly Role[];

const everyoneInCare: readonly Role[] = [...careRoles, 'service lead', 'auditor'];
const everyone: readonly Role[] = [...everyoneInCare, 'administrator'];
/** A report is a clinical person's to draft. */
const clinicalReaders: readonly Role[] = [...clinicalRoles, 'auditor'];
const importers: readonly Role[] = [...careRoles, 'service lead'];

export const whoMay: Readonly<Record<RouteName, Allowed>> = {
  status: 'anyone',
  openApi: 'anyone',
  signIn: 'anyone',
  /** Only while there is no account at all, and only from this machine. */
  firstAdministrator: 'the first visitor',
  signOut: everyone,
  me: everyone,
  events: everyone,

  /** The act itself says which of these may do it. */
  act: everyone,

  people: everyoneInCare,
  search: everyoneInCare,
  person: everyoneInCare,
  readinessOn: everyoneInCare,
  bookingCheck: everyoneInCare,
  visit: everyoneInCare,
  supports: everyoneInCare,
  readPack: registrants,
  review: everyoneInCare,
  deciding: everyoneInCare,
  patientPack: everyoneInCare,
  patientPackDocument: everyoneInCare,
  letter: everyoneInCare,
  notes: everyoneInCare,
  letters: everyoneInCare,
  lettersOfPerson: everyoneInCare,
  writtenLetter: everyoneInCare,
  reminders: everyoneInCare,
  sendReminder: careRoles,
  ownPage: everyoneInCare,
  handOverPage: careRoles,
  questionsOnPaper: everyoneInCare,
  lettersDocument: careRoles,
  calendar: careRoles,
  letterDocument: everyoneInCare,
  today: everyoneInCare,
  sessions: everyoneInCare,
  session: everyoneInCare,
  sessionDay: everyoneInCare,
  sessionPlanning: everyoneInCare,
  daySheet: everyoneInCare,
  aftercare: everyoneInCare,
  aftercareOfPerson: everyoneInCare,
  cohort: everyoneInCare,
  comingBack: everyoneInCare,
  reactionReport: clinicalReaders,
  fill: everyoneInCare,
  standby: everyoneInCare,
  /** Counts and rates; no patient. */
  lookAhead: everyoneInCare,
  adviceLine: everyoneInCare,
  recall: everyoneInCare,

  workList: everyoneInCare,
  pharmacy: everyoneInCare,
  /** Names batches, no patient. */
  stock: everyoneInCare,
  trace: everyoneInCare,
  batchesOfPerson: everyoneInCare,

  dryRun: importers,
  accept: careRoles,
  waitingRows: importers,
  settleRow: careRoles,

  /** The rule sheet holds no patient; comparing two sheets names patients. */
  protocols: everyone,
  protocolDraft: ['nurse in charge', 'prescriber', 'pharmacist', 'service lead'],
  flips: everyoneInCare,
  whatIf: everyoneInCare,
  replay: everyoneInCare,

  settings: ['administrator', 'service lead'],
  addStaff: ['administrator'],
  addStaffForToday: ['nurse in charge'],
  enrolDevice: ['administrator'],
  withdrawDevice: ['administrator'],
  mySignature: everyoneInCare,
  setMySignature: everyoneInCare,
  signing: everyoneInCare,
  changeStaff: ['administrator'],
};

export const mayAsk = (route: RouteName, roles: readonly Role[]): boolean => {
  const allowed = whoMay[route];
  return allowed === 'anyone' || (allowed !== 'the first visitor' && roles.some((role) => allowed.includes(role)));
};
