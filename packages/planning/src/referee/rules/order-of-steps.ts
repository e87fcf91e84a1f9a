/** One step after the other, some at once; the dose ready in time and not too early. */
import { clockAt, minutesOf } from '../../day/time-words.ts';
import type { Rule, Sentence } from '../sentence.ts';
import { completeVisits, stepsOf } from './times-are-complete.ts';

export const orderOfSteps: Rule = (day, plan) =>
  completeVisits(day, plan).flatMap((complete) => {
    const { visit, index, times } = complete;
    const steps = stepsOf(complete);
    const said: Sentence[] = [];
    const say = (from: number, until: number, says: string): void => {
      said.push({ rule: 'order of the steps', from, until, visits: [index], says });
    };
    const first = steps[0];
    if (first !== undefined && first.from < times.arrives)
      say(
        first.from,
        times.arrives,
        `${clockAt(day, first.from)}: ${first.name} for ${visit.name} would begin before the person arrives.`,
      );
    steps.forEach((step, at) => {
      const before = steps[at - 1];
      if (before === undefined) return;
      const clock = clockAt(day, step.from);
      if (step.from < before.until)
        say(
          step.from,
          before.until,
          `${clock}: ${step.name} for ${visit.name} would begin before ${before.name} has ended.`,
        );
      else if (visit.steps[at]?.atOnce === true && step.from > before.until)
        say(before.until, step.from, `${clock}: ${step.name} for ${visit.name} must follow ${before.name} at once.`);
    });
    return said;
  });

export const dose: Rule = (day, plan) =>
  completeVisits(day, plan).flatMap(({ visit, index, times }) => {
    if (visit.dose === null || times.preparation === null || times.secondCheck === null) return [];
    const { preparationTicks, secondCheckTicks, keepsTicks, before } = visit.dose;
    const step = visit.steps[before]?.name ?? '';
    const begins = times.starts[before] ?? 0;
    const prepared = times.preparation + preparationTicks;
    const checked = times.secondCheck + secondCheckTicks;
    const said: Sentence[] = [];
    const say = (from: number, until: number, says: string): void => {
      said.push({ rule: 'dose', from, until, visits: [index], says });
    };
    if (times.preparation < times.arrives)
      say(
        times.preparation,
        times.arrives,
        `${clockAt(day, times.preparation)}: the dose for ${visit.name} would be prepared before the person is here.`,
      );
    if (times.secondCheck < prepared)
      say(
        times.secondCheck,
        prepared,
        `${clockAt(day, times.secondCheck)}: the second check for ${visit.name} would begin before the dose is prepared.`,
      );
    if (checked > begins)
      say(
        begins,
        checked,
        `${clockAt(day, begins)}: ${step} for ${visit.name} would begin before the second check has ended.`,
      );
    if (begins - prepared > keepsTicks)
      say(
        prepared,
        begins,
        `${clockAt(day, prepared)}: the dose for ${visit.name} would stand ${minutesOf(day, begins - prepared)} before the ${step}; it may stand ${minutesOf(day, keepsTicks)}.`,
      );
    return said;
  });
