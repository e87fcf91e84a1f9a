/** What sets the first day of a window: the chain that ends in it, root first (docs/readiness.md A5). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { RequirementId } from '../protocol/requirement-ids.ts';
import type { Path } from '../requirements/requirement.ts';
import { type Plan, drawDay, pathOn } from './plan.ts';
import type { WaitingLink } from './readiness.ts';
import { type World, samplesCountOn } from './world.ts';

/** Whether one requirement alone could hold on a day. */
function isAchievable(world: World, day: Day, path: Path): boolean {
  if (path.is === 'ready') return true;
  if (path.is !== 'steps') return false;
  const { draw, weigh } = path.needs;
  return draw === undefined || drawDay(world, day, [draw], weigh) !== undefined;
}

/** The gravest requirement that cannot be achieved on the day before the plan's: the one that sets the first day. */
function holderBefore(world: World, plan: Plan): RequirementId | undefined {
  if (plan.on <= world.today) return undefined;
  const before = addDays(plan.on, -1);
  const alone = world.order.find((id) => !isAchievable(world, before, pathOn(world, id, before)));
  // Each could be had alone, but not all from one draw: the draw holds.
  return alone ?? plan.draw?.tests[0]?.requirement;
}

const testWords = { creatinine: 'bloods', calcium: 'calcium sample', 'vitamin D': 'vitamin D sample' } as const;
const resultWords = { creatinine: 'result usable', calcium: 'result usable', 'vitamin D': 'vitamin D result' } as const;

export function waitingFor(world: World, plan: Plan): readonly WaitingLink[] {
  const holder = holderBefore(world, plan);
  if (holder === undefined) return [];
  const links: WaitingLink[] = [];
  const test = plan.draw?.tests.find(({ requirement }) => requirement === holder);
  const loads = plan.load !== undefined && (holder === 'vitamin-d' || test?.notBefore !== undefined);
  if (loads && plan.load !== undefined) {
    links.push({
      what: `vitamin D loading to ${shortDate(plan.load.last)}`,
      until: plan.load.last,
      requirement: 'vitamin-d',
    });
  }
  if (plan.draw !== undefined && test !== undefined) {
    const count = samplesCountOn(world, plan.on);
    if (!loads && count.from !== 'any' && count.from !== 'none' && count.from > world.today) {
      links.push({ what: `samples count from ${shortDate(count.from)}`, until: count.from, requirement: holder });
    }
    if (plan.draw.on > world.today) {
      links.push({
        what: `${testWords[test.test]}${loads ? ' from' : ' on'} ${shortDate(plan.draw.on)}`,
        until: plan.draw.on,
        requirement: holder,
      });
    }
    links.push({
      what: `${resultWords[test.test]} ${shortDate(plan.draw.usable)}`,
      until: plan.draw.usable,
      requirement: holder,
    });
  }
  if (links.length === 0) {
    const path = pathOn(world, holder, addDays(plan.on, -1));
    links.push({ what: path.is === 'waiting' ? path.what : holder, until: plan.on, requirement: holder });
  }
  return links;
}
