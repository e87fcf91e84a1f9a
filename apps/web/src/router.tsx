/** Every screen and its address. Each is a piece of its own, fetched when it is first opened. */
import { createRootRoute, createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { cardHash } from './anaphylaxis/card-open.ts';
import { Frame } from './frame/Frame.tsx';
import { NotHere } from './frame/NotHere.tsx';
import { ScreenTrouble } from './frame/ScreenTrouble.tsx';

const text = (value: unknown): string | undefined => (typeof value === 'string' && value !== '' ? value : undefined);
/** Leaves out what is not there, so that addresses stay short. */
const present = <Key extends string>(values: Readonly<Record<Key, string | undefined>>): Partial<Record<Key, string>> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<Record<Key, string>>;

const root = createRootRoute({ component: Frame, notFoundComponent: NotHere, errorComponent: ScreenTrouble });
const at = { getParentRoute: () => root };

const today = createRoute({
  ...at,
  path: '/',
  validateSearch: (search: Record<string, unknown>): { whose?: 'mine' } =>
    search['whose'] === 'mine' ? { whose: 'mine' } : {},
  component: lazyRouteComponent(() => import('./today/TodayScreen.tsx'), 'TodayScreen'),
});
const people = createRoute({
  ...at,
  path: '/people',
  validateSearch: (search: Record<string, unknown>) =>
    present({ standing: text(search['standing']), verdict: text(search['verdict']), sort: text(search['sort']) }),
  component: lazyRouteComponent(() => import('./people/PeopleScreen.tsx'), 'PeopleScreen'),
});
const newPerson = createRoute({
  ...at,
  path: '/people/new',
  component: lazyRouteComponent(() => import('./people/NewPersonScreen.tsx'), 'NewPersonScreen'),
});
const person = createRoute({
  ...at,
  path: '/people/$patient',
  validateSearch: (search: Record<string, unknown>) =>
    present({
      record: text(search['record']),
      correct: text(search['correct']),
      about: text(search['about']),
      on: text(search['on']),
    }),
  component: lazyRouteComponent(() => import('./person/PersonScreen.tsx'), 'PersonScreen'),
});
const findOther = createRoute({
  ...at,
  path: '/people/$patient/compare',
  component: lazyRouteComponent(() => import('./person/one-or-two/CompareScreen.tsx'), 'FindOtherScreen'),
});
const compare = createRoute({
  ...at,
  path: '/people/$patient/compare/$other',
  component: lazyRouteComponent(() => import('./person/one-or-two/CompareScreen.tsx'), 'CompareScreen'),
});
const book = createRoute({
  ...at,
  path: '/people/$patient/book',
  validateSearch: (search: Record<string, unknown>) => present({ session: text(search['session']) }),
  component: lazyRouteComponent(() => import('./booking/BookingScreen.tsx'), 'BookingScreen'),
});
const visit = createRoute({
  ...at,
  path: '/people/$patient/visit',
  validateSearch: (search: Record<string, unknown>) => present({ step: text(search['step']) }),
  component: lazyRouteComponent(() => import('./visit/VisitScreen.tsx'), 'VisitScreen'),
});
const bookings = createRoute({
  ...at,
  path: '/people/$patient/bookings',
  component: lazyRouteComponent(() => import('./supports/SupportsScreen.tsx'), 'SupportsScreen'),
});
const review = createRoute({
  ...at,
  path: '/people/$patient/review',
  component: lazyRouteComponent(() => import('./review/ReviewScreen.tsx'), 'ReviewScreen'),
});
const deciding = createRoute({
  ...at,
  path: '/people/$patient/deciding',
  component: lazyRouteComponent(() => import('./deciding/DecidingScreen.tsx'), 'DecidingScreen'),
});
const pack = createRoute({
  ...at,
  path: '/people/$patient/pack',
  component: lazyRouteComponent(() => import('./pack/PatientPackScreen.tsx'), 'PatientPackScreen'),
});
const ownPage = createRoute({
  ...at,
  path: '/people/$patient/own-page',
  component: lazyRouteComponent(() => import('./own-page/OwnPageScreen.tsx'), 'OwnPageScreen'),
});
const letter = createRoute({
  ...at,
  path: '/people/$patient/letter',
  validateSearch: (search: Record<string, unknown>): { about?: 'review' } =>
    search['about'] === 'review' ? { about: 'review' } : {},
  component: lazyRouteComponent(() => import('./visit/LetterScreen.tsx'), 'LetterScreen'),
});
const lettersOfPerson = createRoute({
  ...at,
  path: '/people/$patient/letters',
  validateSearch: (search: Record<string, unknown>) =>
    present({ to: text(search['to']), about: text(search['about']) }),
  component: lazyRouteComponent(() => import('./letters/WriteLetterScreen.tsx'), 'WriteLetterScreen'),
});
const letters = createRoute({
  ...at,
  path: '/letters',
  component: lazyRouteComponent(() => import('./letters/LettersScreen.tsx'), 'LettersScreen'),
});
const sessions = createRoute({
  ...at,
  path: '/sessions',
  component: lazyRouteComponent(() => import('./sessions/SessionsScreen.tsx'), 'SessionsScreen'),
});
const planSession = createRoute({
  ...at,
  path: '/sessions/plan',
  component: lazyRouteComponent(() => import('./sessions/PlanSessionScreen.tsx'), 'PlanSessionScreen'),
});
const fill = createRoute({
  ...at,
  path: '/suggest-places',
  component: lazyRouteComponent(() => import('./fill/FillScreen.tsx'), 'FillScreen'),
});
const lookAhead = createRoute({
  ...at,
  path: '/look-ahead',
  component: lazyRouteComponent(() => import('./look-ahead/LookAheadScreen.tsx'), 'LookAheadScreen'),
});
const session = createRoute({
  ...at,
  path: '/sessions/$session',
  component: lazyRouteComponent(() => import('./sessions/SessionScreen.tsx'), 'SessionScreen'),
});
const sessionTimes = createRoute({
  ...at,
  path: '/sessions/$session/times',
  validateSearch: (search: Record<string, unknown>) => present({ view: text(search['view']) }),
  component: lazyRouteComponent(() => import('./sessions/times/TimesScreen.tsx'), 'TimesScreen'),
});
const sessionDay = createRoute({
  ...at,
  path: '/sessions/$session/day',
  component: lazyRouteComponent(() => import('./session-day/SessionDayScreen.tsx'), 'SessionDayScreen'),
});
const waitingActs = createRoute({
  ...at,
  path: '/waiting',
  component: lazyRouteComponent(() => import('./offline/WaitingActsScreen.tsx'), 'WaitingActsScreen'),
});
const paper = createRoute({
  ...at,
  path: '/sessions/$session/paper',
  component: lazyRouteComponent(() => import('./from-paper/PaperScreen.tsx'), 'PaperScreen'),
});
const paperOfPerson = createRoute({
  ...at,
  path: '/sessions/$session/paper/$patient',
  component: lazyRouteComponent(() => import('./from-paper/PaperOfPersonScreen.tsx'), 'PaperOfPersonScreen'),
});
const daySheet = createRoute({
  ...at,
  path: '/sessions/$session/sheet',
  component: lazyRouteComponent(() => import('./sessions/DaySheetScreen.tsx'), 'DaySheetScreen'),
});
const calls = createRoute({
  ...at,
  path: '/calls',
  component: lazyRouteComponent(() => import('./call/CallsScreen.tsx'), 'CallsScreen'),
});
const recall = createRoute({
  ...at,
  path: '/recall',
  component: lazyRouteComponent(() => import('./recall/RecallScreen.tsx'), 'RecallScreen'),
});
const aftercare = createRoute({
  ...at,
  path: '/aftercare',
  component: lazyRouteComponent(() => import('./aftercare/AftercareScreen.tsx'), 'AftercareScreen'),
});
const ask = createRoute({
  ...at,
  path: '/people/$patient/aftercare',
  component: lazyRouteComponent(() => import('./aftercare/AskScreen.tsx'), 'AskScreen'),
});
const cohort = createRoute({
  ...at,
  path: '/recall/cohorts',
  validateSearch: (search: Record<string, unknown>) => present({ year: text(search['year']?.toString()) }),
  component: lazyRouteComponent(() => import('./cohort/CohortScreen.tsx'), 'CohortScreen'),
});
const comingBack = createRoute({
  ...at,
  path: '/people/$patient/coming-back',
  component: lazyRouteComponent(() => import('./recall/ComingBackScreen.tsx'), 'ComingBackScreen'),
});
const report = createRoute({
  ...at,
  path: '/people/$patient/report',
  validateSearch: (search: Record<string, unknown>) => present({ reaction: text(search['reaction']) }),
  component: lazyRouteComponent(() => import('./aftercare/ReportScreen.tsx'), 'ReportScreen'),
});
const bringIn = createRoute({
  ...at,
  path: '/import',
  component: lazyRouteComponent(() => import('./import/ImportScreen.tsx'), 'ImportScreen'),
});
const waiting = createRoute({
  ...at,
  path: '/import/waiting',
  component: lazyRouteComponent(() => import('./import/WaitingScreen.tsx'), 'WaitingScreen'),
});
const work = createRoute({
  ...at,
  path: '/work',
  validateSearch: (search: Record<string, unknown>) => present({ what: text(search['what']) }),
  component: lazyRouteComponent(() => import('./today/WorkListScreen.tsx'), 'WorkListScreen'),
});
const pharmacy = createRoute({
  ...at,
  path: '/pharmacy',
  component: lazyRouteComponent(() => import('./pharmacy/PharmacyScreen.tsx'), 'PharmacyScreen'),
});
const stock = createRoute({
  ...at,
  path: '/stock',
  component: lazyRouteComponent(() => import('./stock/StockScreen.tsx'), 'StockScreen'),
});
const trace = createRoute({
  ...at,
  path: '/stock/trace',
  validateSearch: (search: Record<string, unknown>) => present({ batch: text(search['batch']) }),
  component: lazyRouteComponent(() => import('./stock/TraceScreen.tsx'), 'TraceScreen'),
});
const batchesOfPerson = createRoute({
  ...at,
  path: '/people/$patient/batches',
  component: lazyRouteComponent(() => import('./stock/BatchesOfPersonScreen.tsx'), 'BatchesOfPersonScreen'),
});
const protocol = createRoute({
  ...at,
  path: '/protocol',
  component: lazyRouteComponent(() => import('./protocol/ProtocolScreen.tsx'), 'ProtocolScreen'),
});
const settings = createRoute({
  ...at,
  path: '/settings',
  component: lazyRouteComponent(() => import('./settings/SettingsScreen.tsx'), 'SettingsScreen'),
});
const mySignature = createRoute({
  ...at,
  path: '/signature',
  component: lazyRouteComponent(() => import('./signing/MySignatureScreen.tsx'), 'MySignatureScreen'),
});
/** An address to keep as a bookmark; the card itself hangs on the hash of every address. */
const anaphylaxis = createRoute({
  ...at,
  path: '/anaphylaxis',
  beforeLoad: () => redirect({ to: '/', hash: cardHash, replace: true, throw: true }),
});

export const router = createRouter({
  routeTree: root.addChildren([
    mySignature,
    today,
    people,
    newPerson,
    person,
    findOther,
    compare,
    book,
    visit,
    bookings,
    review,
    deciding,
    ownPage,
    pack,
    letter,
    lettersOfPerson,
    letters,
    sessions,
    planSession,
    fill,
    lookAhead,
    session,
    sessionDay,
    sessionTimes,
    daySheet,
    waitingActs,
    paper,
    paperOfPerson,
    calls,
    recall,
    aftercare,
    ask,
    cohort,
    comingBack,
    report,
    bringIn,
    waiting,
    work,
    pharmacy,
    stock,
    trace,
    batchesOfPerson,
    protocol,
    settings,
    anaphylaxis,
  ]),
  // Of each screen, so that the frame with its banners stays when one screen fails.
  defaultErrorComponent: ScreenTrouble,
  defaultPreload: 'intent',
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}
