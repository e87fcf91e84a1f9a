/**
 * The days on which bloods for the next dose are drawn, where they are still needed and have a last day. Undefined too where they
 * could count only after the place that is held: that place has to move first, and a patient is not sent for bloods after it.
 */
import { type Day, day } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';

export function bloodsBetween(person: Person): { readonly from: Day; readonly until: Day } | undefined {
  const steps = person.view(person.place?.on ?? person.today)?.nextSteps ?? [];
  const draw = steps.find(({ kind, latest }) => kind === 'draw' && latest !== undefined);
  const isTooLate = draw !== undefined && person.place !== undefined && day(draw.effectFrom) > person.place.on;
  return draw?.latest === undefined || isTooLate ? undefined : { from: day(draw.earliest), until: day(draw.latest) };
}
