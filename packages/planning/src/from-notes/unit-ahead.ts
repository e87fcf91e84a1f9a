/**
 * A unit of the notes as the coming years are looked ahead at from: who waits and falls due, what became of those before, what
 * the unit holds in a week; and beside each figure what it was counted from, or that a starting value stands in.
 */
import {
  type Day,
  type DecisionContext,
  type SessionList,
  type SubjectRecord,
  type Unit,
  addDays,
  counted,
  protocolInForceOn,
} from '@twelvemonth/clinical';
import { minuteOf } from '../day/format-problem.ts';
import { type InSteps, allOf } from '../in-steps.ts';
import type { UnitAhead } from '../look-ahead/changes.ts';
import type { DemandInputs } from '../look-ahead/inputs.ts';
import { type HeldBy, type Service, placesOfWeek, sessionHolds } from '../look-ahead/service.ts';
import { type CourseHistory, type Outcomes, courseHistoryOf } from './course-history.ts';
import { nextVisitsInSteps } from './next-visits.ts';
import { planningOf, visitKindsOf, visitMinutesOf } from './planning-settings.ts';
import { type ReferralHistory, referralHistoryOf } from './referral-history.ts';
import { shrunk, shrunkMean, shrunkSeason, sourcesOfStartingRates, startingRates } from './starting-rates.ts';

/** One figure in words: what it is, its value, what it was counted from. */
export type ReadFigure = {
  readonly what: string;
  readonly is: string;
  readonly from: string;
  /** Where the starting value comes from that what was counted was drawn towards. */
  readonly starting?: string | undefined;
};

export type UnitAheadFromNotes =
  | {
      readonly ok: true;
      readonly ahead: UnitAhead;
      readonly read: readonly ReadFigure[];
      readonly hasUsualSettings: boolean;
    }
  | { readonly ok: false; readonly says: string };

export type AheadFrom = {
  readonly unit: Unit;
  readonly context: DecisionContext;
  readonly today: Day;
  /** Of the unit, past ones too. */
  readonly sessions: readonly SessionList[];
  readonly records: readonly SubjectRecord[];
};

const daysPerWeek = 7;
const daysPerYear = 365.25;
const monthsPerYear = 12;
const weeksOf = (months: number): number => Math.round((months * daysPerYear) / monthsPerYear / daysPerWeek);
/** Sessions are counted so many days ahead: those further off are often not planned yet. */
const daysOfSessions = 91;

/** Notes that reach back less tell no rate by themselves: what came is spread over so many days. A choice, no source. */
const leastDaysKnown = 91;

const percent = (share: number): string => `${Math.round(share * 100)} of 100`;
const figure = (value: number): string => (value < 10 ? value.toFixed(1) : value.toFixed(0));

/** All at once; a server that has others to answer takes it in steps. */
export const unitAheadFromNotes = (from: AheadFrom): UnitAheadFromNotes => allOf(unitAheadInSteps(from));

export function* unitAheadInSteps(from: AheadFrom): InSteps<UnitAheadFromNotes> {
  const { unit, context, today, records } = from;
  const sheet = protocolInForceOn(context.protocols, today);
  if (sheet === undefined) return { ok: false, says: `No protocol is in force at ${unit.name}: nothing can be said.` };
  const { medicine, intervalMonths, plannedDoses, title } = sheet.regimen;
  const held = sessionsAhead(from);
  if (held === undefined)
    return { ok: false, says: `${unit.name} has no session planned after today: plan one first.` };
  const referred = referralHistoryOf(records, medicine, today);
  const history = courseHistoryOf(records, { medicine, intervalMonths, doses: plannedDoses }, today);
  const workUpWeeks = shrunkMean(referred.workUpWeeks.weeks, referred.workUpWeeks.of, startingRates.workUpWeeks);
  const next = yield* nextVisitsInSteps(records, { sheet, today, calendar: unit.calendar, workUpWeeks });
  const rates = ratesFrom(referred, history, workUpWeeks);
  const demand: DemandInputs = {
    waiting: next.waiting,
    due: next.due,
    pausesEnding: next.pausesEnding,
    doses: plannedDoses,
    intervalWeeks: weeksOf(intervalMonths),
    pauseWeeks: weeksOf(sheet.number.breakMonths),
    ...rates,
  };
  const settings = planningOf(unit);
  const minutes = visitMinutesOf(sheet);
  const [first, later] = visitKindsOf(settings, minutes);
  const firsts = shareOfFirsts(demand);
  const perVisit = (key: 'nurseMinutes' | 'chairMinutes'): number =>
    Math.round(first![key] * firsts + later![key] * (1 - firsts));
  const service: Service = {
    ...held,
    nurses: settings.nurses,
    chairs: unit.chairs,
    nurseMinutesPerVisit: perVisit('nurseMinutes'),
    chairMinutesPerVisit: perVisit('chairMinutes'),
    watchedPerNurse: settings.watchedPerNurse,
    infusionMinutes: minutes.infusion,
    otherVisitsPerWeek: next.otherVisitsPerWeek,
  };
  if (placesOfWeek(service) <= 0)
    return { ok: false, says: `${unit.name} has no place left for ${title}: its sessions hold nobody.` };
  const validWeeks = Math.floor(sheet.number.bloodsValidDays / daysPerWeek);
  return {
    ok: true,
    hasUsualSettings: unit.planning === undefined,
    ahead: { demand, service, bloods: { drawn: 'to fit the place', validWeeks } },
    read: [
      ...demandRead(demand, title),
      ...historyRead(demand, referred, history),
      ...serviceRead(service, validWeeks),
    ],
  };
}

function sessionsAhead({
  sessions,
  today,
}: AheadFrom): Pick<Service, 'sessionsPerWeek' | 'placesPerSession' | 'minutesOpen'> | undefined {
  const until = addDays(today, daysOfSessions);
  const ahead = sessions.filter(({ on, cancelled }) => cancelled === undefined && on > today && on <= until);
  if (ahead.length === 0) return undefined;
  const mean = (of: (session: SessionList) => number): number =>
    ahead.reduce((sum, session) => sum + of(session), 0) / ahead.length;
  const weeks = Math.max(1, Math.ceil((Math.max(...ahead.map(({ on }) => on)) - today) / daysPerWeek));
  return {
    sessionsPerWeek: ahead.length / weeks,
    placesPerSession: mean(({ arriveAt }) => arriveAt.length),
    minutesOpen: Math.round(mean(({ opensAt, closesAt }) => minuteOf(closesAt) - minuteOf(opensAt))),
  };
}

function ratesFrom({ referrals, leavers, quarters, daysKnown }: ReferralHistory, history: CourseHistory, lag: number) {
  const weeks = Math.max(leastDaysKnown, daysKnown) / daysPerWeek;
  const { diedAfterFirst, diedLater, startedAgain } = history;
  const returned = history.returned.map(({ yes, of }, index) =>
    shrunk(yes, of, index === 0 ? startingRates.returnsForSecond : startingRates.returnsLater),
  );
  const first = shrunk(diedAfterFirst.yes, diedAfterFirst.of, startingRates.diesAfterFirst);
  const later = shrunk(diedLater.yes, diedLater.of, startingRates.diesLater);
  const again = shrunk(startedAgain.yes, startedAgain.of, startingRates.startsAgain);
  return {
    referrals: { perWeek: referrals / weeks, lagWeeks: Math.round(lag) },
    leavers: { perWeek: leavers / weeks, lagWeeks: Math.round(lag) },
    season: shrunkSeason(quarters),
    returns: returned.map(({ share }) => share),
    diesAfterFirst: first.share,
    diesLater: later.share,
    startsAgain: again.share,
    counted: {
      referrals,
      leavers,
      returns: returned.map(({ counted }) => counted),
      diesAfterFirst: first.counted,
      diesLater: later.counted,
      startsAgain: again.counted,
    },
  };
}

/** Of all visits of a steady stream of courses, the share that are first ones. */
function shareOfFirsts({ returns, diesAfterFirst, diesLater }: DemandInputs): number {
  let [stay, visits] = [1, 1];
  returns.forEach((share, dose) => {
    stay *= share * (1 - (dose === 0 ? diesAfterFirst : diesLater));
    visits += stay;
  });
  return 1 / visits;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function demandRead({ waiting, due, pausesEnding, doses, intervalWeeks, pauseWeeks }: DemandInputs, title: string) {
  const year = due.filter(({ week }) => week < intervalWeeks);
  const firsts = due.filter(({ dose }) => dose === 1);
  return [
    { what: 'course looked ahead at', is: title, from: `${doses} doses, ${intervalWeeks} weeks apart: the protocol` },
    {
      what: 'waiting for a place or overdue today',
      is: counted(sum(waiting), 'person', 'people'),
      from: `counted; by dose ${waiting.join(', ')}`,
    },
    {
      what: 'referred, not worked up yet',
      is: counted(sum(firsts.map(({ people }) => people)), 'person', 'people'),
      from: 'counted',
    },
    {
      what: 'later doses that fall due in the coming year',
      is: `${sum(year.filter(({ dose }) => dose > 1).map(({ people }) => people))}`,
      from: 'counted',
    },
    {
      what: 'planned breaks and reviews that end',
      is: counted(sum(pausesEnding.map(({ people }) => people)), 'person', 'people'),
      from: `counted; a break lasts ${pauseWeeks} weeks by the protocol where no review says otherwise`,
    },
  ];
}

const shareRead = (
  what: string,
  share: number,
  { yes, of }: Outcomes,
  key: keyof typeof startingRates,
): ReadFigure => ({
  what,
  is: percent(share),
  from: of === 0 ? 'nothing counted here yet' : `${yes} of ${of} here`,
  starting: `${percent(startingRates[key])}: ${sourcesOfStartingRates[key]}`,
});

const quarterNames = ['next', 'second', 'third', 'fourth'] as const;

function historyRead(demand: DemandInputs, referred: ReferralHistory, history: CourseHistory): ReadFigure[] {
  const { referrals, leavers, returns, season } = demand;
  const days =
    referred.daysKnown < leastDaysKnown
      ? `since the notes begin, ${counted(referred.daysKnown, 'day')} ago: too short to tell; counted as in ${leastDaysKnown} days`
      : `in the past ${referred.daysKnown} days`;
  return [
    { what: 'new referrals a week', is: figure(referrals.perWeek), from: `${referred.referrals} ${days}` },
    {
      what: 'by season, against an even year',
      is: season
        .map((factor, index) => `${quarterNames[index] ?? ''} quarter ${Math.round(factor * 100)} %`)
        .join(', '),
      from: `${sum(referred.quarters)} referrals of whole years, at most three`,
      starting: 'an even year: a choice, no source',
    },
    { what: 'leaving denosumab, a week', is: figure(leavers.perWeek), from: `${referred.leavers} ${days}` },
    {
      what: 'from referral until worked up',
      is: `${referrals.lagWeeks} weeks`,
      from:
        referred.workUpWeeks.of === 0
          ? 'nothing counted here yet'
          : `a quarter of ${counted(referred.workUpWeeks.of, 'person', 'people')} had the first dose within ${figure(referred.workUpWeeks.weeks)} weeks`,
      starting: `${startingRates.workUpWeeks} weeks: ${sourcesOfStartingRates.workUpWeeks}`,
    },
    ...returns.map((share, index) =>
      shareRead(
        `of those alive, come for dose ${index + 2}`,
        share,
        history.returned[index] ?? { yes: 0, of: 0 },
        index === 0 ? 'returnsForSecond' : 'returnsLater',
      ),
    ),
    shareRead('die in the interval after dose 1', demand.diesAfterFirst, history.diedAfterFirst, 'diesAfterFirst'),
    shareRead('die in each later interval', demand.diesLater, history.diedLater, 'diesLater'),
    shareRead('begin again after a planned break', demand.startsAgain, history.startedAgain, 'startsAgain'),
  ];
}

const heldByWords: Readonly<Record<HeldBy, string>> = {
  places: 'the places told',
  nurses: 'nurse minutes',
  chairs: 'chair minutes',
};

function serviceRead(service: Service, validWeeks: number): ReadFigure[] {
  const { by, visits, heldBy } = sessionHolds(service);
  return [
    {
      what: 'sessions a week',
      is: figure(service.sessionsPerWeek),
      from: 'those planned in the coming 13 weeks',
    },
    {
      what: 'visits a session holds',
      is: String(Math.floor(visits)),
      from: `held by ${heldByWords[heldBy]}: ${figure(by.places)} places told; the minutes of ${counted(service.nurses, 'nurse')} are enough for ${by.nurses} at most, those of ${counted(service.chairs, 'chair')} for ${by.chairs}`,
    },
    {
      what: 'visits a week of other regimens',
      is: figure(service.otherVisitsPerWeek),
      from: 'counted; taken as many every week, and off the places',
    },
    {
      what: 'bloods count for',
      is: `${validWeeks} weeks`,
      from: 'the protocol; taken as drawn to fit the place, so that none run out while waiting',
    },
  ];
}
