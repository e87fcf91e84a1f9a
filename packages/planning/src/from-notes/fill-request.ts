/**
 * Who waits and falls due, with the window their notes give them, as a request to fill sessions: the clinical window decides
 * where somebody may be, planning only where among those days. Who has no window is left out, with what they need first.
 */
import {
  type Day,
  type DecisionContext,
  type Readiness,
  type SessionList,
  type Standing,
  type SubjectRecord,
  type Unit,
  type Protocol,
  addDays,
  clockOf,
  latest,
  placeFrom,
  plainDate,
  protocolInForceOn,
  readiness,
  shortDate,
  standingOf,
  usableFrom,
  weekday,
} from '@twelvemonth/clinical';
import { type InSteps, allOf } from '../in-steps.ts';
import { type FillWritten, weekdayNames } from '../fill/request-format.ts';
import { minuteOf } from '../day/format-problem.ts';
import { heldByOthers } from './held-by-others.ts';
import { type Grouping, groupingsOf } from './groupings.ts';
import { namesOf, orderedFor, patientOf } from './people.ts';
import { planningOf, visitKindsOf, visitMinutesOf } from './planning-settings.ts';

export type FillFromNotes = {
  readonly unit: Unit;
  readonly context: DecisionContext;
  readonly today: Day;
  /** Of the unit; those past or cancelled are left out. */
  readonly sessions: readonly SessionList[];
  /** People of the unit. */
  readonly records: readonly SubjectRecord[];
  /** Days between telling a person and the place; undefined: the unit's own. */
  readonly noticeDays?: number | undefined;
};

export type LeftOut = { readonly patient: string; readonly name: string; readonly because: string };

export type RequestFromNotes =
  | {
      readonly ok: true;
      readonly request: FillWritten;
      /** In the order of the request. */
      readonly patients: readonly string[];
      readonly sessions: readonly string[];
      readonly leftOut: readonly LeftOut[];
      /** For the report on fairness, in the order of the request: never used to choose. */
      readonly groupings: readonly Grouping[];
      readonly hasUsualSettings: boolean;
    }
  | { readonly ok: false; readonly says: string };

const waits: ReadonlySet<Standing> = new Set([
  'in work-up',
  'waiting for a place',
  'booked',
  'put off',
  'between doses',
  'overdue',
]);

type Written = FillWritten['people'][number];
type Edge = Written['earliest'];
type Bloods = Written['bloods'];

const edge = (on: Day, because: string): Edge => ({ day: plainDate(on), because });

/** A place so near that nobody can be told another: it stays, unless the window does not hold it. */
function staysAt(
  { window }: Ready,
  toldOn: Day | undefined,
  earliest: Edge,
): Pick<Written, 'earliest' | 'latest' | 'bloods'> | undefined {
  if (toldOn === undefined || plainDate(toldOn) >= earliest.day) return undefined;
  if (toldOn < window.first || (window.last !== undefined && toldOn > window.last)) return undefined;
  const near = edge(toldOn, 'the place told is too near for another');
  return { earliest: near, latest: near, bloods: null };
}

function earliestOf({ window }: Ready, today: Day, noticeDays: number): Edge {
  const told = addDays(today, noticeDays);
  if (window.first <= told) return edge(told, `a place needs ${noticeDays} days of notice`);
  return edge(
    window.first,
    `waiting for ${window.waitingFor.map(({ what }) => what).join(', then ') || 'what the protocol asks'}`,
  );
}

type Asked = { readonly horizon: Day; readonly today: Day; readonly daysToResult: number };
type Ready = { readonly window: NonNullable<Readiness['window']>; readonly steps: Readiness['nextSteps'] };

const ofBloods: ReadonlySet<string> = new Set(['kidney-function', 'calcium', 'vitamin-d', 'mineral-metabolism']);

/** The sample that is usable now ends the window, or a new one has to be drawn; drawn again, the window runs on. */
function latestAndBloods(
  { window, steps }: Ready,
  { horizon, today, daysToResult }: Asked,
): { latest: Edge; bloods: Bloods } {
  const { last, runsOut, runOn, certain } = window;
  const draw = steps.find(({ kind }) => kind === 'draw');
  const endsByBloods = runsOut !== undefined && ofBloods.has(runsOut.requirement);
  const another = endsByBloods && runOn !== undefined;
  const end = another ? runOn.last : last;
  const latestEdge =
    end === undefined || end >= horizon
      ? edge(horizon, 'the last of these sessions')
      : edge(
          end,
          another ? `${runOn.what} by ${shortDate(runOn.by)} lasts no longer` : (runsOut?.cause ?? 'the window ends'),
        );
  if (draw !== undefined && !certain) {
    const drawFrom = plainDate(draw.earliest);
    return {
      latest: latestEdge,
      bloods: { usableUntil: null, drawFrom, daysToResult: draw.effectFrom - draw.earliest },
    };
  }
  if (!another) return { latest: latestEdge, bloods: null };
  return {
    latest: latestEdge,
    bloods: { usableUntil: plainDate(last ?? horizon), drawFrom: plainDate(today), daysToResult },
  };
}

/** The clock after denosumab comes before all; then what triage or the referral says of a first dose, and who is overdue. */
function tierOf(record: SubjectRecord, protocol: Protocol, today: Day, first: Day): Written['tier'] {
  const clock = clockOf(record, protocol, today, first);
  if (clock !== undefined && clock.tier !== 'running' && clock.tier !== 'on the worklist') return 'first in line';
  const accepted = latest(record, 'triage')?.body;
  const triaged = accepted?.outcome === 'accepted' ? accepted.tier : undefined;
  const referred = triaged ?? latest(record, 'referral')?.body.tier;
  const isFirst = orderedFor(record, protocol, today).course.firstTimer;
  if (isFirst && referred === 'first in line') return 'first in line';
  const isOverdue = standingOf(record, protocol, today).standing === 'overdue';
  return isOverdue || (isFirst && referred === 'high') ? 'urgent' : 'other';
}

/** "Thu 26 Nov 2026", with the hours where a day has two sessions. */
function sessionNames(sessions: readonly SessionList[]): string[] {
  const plain = sessions.map(({ on }) => `${weekdayNames[weekday(on) - 1] ?? ''} ${shortDate(on)}`);
  return plain.map((name, index) =>
    plain.indexOf(name) === plain.lastIndexOf(name)
      ? name
      : `${name}, ${sessions[index]!.opensAt}, ${sessions[index]!.id}`,
  );
}

const minutesOpen = ({ opensAt, closesAt }: SessionList): number => minuteOf(closesAt) - minuteOf(opensAt);

type Open = { readonly session: SessionList; readonly name: string };

/** A person as the request has them, or why they are left out; undefined: no place is looked for. */
function waitingOf(
  record: SubjectRecord,
  name: string,
  { from: { unit, context, today, noticeDays: asTold }, protocol, open, asked }: Gathered,
): Written | { readonly because: string } | undefined {
  if (!waits.has(standingOf(record, protocol, today).standing)) return undefined;
  const { course, kind } = orderedFor(record, protocol, today);
  const place = placeFrom(record, addDays(today, 1));
  const isElsewhere = place !== undefined && place.unit !== unit.id;
  if (isElsewhere || (course.due !== undefined && course.due > asked.horizon)) return undefined;
  const { window, noWindow, nextSteps: steps } = readiness(record, context, today);
  if (window === undefined)
    return {
      because:
        noWindow === undefined
          ? 'no day is found on which it could be given'
          : `still needed: ${noWindow.needs.map(({ what }) => what).join('; ')}`,
    };
  if (window.first > asked.horizon)
    return { because: `possible from ${shortDate(window.first)}, after the last of these sessions` };
  const noticeDays = asTold ?? planningOf(unit).noticeDays;
  const told = open.find(({ session }) => session.id === place?.session);
  const earliest = earliestOf({ window, steps }, today, noticeDays);
  return {
    name,
    kind,
    tier: tierOf(record, protocol, today, window.first),
    earliest,
    ...latestAndBloods({ window, steps }, asked),
    ...staysAt({ window, steps }, told?.session.on, earliest),
    due: course.due === undefined ? earliest.day : plainDate(course.due),
    weekdays: [],
    travelMinutes: { [unit.name]: 0 },
    told: told?.name ?? null,
    noticeDays,
  };
}

type Gathered = {
  readonly from: FillFromNotes;
  readonly protocol: Protocol;
  readonly open: readonly Open[];
  readonly asked: Asked;
};

function openSessions({ sessions, today }: FillFromNotes): Open[] {
  const open = sessions
    .filter(({ on, cancelled }) => on > today && cancelled === undefined)
    .toSorted((a, b) => a.on - b.on || (a.opensAt < b.opensAt ? -1 : 1));
  const names = sessionNames(open);
  return open.map((session, index) => ({ session, name: names[index]! }));
}

/** All at once; a server that has others to answer takes it in steps. */
export const fillRequestFromNotes = (from: FillFromNotes): RequestFromNotes => allOf(fillRequestInSteps(from));

export function* fillRequestInSteps(from: FillFromNotes): InSteps<RequestFromNotes> {
  const { unit, context, today, records } = from;
  const protocol = protocolInForceOn(context.protocols, today);
  if (protocol === undefined)
    return { ok: false, says: `No protocol is in force at ${unit.name}: nothing can be said.` };
  const open = openSessions(from);
  const horizon = open.at(-1)?.session.on;
  if (horizon === undefined)
    return { ok: false, says: `${unit.name} has no session planned after today: plan one first.` };
  const result = { days: protocol.number.resultDays, counted: protocol.sheet.resultDaysCounted };
  const asked: Asked = { horizon, today, daysToResult: usableFrom(unit.calendar, today, result) - today };
  const names = namesOf(records);
  const leftOut: LeftOut[] = [];
  const people = new Map<string, Written>();
  const placed = new Map<string, SubjectRecord>();
  for (const record of records) {
    yield;
    const patient = patientOf(record);
    const name = names.get(patient) ?? patient;
    const found = waitingOf(record, name, { from, protocol, open, asked });
    if (found === undefined) continue;
    if ('because' in found) leftOut.push({ patient, name, because: found.because });
    else {
      people.set(patient, found);
      placed.set(patient, record);
    }
  }
  if (people.size === 0)
    return { ok: false, says: `Nobody at ${unit.name} waits or falls due with a window in these sessions.` };
  const settings = planningOf(unit);
  const kinds = visitKindsOf(settings, visitMinutesOf(protocol));
  const heldIn = heldByOthers({ kinds, records, protocol, today }, people);
  return {
    ok: true,
    patients: [...people.keys()],
    sessions: open.map(({ session }) => session.id),
    leftOut,
    groupings: groupingsOf([...placed.values()], today),
    hasUsualSettings: unit.planning === undefined,
    request: {
      today: plainDate(today),
      kinds,
      sessions: open.map(({ session, name }) => {
        const held = heldIn(session);
        return {
          name,
          day: plainDate(session.on),
          site: unit.name,
          nurseMinutes: Math.max(0, settings.nurses * minutesOpen(session) - held.nurseMinutes),
          chairMinutes: Math.max(0, unit.chairs * minutesOpen(session) - held.chairMinutes),
          mostFirstVisits: Math.max(0, settings.mostFirstVisits - held.firstVisits),
          mostVisits: Math.max(0, session.arriveAt.length - held.visits),
          reservedPercent: settings.reservedPercent,
        };
      }),
      people: [...people.values()],
    },
  };
}
