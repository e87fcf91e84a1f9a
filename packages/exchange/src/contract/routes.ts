/**
 * The HTTP contract as one table: server, screen and command line read the same lines. Everything under /api; answers are
 * JSON as the schema says, refusals are RFC 9457 problems. Reading is GET, writing is POST /api/acts and the few below it.
 */
import { z } from 'zod';
import { aftercareOfPersonView, aftercareView, reactionReportQuery, reactionReportView } from './aftercare.ts';
import { cohortQuery, cohortView } from './cohort.ts';
import { comingBackView } from './coming-back.ts';
import { waitingCallsView } from './advice-line.ts';
import { decidingView } from './deciding.ts';
import { acceptAnswer, acceptBody, dryRunAnswer, importBody, settleRowBody, waitingRowsAnswer } from './import.ts';
import { fillView, standbyView } from './fill.ts';
import { lookAheadView } from './look-ahead.ts';
import { lettersOfPersonView, lettersView, writtenLetterQuery, writtenLetterView } from './letters.ts';
import { handOverPageAnswer, handOverPageBody, ownPageView } from './own-page.ts';
import { patientPackQuery, patientPackView } from './patient-pack.ts';
import { peopleAnswer, peopleQuery, personView, searchAnswer, searchBody } from './people.ts';
import { readinessView } from './readiness.ts';
import { remindersView, sendReminderAnswer, sendReminderBody } from './reminders.ts';
import { reviewView } from './review.ts';
import {
  actAnswer,
  actBody,
  enrolDeviceBody,
  enrolledDevice,
  mySignatureView,
  setMySignatureBody,
  signingView,
  withdrawDeviceBody,
  flipsAnswer,
  flipsBody,
  meView,
  protocolDraftBody,
  protocolView,
  replayAnswer,
  replayBody,
  settingsView,
  signInBody,
  statusView,
  whatIfAnswer,
  whatIfBody,
} from './service.ts';
import { changeStaffBody, firstAdministratorBody, newStaffBody, staffForTodayBody, staffView } from './staff.ts';
import { packReading, readPackBody } from './pack-reading.ts';
import { pharmacyView } from './pharmacy.ts';
import { workListQuery, workListView } from './work-list.ts';
import { recallAnswer } from './recall.ts';
import { bookingCheck, sessionDayView, sessionView, sessionsAnswer, sessionsQuery, todayView } from './sessions.ts';
import { visitView } from './visit.ts';
import { supportsView } from './supports.ts';
import { sessionPlanningView } from './session-planning.ts';

import { batchesOfPersonView, stockView, traceQuery, traceView } from './stock.ts';

export const routes = {
  status: { method: 'GET', path: '/api/status', answer: statusView },
  firstAdministrator: {
    method: 'POST',
    path: '/api/first-administrator',
    body: firstAdministratorBody,
    answer: meView,
  },
  signIn: { method: 'POST', path: '/api/sign-in', body: signInBody, answer: meView },
  signOut: { method: 'POST', path: '/api/sign-out' },
  me: { method: 'GET', path: '/api/me', answer: meView },

  act: { method: 'POST', path: '/api/acts', body: actBody, answer: actAnswer },

  people: { method: 'GET', path: '/api/people', query: peopleQuery, answer: peopleAnswer },
  search: { method: 'POST', path: '/api/search', body: searchBody, answer: searchAnswer },
  person: { method: 'GET', path: '/api/people/:patient', answer: personView },
  readinessOn: { method: 'GET', path: '/api/people/:patient/readiness', answer: readinessView },
  bookingCheck: { method: 'GET', path: '/api/people/:patient/booking-check', answer: bookingCheck },
  visit: { method: 'GET', path: '/api/people/:patient/visit', answer: visitView },
  supports: { method: 'GET', path: '/api/people/:patient/supports', answer: supportsView },
  readPack: { method: 'POST', path: '/api/people/:patient/pack', body: readPackBody, answer: packReading },
  review: { method: 'GET', path: '/api/people/:patient/review', answer: reviewView },
  deciding: { method: 'GET', path: '/api/people/:patient/deciding', answer: decidingView },
  patientPack: {
    method: 'GET',
    path: '/api/people/:patient/patient-pack',
    query: patientPackQuery,
    answer: patientPackView,
  },
  /** HTML documents. */
  patientPackDocument: {
    method: 'GET',
    path: '/api/people/:patient/patient-pack/document',
    query: patientPackQuery,
  },
  letter: { method: 'GET', path: '/api/people/:patient/letter' },
  notes: { method: 'GET', path: '/api/people/:patient/notes' },

  letters: { method: 'GET', path: '/api/letters', answer: lettersView },
  lettersOfPerson: { method: 'GET', path: '/api/people/:patient/letters', answer: lettersOfPersonView },
  writtenLetter: {
    method: 'GET',
    path: '/api/people/:patient/written-letter',
    query: writtenLetterQuery,
    answer: writtenLetterView,
  },
  reminders: { method: 'GET', path: '/api/reminders', answer: remindersView },
  sendReminder: { method: 'POST', path: '/api/reminders/send', body: sendReminderBody, answer: sendReminderAnswer },
  ownPage: { method: 'GET', path: '/api/people/:patient/own-page', answer: ownPageView },
  handOverPage: { method: 'POST', path: '/api/own-page', body: handOverPageBody, answer: handOverPageAnswer },
  /** An HTML document: the questions before a visit, on paper. */
  questionsOnPaper: { method: 'GET', path: '/api/people/:patient/own-page/questions' },
  /** HTML documents: every signed letter that waits to be sent, and one letter as it was kept. */
  lettersDocument: { method: 'GET', path: '/api/letters/document' },
  /** A calendar file (RFC 5545) of the booked place. */
  calendar: { method: 'GET', path: '/api/people/:patient/calendar' },
  letterDocument: { method: 'GET', path: '/api/people/:patient/letters/:entry/document' },

  today: { method: 'GET', path: '/api/today', answer: todayView },
  sessions: { method: 'GET', path: '/api/sessions', query: sessionsQuery, answer: sessionsAnswer },
  session: { method: 'GET', path: '/api/sessions/:session', answer: sessionView },
  sessionDay: { method: 'GET', path: '/api/sessions/:session/day', answer: sessionDayView },
  sessionPlanning: { method: 'GET', path: '/api/sessions/:session/planning', answer: sessionPlanningView },
  /** An HTML document: the list on paper with a card for each person. */
  daySheet: { method: 'GET', path: '/api/sessions/:session/day-sheet' },
  aftercare: { method: 'GET', path: '/api/aftercare', answer: aftercareView },
  aftercareOfPerson: { method: 'GET', path: '/api/people/:patient/aftercare', answer: aftercareOfPersonView },
  reactionReport: {
    method: 'GET',
    path: '/api/people/:patient/reaction-report',
    query: reactionReportQuery,
    answer: reactionReportView,
  },
  fill: { method: 'GET', path: '/api/fill', answer: fillView },
  standby: { method: 'GET', path: '/api/sessions/:session/standby', answer: standbyView },
  lookAhead: { method: 'GET', path: '/api/look-ahead', answer: lookAheadView },
  cohort: { method: 'GET', path: '/api/cohort', query: cohortQuery, answer: cohortView },
  comingBack: { method: 'GET', path: '/api/people/:patient/coming-back', answer: comingBackView },
  adviceLine: { method: 'GET', path: '/api/advice-line', answer: waitingCallsView },
  recall: { method: 'GET', path: '/api/recall', answer: recallAnswer },

  workList: { method: 'GET', path: '/api/work', query: workListQuery, answer: workListView },
  pharmacy: { method: 'GET', path: '/api/pharmacy', answer: pharmacyView },
  stock: { method: 'GET', path: '/api/stock', answer: stockView },
  trace: { method: 'GET', path: '/api/stock/trace', query: traceQuery, answer: traceView },
  batchesOfPerson: { method: 'GET', path: '/api/people/:patient/batches', answer: batchesOfPersonView },

  dryRun: { method: 'POST', path: '/api/import/dry-run', body: importBody, answer: dryRunAnswer },
  accept: { method: 'POST', path: '/api/import/accept', body: acceptBody, answer: acceptAnswer },
  waitingRows: { method: 'GET', path: '/api/import/waiting', answer: waitingRowsAnswer },
  settleRow: { method: 'POST', path: '/api/import/settle', body: settleRowBody, answer: acceptAnswer },

  protocols: { method: 'GET', path: '/api/protocols', answer: protocolView },
  protocolDraft: { method: 'POST', path: '/api/protocols/draft', body: protocolDraftBody, answer: actAnswer },
  whatIf: { method: 'POST', path: '/api/protocols/what-if', body: whatIfBody, answer: whatIfAnswer },
  replay: { method: 'POST', path: '/api/protocols/replay', body: replayBody, answer: replayAnswer },
  flips: { method: 'POST', path: '/api/protocols/flips', body: flipsBody, answer: flipsAnswer },

  settings: { method: 'GET', path: '/api/settings', answer: settingsView },
  addStaff: { method: 'POST', path: '/api/staff', body: newStaffBody, answer: staffView },
  addStaffForToday: { method: 'POST', path: '/api/staff/for-today', body: staffForTodayBody, answer: staffView },
  enrolDevice: { method: 'POST', path: '/api/devices', body: enrolDeviceBody, answer: enrolledDevice },
  withdrawDevice: { method: 'POST', path: '/api/devices/withdraw', body: withdrawDeviceBody, answer: z.object({}) },
  mySignature: { method: 'GET', path: '/api/my-signature', answer: mySignatureView },
  setMySignature: { method: 'POST', path: '/api/my-signature', body: setMySignatureBody, answer: mySignatureView },
  signing: { method: 'GET', path: '/api/people/:patient/signing', answer: signingView },
  changeStaff: { method: 'POST', path: '/api/staff/change', body: changeStaffBody, answer: staffView },

  /** Server-sent events of `commitEvent`. */
  events: { method: 'GET', path: '/api/events' },
  openApi: { method: 'GET', path: '/api/openapi.json' },
} as const;
