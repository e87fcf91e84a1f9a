/** What the screens read. Thin: find the person or the unit, note who looked, answer with a view. */
import { type Day, isPlainDate, parseDay } from '@twelvemonth/clinical';
import { readinessToWire } from '@twelvemonth/exchange';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { AtHand } from '../at-hand.ts';
import { daySheetDocumentOf } from '../documents/day-sheet.ts';
import { letterDocumentOf, reviewLetterDocumentOf } from '../documents/letter.ts';
import { patientPackDocumentOf, patientPackViewOf } from '../documents/patient-pack.ts';
import { reactionReportOf } from '../documents/report-of-reaction.ts';
import { notesDocumentOf } from '../documents/notes.ts';
import { ownPageViewOf, questionsDocumentOf } from '../views/own-page.ts';
import { calendarFileOf } from '../letters/calendar.ts';
import {
  letterDocumentOfEntry,
  lettersOfPersonViewOf,
  lettersToSendDocument,
  lettersViewOf,
} from '../letters/views.ts';
import { writtenLetterViewOf } from '../letters/written.ts';
import { remindersOf } from '../messages/reminders.ts';
import { Refused, notHere } from '../problem.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { serveAnyone, serveRoute, usualQuery } from '../serve-route.ts';
import { mayAsk } from '../who-may-read.ts';
import type { SignedIn } from '../sign-in/accounts.ts';
import { aftercareOfPersonViewOf, aftercareViewOf } from '../views/aftercare.ts';
import { cohortViewOf } from '../views/cohort.ts';
import { comingBackViewOf } from '../views/coming-back.ts';
import { adviceLineOf } from '../views/advice-line.ts';
import { bookingCheckOf } from '../views/booking-check.ts';
import { fillViewOf, standbyViewOf } from '../views/fill.ts';
import { lookAheadOf } from '../views/look-ahead.ts';
import { packReadingOf } from '../views/pack.ts';
import { decidingViewOf } from '../views/deciding.ts';
import { foundIn, peopleListOf } from '../views/people-list.ts';
import { personViewOf } from '../views/person.ts';
import { pharmacyOf } from '../views/pharmacy.ts';
import { protocolViewOf } from '../views/protocols.ts';
import { recallOf } from '../views/recall.ts';
import { reviewViewOf } from '../views/review.ts';
import { sessionDayViewOf } from '../views/session-day.ts';
import { sessionPlanningViewOf } from '../views/session-planning.ts';
import { sessionViewOf, sessionsOf } from '../views/sessions.ts';
import { settingsOf } from '../views/settings.ts';
import { statusOf } from '../views/status.ts';
import { stockOf } from '../views/stock.ts';
import { supportsViewOf } from '../views/supports.ts';
import { sharedToday } from '../views/shared-today.ts';
import { batchesOfPersonOf, traceOf } from '../views/trace.ts';
import { visitViewOf } from '../views/visit.ts';
import { workListOf } from '../views/work-list.ts';

export function serveReading(app: FastifyInstance, atHand: AtHand): void {
  const { people } = atHand;

  /** The person asked about; the look is noted before anything is shown. */
  async function personAsked(
    asked: { params: { readonly patient: string }; who: SignedIn; request: FastifyRequest },
    what: string,
  ): Promise<Person | Refused> {
    const person = await people.of(asked.params.patient);
    if (person === undefined) return notHere('person');
    try {
      await atHand.looks.looked(asked.who.member.staff, person.patient, what);
    } catch (cause) {
      // A broken disk must not keep a nurse from the notes.
      asked.request.log.error({ err: cause, what }, 'a look could not be written down');
    }
    return person;
  }

  async function unitAsked({
    request,
    who,
  }: {
    readonly request: FastifyRequest;
    readonly who: SignedIn;
  }): Promise<UnitNow | Refused> {
    const unit = usualQuery.parse(request.query).unit ?? who.member.unit;
    const found = unit === undefined ? (await atHand.units.all())[0] : await atHand.units.named(unit);
    return found ?? notHere('unit');
  }

  serveAnyone(app, 'status', async () => statusOf(atHand));

  serveRoute(app, atHand, 'people', async ({ query }) => peopleListOf(await people.all(), query));
  serveRoute(app, atHand, 'search', async ({ body }) => foundIn(await people.all(), body.text));

  serveRoute(app, atHand, 'person', async (asked) => {
    const person = await personAsked(asked, 'person');
    const on = dateAsked(asked.request.query);
    if (person instanceof Refused) return person;
    return on instanceof Refused ? on : personViewOf(atHand, person, on, asked.who.member.staff);
  });
  serveRoute(app, atHand, 'readinessOn', async (asked) => {
    const person = await personAsked(asked, 'readiness');
    const on = dateAsked(asked.request.query);
    if (person instanceof Refused) return person;
    if (on instanceof Refused) return on;
    const view = person.view(on ?? person.today);
    return view === undefined
      ? new Refused(409, 'no-protocol', 'No protocol is in force at this unit: nothing can be said about a dose.')
      : readinessToWire(view);
  });
  serveRoute(app, atHand, 'bookingCheck', async (asked) => {
    const person = await personAsked(asked, 'booking check');
    const on = dateAsked(asked.request.query);
    if (person instanceof Refused) return person;
    return on instanceof Refused
      ? on
      : bookingCheckOf(atHand, person, usualQuery.parse(asked.request.query), asked.who.member.roles);
  });
  serveRoute(app, atHand, 'visit', async (asked) => {
    const person = await personAsked(asked, 'visit');
    const on = dateAsked(asked.request.query);
    if (person instanceof Refused) return person;
    return on instanceof Refused ? on : visitViewOf(atHand, person, on);
  });
  serveRoute(app, atHand, 'readPack', async (asked) => {
    const person = await personAsked(asked, 'pack');
    return person instanceof Refused ? person : packReadingOf(atHand, person, asked.body.code);
  });
  serveRoute(app, atHand, 'review', async (asked) => {
    const person = await personAsked(asked, 'review');
    return person instanceof Refused ? person : reviewViewOf(person);
  });
  serveRoute(app, atHand, 'deciding', async (asked) => {
    const person = await personAsked(asked, 'deciding together');
    return person instanceof Refused ? person : decidingViewOf(atHand, person);
  });
  serveRoute(app, atHand, 'patientPack', async (asked) => {
    const person = await personAsked(asked, 'patient pack');
    return person instanceof Refused ? person : patientPackViewOf(person, asked.query);
  });
  serveRoute(app, atHand, 'patientPackDocument', async (asked) => {
    const person = await personAsked(asked, 'patient pack');
    return person instanceof Refused ? person : sendDocument(asked.reply, patientPackDocumentOf(person, asked.query));
  });
  serveRoute(app, atHand, 'letter', async (asked) => {
    const person = await personAsked(asked, 'letter');
    return person instanceof Refused
      ? person
      : sendDocument(
          asked.reply,
          (usualQuery.parse(asked.request.query).about === 'review' ? reviewLetterDocumentOf : letterDocumentOf)(
            atHand,
            person,
            asked.who.member,
          ),
        );
  });
  const reader = ({ member }: SignedIn) => ({ name: member.name, role: member.roles[0] ?? '' });
  serveRoute(app, atHand, 'letters', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : lettersViewOf(atHand, await people.all(), unit, reader(asked.who));
  });
  serveRoute(app, atHand, 'lettersDocument', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : sendDocument(asked.reply, lettersToSendDocument(await people.all(), unit));
  });
  serveRoute(app, atHand, 'reminders', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : remindersOf(atHand, await people.all(), unit);
  });
  serveRoute(app, atHand, 'ownPage', async (asked) => {
    const person = await personAsked(asked, 'own page');
    return person instanceof Refused ? person : ownPageViewOf(atHand, person);
  });
  serveRoute(app, atHand, 'questionsOnPaper', async (asked) => {
    const person = await personAsked(asked, 'questions on paper');
    return person instanceof Refused ? person : sendDocument(asked.reply, questionsDocumentOf(person));
  });
  serveRoute(app, atHand, 'supports', async (asked) => {
    const person = await personAsked(asked, 'bookings');
    return person instanceof Refused ? person : supportsViewOf(person);
  });
  serveRoute(app, atHand, 'lettersOfPerson', async (asked) => {
    const person = await personAsked(asked, 'letters');
    return person instanceof Refused ? person : lettersOfPersonViewOf(atHand, person, reader(asked.who));
  });
  serveRoute(app, atHand, 'writtenLetter', async (asked) => {
    const person = await personAsked(asked, 'letter');
    return person instanceof Refused ? person : writtenLetterViewOf(person, asked.query, reader(asked.who));
  });
  serveRoute(app, atHand, 'calendar', async (asked) => {
    const person = await personAsked(asked, 'calendar file');
    if (person instanceof Refused) return person;
    const file = calendarFileOf(person, atHand.clock.now());
    return file instanceof Refused
      ? file
      : asked.reply
          .header('content-disposition', 'attachment; filename="visit.ics"')
          .type('text/calendar; charset=utf-8')
          .serializer(String)
          .send(file);
  });
  serveRoute(app, atHand, 'letterDocument', async (asked) => {
    const person = await personAsked(asked, 'letter');
    return person instanceof Refused
      ? person
      : sendDocument(asked.reply, letterDocumentOfEntry(person, asked.params.entry));
  });
  serveRoute(app, atHand, 'notes', async (asked) => {
    const person = await personAsked(asked, 'notes');
    return person instanceof Refused
      ? person
      : sendDocument(asked.reply, await notesDocumentOf(atHand, person, asked.who.member));
  });

  const today = sharedToday(atHand);
  serveRoute(app, atHand, 'today', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : today(unit);
  });
  serveRoute(app, atHand, 'sessions', async ({ query }) => ({ sessions: await sessionsOf(atHand, query) }));
  serveRoute(
    app,
    atHand,
    'session',
    async ({ params }) => (await sessionViewOf(atHand, params.session)) ?? notHere('session'),
  );
  serveRoute(
    app,
    atHand,
    'sessionDay',
    async ({ params }) => (await sessionDayViewOf(atHand, params.session)) ?? notHere('session'),
  );
  serveRoute(
    app,
    atHand,
    'sessionPlanning',
    async ({ params }) => (await sessionPlanningViewOf(atHand, params.session)) ?? notHere('session'),
  );
  serveRoute(app, atHand, 'daySheet', async ({ params, reply }) =>
    sendDocument(reply, (await daySheetDocumentOf(atHand, params.session)) ?? notHere('session')),
  );
  serveRoute(app, atHand, 'fill', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : fillViewOf(atHand, unit);
  });
  serveRoute(
    app,
    atHand,
    'standby',
    async ({ params }) => (await standbyViewOf(atHand, params.session)) ?? notHere('session'),
  );
  serveRoute(app, atHand, 'lookAhead', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : lookAheadOf(atHand, unit);
  });
  serveRoute(app, atHand, 'recall', async ({ request }) =>
    recallOf(await people.all(), usualQuery.parse(request.query).unit),
  );

  serveRoute(app, atHand, 'workList', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : workListOf(await people.all(), unit, asked.query.what);
  });
  serveRoute(app, atHand, 'pharmacy', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : pharmacyOf(atHand, unit, asked.who.member.staff);
  });
  serveRoute(app, atHand, 'aftercare', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : aftercareViewOf(atHand, await people.all(), unit);
  });
  serveRoute(app, atHand, 'aftercareOfPerson', async (asked) => {
    const person = await personAsked(asked, 'aftercare');
    return person instanceof Refused ? person : aftercareOfPersonViewOf(atHand, person);
  });
  serveRoute(app, atHand, 'cohort', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : cohortViewOf(await people.all(), unit, asked.query.year);
  });
  serveRoute(app, atHand, 'comingBack', async (asked) => {
    const person = await personAsked(asked, 'coming back');
    return person instanceof Refused ? person : comingBackViewOf(person);
  });
  serveRoute(app, atHand, 'reactionReport', async (asked) => {
    const person = await personAsked(asked, 'report of a reaction');
    return person instanceof Refused
      ? person
      : reactionReportOf(atHand, person, asked.query.reaction, asked.who.member);
  });

  serveRoute(app, atHand, 'adviceLine', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : adviceLineOf(atHand, unit);
  });
  serveRoute(app, atHand, 'stock', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused ? unit : stockOf(atHand, unit);
  });
  serveRoute(app, atHand, 'trace', async ({ query }) => traceOf(atHand, query.batch));
  serveRoute(app, atHand, 'batchesOfPerson', async (asked) => {
    const person = await personAsked(asked, 'batches');
    return person instanceof Refused ? person : batchesOfPersonOf(atHand, person);
  });

  serveRoute(app, atHand, 'protocols', async (asked) => {
    const unit = await unitAsked(asked);
    return unit instanceof Refused
      ? unit
      : protocolViewOf(unit, atHand, { readsPeople: mayAsk('person', asked.who.member.roles) });
  });
  serveRoute(app, atHand, 'settings', async () => settingsOf(atHand));
}

function dateAsked(asked: unknown): Day | undefined | Refused {
  const { on } = usualQuery.parse(asked);
  if (on === undefined) return undefined;
  return isPlainDate(on) ? parseDay(on) : missingInQuery('on', 'A date that exists, written YYYY-MM-DD.');
}

const missingInQuery = (field: string, says: string): Refused =>
  new Refused(422, 'field-wrong', says, { reasons: [{ name: 'field-wrong', says, field }] });

/** A document stands alone: nothing in it runs, and nothing is loaded from anywhere. */
function sendDocument(reply: FastifyReply, html: string | Refused): FastifyReply | Refused {
  if (html instanceof Refused) return html;
  return reply
    .header(
      'content-security-policy',
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'self'; sandbox allow-same-origin allow-modals",
    )
    .type('text/html; charset=utf-8')
    .serializer(String)
    .send(html);
}
