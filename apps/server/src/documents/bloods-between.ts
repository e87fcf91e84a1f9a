/** The days on which bloods for the next dose are drawn, where they are still needed and have a last day. */
import { type Day, day } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';

export function bloodsBetween(person: Person): { readonly from: Day; readonly until: Day } | undefined {
  const steps = person.view(person.place?.on ?? person.today)?.nextSteps ?? [];
  const draw = steps.find(({ kind, latest }) => kind === 'draw' && latest !== undefined);
  return draw?.latest === undefined ? undefined : { from: day(draw.earliest), until: day(draw.latest) };
}
