/** In no tick are more nurses needed than there are; one nurse keeps an eye on several running infusions. */
import { clockAt } from '../../day/time-words.ts';
import type { Rule } from '../sentence.ts';
import { type Need, stretchesOver } from '../stretches.ts';
import { inWords, listed, thereAre } from '../words.ts';
import { completeVisits, stepsOf } from './times-are-complete.ts';

type NurseNeed = Need & { readonly isShared: boolean };

export const nurses: Rule = (day, plan) => {
  const needs: NurseNeed[] = completeVisits(day, plan).flatMap((complete) =>
    stepsOf(complete).flatMap(({ name, from, until }, step) => {
      const nurse = complete.visit.steps[step]?.nurse ?? 'none';
      const what = `${name} for ${complete.visit.name}`;
      return nurse === 'none' ? [] : [{ visit: complete.index, what, from, until, isShared: nurse === 'shared' }];
    }),
  );
  const isShared = new Set<Need>(needs.filter((need) => need.isShared));
  const watchersFor = (running: number): number => Math.ceil(running / day.watchedPerNurse);
  const split = (here: readonly Need[]): { running: Need[]; alone: Need[] } => ({
    running: here.filter((need) => isShared.has(need)),
    alone: here.filter((need) => !isShared.has(need)),
  });
  const needed = (here: readonly Need[]): number => {
    const { running, alone } = split(here);
    return alone.length + watchersFor(running.length);
  };
  return stretchesOver(needs, day.nurses, (here, available) => needed(here) > available).map((stretch) => {
    const { running, alone } = split(stretch.needs);
    const parts = [
      ...(alone.length === 0
        ? []
        : [
            `${inWords(alone.length)} ${alone.length === 1 ? 'person needs' : 'people need'} a nurse at once (${listed(alone.map((need) => need.what))})`,
          ]),
      ...(running.length === 0
        ? []
        : [
            `${inWords(running.length)} running ${running.length === 1 ? 'infusion needs' : 'infusions need'} ${inWords(watchersFor(running.length))} to keep an eye on ${running.length === 1 ? 'it' : 'them'}`,
          ]),
    ];
    const has = `${stretch.available > 0 ? 'only ' : ''}${thereAre(stretch.available, 'nurse', 'nurses')} free`;
    return {
      rule: 'nurses',
      from: stretch.from,
      until: stretch.until,
      visits: [...new Set(stretch.needs.map((need) => need.visit))],
      says: `${clockAt(day, stretch.from)}: ${listed(parts)}, and ${has}.`,
    };
  });
};
