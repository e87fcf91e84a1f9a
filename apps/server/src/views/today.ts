/** Today at a unit: the list in order of what is due next, what will not work in the coming sessions, and what waits. */
import {
  type Day,
  type SessionList,
  type SubjectRecord,
  type Visit,
  addDays,
  dateWithWeekday,
  day,
  nextActs,
  outcomeOf,
  plainDate,
  sessionDayOf,
  visitOn,
} from '@twelvemonth/clinical';
import type { TodayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { actWords } from './act-words.ts';
import { byAnother } from './failed-tries.ts';
import { minutesStillNeeded } from './finish.ts';
import { infusionViewOf } from './infusion.ts';
import { byWhom, nurseOf, nursesOf } from './named-nurse.ts';
import { atPharmacyOf, heldOn } from './pharmacy.ts';
import { noProtocolInForce } from './person-row.ts';
import { fullName } from './person-words.ts';
import { byPatient, couldComeOn, everySession, inTrouble, listedOn } from './sessions.ts';
import { heldToday, leftOverBefore, shownOf } from './session-state.ts';
import { stoppedPackOf } from './stopped-packs.ts';
import { listedPatientOf } from './visit-steps.ts';
import { workOf } from './work.ts';

type Listed = { readonly person: Person; readonly place: number; readonly arriveAt: string };

/** How far ahead trouble is shown: long enough to take bloods and hear from the laboratory. */
const troubleAheadDays = 21;
/** Minutes after the arrival time from which someone is called late. Common practice, no source. */
const lateAfterMinutes = 10;

export async function todayOf(atHand: AtHand, unit: UnitNow): Promise<TodayView> {
  const everyone = await atHand.people.all();
  const people = byPatient(everyone);
  const sessions = (await everySession(atHand)).filter(
    (session) => session.unit === unit.unit.id && session.cancelled === undefined,
  );
  const ofToday = sessions.filter((session) => session.on === unit.today);
  const now = await shownOf(ofToday, atHand);
  const next = sessions.find((session) => session.on > unit.today);
  const listed =
    now === undefined
      ? []
      : listedOn(now, people).flatMap(({ person, place, arriveAt }) =>
          person === undefined ? [] : [{ person, place, arriveAt }],
        );
  const session = now === undefined ? undefined : await atHand.notes.of('session', now.id);
  const nameOf = atHand.accounts.nameOf;
  const acts = nextOf(listed, session, unit, atHand);
  const outcomes = listed.map(({ person }) => outcomeOf(visitOn(person.record, unit.today)));
  return {
    date: plainDate(unit.today),
    unit: unit.unit.id,
    unitName: unit.unit.name,
    ...(session === undefined || now === undefined
      ? {}
      : { session: now.id, sessionState: sessionDayOf(session).state }),
    held: session === undefined ? [] : await heldToday(session, unit, atHand),
    leftOver: await leftOverBefore(unit, sessions, atHand),
    alsoToday: ofToday
      .filter((one) => one !== now)
      .map(({ id, opensAt, closesAt, taken }) => ({ session: id, opensAt, closesAt, listed: taken.size })),
    ...(next === undefined ? {} : { nextSession: { session: next.id, on: plainDate(next.on) } }),
    counts: {
      listed: listed.length,
      gone: listed.filter(({ person }) => visitOn(person.record, unit.today)?.over === true).length,
      here: listed.filter(({ person }) => visitOn(person.record, unit.today)?.over === false).length,
      late: listed.filter(
        (one, index) => outcomes[index] === 'not here yet' && minutesLate(one, unit) >= lateAfterMinutes,
      ).length,
    },
    ...finishOf(listed, unit, atHand),
    chairs: unit.unit.chairs,
    nurses: session === undefined ? [] : nursesOf(session, nameOf),
    couldCome: now === undefined ? [] : insteadOf(now, listed, everyone, unit),
    stoppedPacks: await stoppedPacksOf(listed, unit, atHand),
    next: acts,
    visits: inOrderOf(acts, listed).map(({ person, place, arriveAt }) => ({
      ...visitRowOf({ person, place, arriveAt }, listed, unit, atHand),
      ...(session === undefined ? {} : nurseOf(session, person.patient, nameOf)),
    })),
    trouble: troubleOf(sessions, people, unit),
    heldByPharmacy: heldOn(comingUp(sessions, people, unit)),
    work: await workOf(atHand, everyone, unit),
    commit: (await atHand.store.tail()).commit,
  };
}

async function stoppedPacksOf(
  listed: readonly Listed[],
  unit: UnitNow,
  atHand: AtHand,
): Promise<TodayView['stoppedPacks']> {
  const found = await Promise.all(
    listed.map(async ({ person }) => {
      const stopped = await stoppedPackOf(atHand, person);
      return stopped === undefined
        ? []
        : [{ ...stopped, patient: person.patient, who: nameAndChair(person, unit.today) }];
    }),
  );
  return found.flat();
}

function nameAndChair(person: Person, on: Day): string {
  const chair = visitOn(person.record, on)?.arrived.body.chair;
  return `${fullName(person)}${chair === undefined ? '' : `, chair ${chair}`}`;
}

/** Whoever's act comes first stands first; who has gone home comes last, in the order of the list. */
function inOrderOf(acts: TodayView['next'], listed: readonly Listed[]): readonly Listed[] {
  const turns = new Map(acts.map(({ patient }, turn) => [patient, turn]));
  const turnOf = ({ person }: Listed): number => turns.get(person.patient) ?? acts.length;
  return listed.toSorted((a, b) => turnOf(a) - turnOf(b) || a.place - b.place);
}

const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const nowMinutes = (unit: UnitNow): number => minutesOf(unit.moment.slice(11, 16));
const minutesLate = ({ arriveAt }: Listed, unit: UnitNow): number => nowMinutes(unit) - minutesOf(arriveAt);

/** How many people who could come instead are worth naming on the day's page; the session's page names more. */
const insteadAtMost = 3;

/** Somebody is late, or a place is free: who could come. */
function insteadOf(
  session: SessionList,
  listed: readonly Listed[],
  everyone: readonly Person[],
  unit: UnitNow,
): TodayView['couldCome'] {
  const isLate = listed.some(
    (one) => visitOn(one.person.record, unit.today) === undefined && minutesLate(one, unit) >= lateAfterMinutes,
  );
  const isFree = session.taken.size < session.arriveAt.length;
  return isLate || isFree
    ? couldComeOn(everyone, session)
        .slice(0, insteadAtMost)
        .map(({ patient, name, standing }) => ({ patient, name, standing }))
    : [];
}

const SECONDS_A_MINUTE = 60;

function finishOf(
  listed: readonly Listed[],
  unit: UnitNow,
  { clock }: Pick<AtHand, 'clock'>,
): Pick<TodayView, 'finishEarliest'> {
  const { protocol } = unit;
  if (protocol === undefined) return {};
  const at = nowMinutes(unit);
  const ends = listed.flatMap(({ person, arriveAt }) => {
    const visit = visitOn(person.record, unit.today);
    const ran = infusionViewOf(visit, protocol, clock.reading())?.ranSeconds ?? 0;
    const needed = minutesStillNeeded(visit, protocol, {
      firstTimer: person.course.firstTimer,
      ranMinutes: ran / SECONDS_A_MINUTE,
    });
    return needed === 0 ? [] : [(visit === undefined ? Math.max(at, minutesOf(arriveAt)) : at) + needed];
  });
  if (ends.length === 0) return {};
  const last = Math.ceil(Math.max(...ends));
  const two = (number: number): string => String(number).padStart(2, '0');
  return { finishEarliest: `${two(Math.floor(last / 60) % 24)}:${two(last % 60)}` };
}

function visitRowOf(
  { person, place, arriveAt }: Listed,
  listed: readonly Listed[],
  unit: UnitNow,
  { accounts, clock }: AtHand,
): TodayView['visits'][number] {
  const visit = visitOn(person.record, unit.today);
  const chair = visit?.arrived.body.chair;
  const infusion = infusionViewOf(visit, unit.protocol, clock.reading());
  return {
    ...listedPatientOf(
      person,
      unit.today,
      accounts.nameOf,
      listed.map((one) => one.person),
    ),
    arriveAt,
    ...(visit === undefined && minutesLate({ person, place, arriveAt }, unit) >= lateAfterMinutes
      ? { late: minutesLate({ person, place, arriveAt }, unit) }
      : {}),
    place,
    ...(chair === undefined ? {} : { chair }),
    ...(infusion === undefined || infusion.finishedAt !== undefined
      ? {}
      : {
          infusion: {
            startedAt: infusion.startedAt,
            ...(infusion.earliestFinish === undefined ? {} : { earliestFinish: infusion.earliestFinish }),
            paused: infusion.paused,
            plannedMinutes: infusion.plannedMinutes,
            says: infusion.says,
          },
        }),
  };
}

/** The first step that would help, with the last day on which it does. */
function whatHelps(person: Person, on: Day): string {
  const step = person.view(on)?.nextSteps[0];
  if (step === undefined) return '';
  return step.latest === undefined ? `; ${step.what}` : `; ${step.what}, by ${dateWithWeekday(day(step.latest))}`;
}

type NextAct = TodayView['next'][number] & { readonly minutes: number };

/** What each person on the list waits for, soonest first. */
function nextOf(
  listed: readonly Listed[],
  session: SubjectRecord | undefined,
  unit: UnitNow,
  atHand: AtHand,
): TodayView['next'] {
  const at = nowMinutes(unit);
  const { nameOf } = atHand.accounts;
  const whoOf = (step: string, person: Person, visit: Visit): string =>
    step === 'second check'
      ? byWhom(person, visit, session, nameOf)
      : step === 'cannula'
        ? byAnother(person, unit.protocol, nameOf)
        : '';
  return listed
    .flatMap((one): NextAct[] => {
      const { person } = one;
      const visit = visitOn(person.record, unit.today);
      const common = {
        patient: person.patient,
        who: nameAndChair(person, unit.today),
        to: `/people/${person.patient}/visit`,
      };
      if (visit === undefined) {
        const late = minutesLate(one, unit);
        const what =
          late >= lateAfterMinutes
            ? `${late} minutes late: ring them`
            : late >= 0
              ? 'due now'
              : `comes at ${one.arriveAt}`;
        return [{ ...common, by: one.arriveAt, what, act: 'Record the arrival', minutes: minutesOf(one.arriveAt) }];
      }
      const [act] = nextActs(visit, unit.protocol, atHand.clock.reading());
      if (act === undefined) return [];
      const finish =
        act.step === 'infusion'
          ? infusionViewOf(visit, unit.protocol, atHand.clock.reading())?.earliestFinish
          : undefined;
      const minutes = finish === undefined ? at : Math.max(at, minutesOf(localTime(finish, unit)));
      const held = act.step === 'preparation' ? atPharmacyOf(person) : undefined;
      return [
        {
          ...common,
          by: minutes > at ? localTime(finish ?? unit.moment, unit) : 'now',
          what:
            held?.holds === true ? `prepare nothing yet: ${held.says}` : `${act.says}${whoOf(act.step, person, visit)}`,
          act: actWords[act.step] ?? 'Open the visit',
          minutes,
        },
      ];
    })
    .toSorted((a, b) => a.minutes - b.minutes)
    .map(({ by, patient, who, what, act, to }) => ({ by, patient, who, what, act, to }));
}

/** HH:MM on the unit's wall; `moment` may be in UTC. */
const localTime = (moment: string, unit: UnitNow): string =>
  Temporal.Instant.from(moment).toZonedDateTimeISO(unit.unit.zone).toPlainTime().toString({ smallestUnit: 'minute' });

/** Everybody on the list of today and of the coming sessions whose dose is still to come. */
function comingUp(sessions: readonly SessionList[], people: ReadonlyMap<string, Person>, unit: UnitNow): Person[] {
  const until = addDays(unit.today, troubleAheadDays);
  return sessions
    .filter((session) => session.on >= unit.today && session.on <= until)
    .flatMap((session) =>
      listedOn(session, people).flatMap(({ person }) => (person?.place?.session === session.id ? [person] : [])),
    );
}

function troubleOf(
  sessions: readonly SessionList[],
  people: ReadonlyMap<string, Person>,
  unit: UnitNow,
): TodayView['trouble'] {
  const until = addDays(unit.today, troubleAheadDays);
  return sessions
    .filter((session) => session.on > unit.today && session.on <= until)
    .flatMap((session) =>
      listedOn(session, people).flatMap(({ person }) => {
        if (person === undefined || !inTrouble(person, session.on)) return [];
        const found = person.verdictOn(session.on);
        return [
          {
            session: session.id,
            on: plainDate(session.on),
            patient: person.patient,
            name: fullName(person),
            verdict: found?.verdict ?? ('cannot say' as const),
            says: [found?.headline ?? noProtocolInForce, whatHelps(person, session.on)].join(''),
          },
        ];
      }),
    );
}
