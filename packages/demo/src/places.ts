/** Places: found inside the window, taken, moved, given up. A clerk fills lists that have begun to fill. */
import { type Act, type Day, type Place, type Readiness, addDays, placeFrom } from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';
import { arrivals, isUsualSessionDay, sessionId } from './units.ts';
import { planSessionAct } from './unit-life.ts';
import { inRole } from './staff.ts';
import { sessionIn } from './world.ts';

type Found = { readonly session: string; readonly on: Day; readonly place: number; readonly planned: boolean };

const LOOK_AHEAD_DAYS = 75;

/** A free place on one of the unit's days from one day to another; the fullest of the first few lists, as a clerk fills. */
function findPlace(me: Me, from: Day, until: Day, but?: string): Found | undefined {
  const { unit } = me.person;
  const open: (Found & { taken: number })[] = [];
  for (let on = from; on <= until && open.length < 7; on = addDays(on, 1)) {
    if (!isUsualSessionDay(unit, on)) continue;
    const session = sessionId(unit, on);
    if (session === but) continue;
    const list = sessionIn(me.world, session);
    if (list?.cancelled !== undefined) continue;
    const places = list?.arriveAt.length ?? arrivals(unit).length;
    const free = Array.from({ length: places }, (_, index) => index + 1).filter(
      (place) => !(list?.taken.has(place) ?? false),
    );
    const first = free[0];
    if (first === undefined) continue;
    const chosen = free[me.chance.between(0, Math.min(2, free.length - 1))] ?? first;
    open.push({ session, on, place: chosen, planned: list !== undefined, taken: places - free.length });
  }
  return open.toSorted((a, b) => wish(me, b.on, b.taken) - wish(me, a.on, a.taken) || a.on - b.on)[0];
}

const COMFORTABLE = 4;
const FULL_NEAR_TODAY = 11;

/** Lists fill up to a comfortable number before the next is begun; those of the demo's own days are filled gladly. */
function wish(me: Me, on: Day, taken: number): number {
  const near = on >= me.world.today && on <= addDays(me.world.today, 7);
  if (near && taken < FULL_NEAR_TODAY) return 20 + taken;
  if (taken >= COMFORTABLE) return COMFORTABLE - taken;
  return taken === 0 ? 1 : 2 + taken;
}

/** Books inside the window, if there is one and a place in it. */
export function* books(me: Me, now: Readiness): Life<Place | undefined> {
  const { window } = now;
  if (window === undefined || placeFrom(me.record(), me.today) !== undefined) return undefined;
  const from = Math.max(window.first, addDays(me.today, 3)) as Day;
  const until = Math.min(window.last ?? addDays(from, LOOK_AHEAD_DAYS), addDays(me.today, LOOK_AHEAD_DAYS)) as Day;
  const found = findPlace(me, from, until);
  if (found === undefined) return undefined;
  yield* plansFirst(me, found);
  const act: Act = { name: 'book', patient: me.patient, session: found.session, place: found.place };
  yield* me.does(me.by('clerk'), act);
  return placeFrom(me.record(), me.today);
}

function* plansFirst(me: Me, found: Found): Life {
  if (found.planned) return;
  yield* me.does(inRole('nurse in charge', me.person.unit, 0), planSessionAct(me.person.unit, found.on));
}

const reasons = {
  'the patient': [
    'transport not possible that day',
    'a funeral',
    'granddaughter visiting',
    'another hospital visit on the same day',
    'would rather come later in the day',
  ],
  'the unit': ['no second registered nurse that morning', 'list shortened: pharmacy training', 'chair out of use'],
} as const;

/** Moves the place inside the window; stays where it is if there is no other. */
export function* moves(me: Me, place: Place, now: Readiness): Life<Place> {
  const { window } = now;
  const from = Math.max(window?.first ?? place.on, addDays(me.today, 2)) as Day;
  const until = Math.min(window?.last ?? addDays(from, 40), addDays(from, 40)) as Day;
  const found = window === undefined ? undefined : findPlace(me, from, until, place.session);
  if (found === undefined) return place;
  yield* plansFirst(me, found);
  const askedBy = me.chance.isTrue(0.7) ? 'the patient' : 'the unit';
  const reason = me.chance.oneOf(reasons[askedBy]);
  yield* me.does(me.by('clerk'), {
    name: 'move',
    patient: me.patient,
    from: place.session,
    to: found.session,
    place: found.place,
    reason,
    askedBy,
  });
  return placeFrom(me.record(), me.today) ?? place;
}

export function* givesUp(me: Me, reason: string, askedBy: 'the patient' | 'the unit'): Life {
  const place = placeFrom(me.record(), me.today);
  if (place === undefined) return;
  yield* me.does(me.by('clerk'), {
    name: 'give up place',
    patient: me.patient,
    session: place.session,
    reason,
    askedBy,
  });
}
