/** In no tick are more chairs, watch places, preparers or second checkers needed than there are. */
import type { Capacity, Day } from '../../day/day.ts';
import { clockAt } from '../../day/time-words.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Rule, RuleName, Sentence } from '../sentence.ts';
import { type Need, moreThan, stretchesOver } from '../stretches.ts';
import { inWords, listed, thereAre } from '../words.ts';
import { type CompleteVisit, completeVisits, stepsOf } from './times-are-complete.ts';

type Words = { readonly verb: string; readonly one: string; readonly many: string };

function overfull(day: Day, rule: RuleName, needs: readonly Need[], capacity: Capacity, words: Words): Sentence[] {
  return stretchesOver(needs, capacity, moreThan).map((stretch) => {
    const count = stretch.needs.length;
    const who = `${inWords(count)} ${count === 1 ? 'person needs' : 'people need'} ${words.verb}`;
    const has = `${stretch.available > 0 ? 'only ' : ''}${thereAre(stretch.available, words.one, words.many)} free`;
    return {
      rule,
      from: stretch.from,
      until: stretch.until,
      visits: stretch.needs.map((need) => need.visit),
      says: `${clockAt(day, stretch.from)}: ${who} at once (${listed(stretch.needs.map((need) => need.what))}), and ${has}.`,
    };
  });
}

const needOf = (complete: CompleteVisit, from: number, until: number): Need => ({
  visit: complete.index,
  what: complete.visit.name,
  from,
  until,
});

/** The stretch in which the chair is held: with the watch, where that is spent in the chair. */
export function chairOf(complete: CompleteVisit): Need[] {
  const { visit, times } = complete;
  if (visit.chair === null) return [];
  const steps = stepsOf(complete);
  const last = visit.watch !== null && times.watchedIn === 'chair' ? visit.watch : visit.chair.to;
  return [needOf(complete, steps[visit.chair.from]?.from ?? 0, steps[last]?.until ?? 0)];
}

function watchPlaceOf(complete: CompleteVisit): Need[] {
  const { visit, times } = complete;
  const step = visit.watch === null ? undefined : stepsOf(complete)[visit.watch];
  if (step === undefined) return [];
  // A watch "in the chair" of a visit without a chair has nowhere else to be.
  return times.watchedIn === 'watch place' || visit.chair === null ? [needOf(complete, step.from, step.until)] : [];
}

const each = (day: Day, plan: Plan, of: (complete: CompleteVisit) => Need[]): Need[] =>
  completeVisits(day, plan).flatMap(of);

export const chairs: Rule = (day, plan) =>
  overfull(day, 'chairs', each(day, plan, chairOf), day.chairs, { verb: 'a chair', one: 'chair', many: 'chairs' });

export const watchPlaces: Rule = (day, plan) =>
  overfull(day, 'watch places', each(day, plan, watchPlaceOf), day.watchPlaces, {
    verb: 'a watch place',
    one: 'watch place',
    many: 'watch places',
  });

export const preparation: Rule = (day, plan) => {
  const needs = each(day, plan, (complete) => {
    const { visit, times } = complete;
    if (visit.dose === null || times.preparation === null) return [];
    return [needOf(complete, times.preparation, times.preparation + visit.dose.preparationTicks)];
  });
  return overfull(day, 'preparation', needs, day.preparers, {
    verb: 'a dose prepared',
    one: 'person to prepare',
    many: 'people to prepare',
  });
};

export const secondCheck: Rule = (day, plan) => {
  const needs = each(day, plan, (complete) => {
    const { visit, times } = complete;
    if (visit.dose === null || times.secondCheck === null) return [];
    return [needOf(complete, times.secondCheck, times.secondCheck + visit.dose.secondCheckTicks)];
  });
  return overfull(day, 'second check', needs, day.checkers, {
    verb: 'a second check',
    one: 'second checker',
    many: 'second checkers',
  });
};
