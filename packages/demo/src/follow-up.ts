/** What a unit sees to afterwards, so that its lists hold the work of weeks and not of years. */
import {
  type Day,
  addDays,
  calciumAfterDose,
  calciumAfterLoading,
  creatinineAfterDose,
  factsOf,
} from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';
import { drawsBloods, signsResults } from './work-up.ts';
import { protocolIn } from './world.ts';

/** Samples that a loading or a dose asks for: drawn in the last days of their time, and signed. */
export function* drawsWhatIsDue(me: Me): Life {
  for (const dueFor of [creatinineAfterDose, calciumAfterDose, calciumAfterLoading]) {
    const protocol = protocolIn(me.world, me.person.unit, me.today);
    const due = protocol === undefined ? undefined : dueFor(me.record(), protocol, me.today);
    if (due === undefined) continue;
    yield* me.officeDay(Math.max(me.today + 1, addDays(due.by, -me.chance.between(1, 6))) as Day);
    yield* drawsBloods(me, false);
    yield* me.days(0, 3);
    yield* signsResults(me);
  }
}

/** Somebody rings as was promised, and the put-off is seen to. */
export function* ringsBack(me: Me): Life {
  yield* me.writes(me.by('nurse'), 'call', { route: 'telephone', about: 'place', reached: true });
  const decision = factsOf(me.record(), 'go-decision').at(-1);
  if (decision?.body.decision === 'put off')
    yield* me.writes(me.by('nurse'), 'looked-again', {
      about: decision.id,
      finding: me.chance.oneOf(['told, and wants to come', 'bloods are booked, another place follows']),
    });
}
