/** A day planned, a plan judged, or the rest of a day planned again; never a bad plan for an impossible day. */
import {
  type Day,
  type Drawn,
  type Plan,
  type Sentence,
  type Why,
  answerDay,
  boundText,
  broken,
  brokenInDrawing,
  clockAt,
  compareObjectives,
  improveDrawn,
  objectiveOf,
  objectiveText,
  planDay,
  replan,
  steadiestOf,
  usualChances,
  whyThisTime,
  writePlan,
} from '@twelvemonth/planning';
import { jsonText } from '../columns.ts';
import { type Command, type Output, mostSeed, readOptions, wholeOption } from '../command.ts';
import { type ExitCode, exitCodes, misused } from '../ending.ts';
import { objectiveJson, planText, refereeText, replanText, whyText } from '../plan-text.ts';
import {
  type DayFile,
  dayMeant,
  drawnOf,
  minutesCaution,
  planOf,
  sessionHelp,
  sessionOptions,
  shortInfusionsCaution,
} from '../planned-day.ts';
import { onGrid, tickOf } from '../time-of-day.ts';
import { changesSaid, plannedRest, restHelp, restOptions } from '../rest-of-day.ts';

const usualEffort = '10000';
const mostEffort = 10_000_000;
const mostSteady = 50;
/** Plans this near to the best are near-equals: two steps of the usual grid. A choice, no source. */
const nearMinutes = 10;
const daysTried = 2_000;
/** A proof may meet half as many contradictions as the search makes tries; a remedy is tried with a twentieth. */
const triesPerContradiction = 2;
const triesPerRemedyTry = 20;

export const planCommand: Command = {
  summary: 'give each visit of a day its times, and say how good that is',
  help: `twelvemonth plan FILE [options]
twelvemonth plan --session ID [options]

Reads a day (people, staff, chairs; the guide shows the format), gives each visit its times, has every rule checked by a
referee that shares nothing with the search, and says what no plan can be better than and whether that is proven.
A day that is impossible gets no plan: it says what is impossible and the least that would make it possible, and ends with 1.
It says when, never whether: each person's readiness is decided elsewhere, and nobody is booked by it.
FILE - is standard input. What --json writes can be read again here and by rehearse.

  --check            FILE has a plan in it: only the referee speaks about it; ends with 1 if a rule is broken
  --improve          FILE has a plan in it, drawn by hand: the search begins there; what is "locked" ("time", "chair" or
                     "time and chair") stays, and what breaks a rule is given other times
  --now TIME         FILE has a plan in it and the day as it is now known: the rest is planned again from TIME on;
                     what has begun stays, and as few people as possible are told another time
${restHelp}  --why NAME         why not earlier, and what would have to give; may be given more than once
  --steady N         of N plans searched for, those as good to within ${nearMinutes} minutes of waiting in all and of the end are tried
                     out with the same delays, and the one that ends on time most often is taken
  --seed N           chance in the search; the same seed gives the same plan (1)
  --effort N         tries of the search (${usualEffort})
  --json             all of it as JSON
${sessionHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      check: { type: 'boolean', default: false },
      improve: { type: 'boolean', default: false },
      now: { type: 'string' },
      why: { type: 'string', multiple: true, default: [] },
      seed: { type: 'string', default: '1' },
      steady: { type: 'string' },
      effort: { type: 'string', default: usualEffort },
      json: { type: 'boolean', default: false },
      ...sessionOptions,
      ...restOptions,
    });
    if (Number(values.check) + Number(values.improve) + Number(values.now !== undefined) > 1)
      throw misused('One of --check, --improve and --now, not two.');
    const seed = wholeOption('seed', values.seed, 0, mostSeed);
    const effort = wholeOption('effort', values.effort, 1, mostEffort);
    const steady = values.steady === undefined ? 1 : wholeOption('steady', values.steady, 2, mostSteady);
    if (steady > 1 && (values.check || values.improve || values.now !== undefined))
      throw misused('--steady is for a plan of the whole day: not with --check, --improve or --now.');
    const { file, path } = await dayMeant('plan', positionals, values, output);
    const asked = values.why.map((name) => visitCalled(file.day, name));
    if (file.hasUsualMinutes) output.aside(minutesCaution);
    const short = shortInfusionsCaution(file.day);
    if (short !== undefined) output.aside(short);
    const telling = { file, asked, json: values.json, output };
    if (values.check) return judged(telling, planOf(file, path));
    if (values.improve) return improved(telling, drawnOf(file, path), { seed, effort });
    if (values.now !== undefined && values.session !== undefined) {
      tickOf(file.day, onGrid(file.day, values.now));
      const rest = { time: values.now, changes: changesSaid(values, file.day), seed, effort };
      return plannedRest(file, rest, telling);
    }
    if (values.now !== undefined)
      return plannedAgain(telling, planOf(file, path), { now: tickOf(file.day, values.now), seed, effort });
    return planned(telling, { seed, effort, steady });
  },
};

type Telling = {
  readonly file: DayFile;
  /** Visits for which "why this time" is asked. */
  readonly asked: readonly number[];
  readonly json: boolean;
  readonly output: Output;
};

function visitCalled(day: Day, name: string): number {
  const visit = day.visits.findIndex((one) => one.name === name);
  if (visit < 0) throw misused(`--why ${name}: nobody of the day is called that.`);
  return visit;
}

const whysOf = (day: Day, plan: Plan, asked: readonly number[]): Why[] =>
  asked.flatMap((visit) => whyThisTime(day, plan, visit) ?? []);

const whyJson = (day: Day, { visit, says, earlier }: Why) => ({
  name: day.visits[visit]?.name,
  says,
  earlier: earlier.map((one) => ({
    arrives: clockAt(day, one.arrives),
    broken: one.broken.map((sentence) => sentence.says),
    wouldHaveToGive: one.wouldHaveToGive,
  })),
});

/** The plan with everything said about it; ends with 1 when the referee objects. */
function tell(
  { file, asked, json, output }: Telling,
  plan: Plan,
  more: { readonly head: Record<string, unknown>; readonly says: readonly string[]; readonly drawn?: Drawn },
): ExitCode {
  const { day } = file;
  const sentences = more.drawn === undefined ? broken(day, plan) : brokenInDrawing(day, more.drawn);
  const referee = sentences.map(({ says }) => says);
  if (sentences.some(isIncomplete)) {
    // Without all its times nothing can be counted or told of a plan but what is missing.
    output.out(json ? jsonText({ ...more.head, referee, day: file.written }) : refereeText(referee));
    return exitCodes.no;
  }
  const objective = objectiveOf(day, plan);
  const whys = whysOf(day, plan, asked);
  if (json)
    output.out(
      jsonText({
        ...more.head,
        objective: objectiveJson(day, objective),
        referee,
        ...(whys.length === 0 ? {} : { why: whys.map((why) => whyJson(day, why)) }),
        day: file.written,
        plan: writePlan(day, plan, more.drawn),
      }),
    );
  else
    output.out(
      [
        objectiveText(day, objective),
        ...more.says,
        refereeText(referee),
        '',
        planText(day, plan),
        ...whys.flatMap((why) => ['', whyText(day, why)]),
      ].join('\n'),
    );
  return referee.length === 0 ? exitCodes.done : exitCodes.no;
}

type Search = { readonly seed: number; readonly effort: number; readonly steady: number };

const percent = 100;
const inHundred = (share: number): string => (share * percent).toFixed(1);

/** The same day searched with other chance, and of what is as good to within a few minutes the steadiest. */
function steadied(day: Day, best: Plan, { seed, effort, steady }: Search): { plan: Plan; says: string; json: unknown } {
  const others = Array.from(
    { length: steady - 1 },
    (_, index) => planDay(day, { seed: seed + index + 1, limit: { iterations: effort } }).plan,
  );
  const ticks = Math.floor(nearMinutes / day.minutesPerTick);
  const near = { waitTicks: ticks, finishTicks: ticks };
  const found = steadiestOf(day, [best, ...others], near, usualChances, { seed, days: daysTried });
  if (found === undefined) return { plan: best, says: '', json: undefined };
  const { chosen, best: first, tried } = found;
  const shares = tried.map(({ onTime }) => onTime);
  return {
    plan: chosen.plan,
    says:
      tried.length === 1
        ? `Of ${steady} plans searched for none other is as good to within ${nearMinutes} minutes. It ends on time on ${inHundred(chosen.onTime)} of 100 days tried out.`
        : `Of ${steady} plans searched for, ${tried.length} differ and are as good to within ${nearMinutes} minutes. Tried out on the same ${daysTried} days they end on time on ${inHundred(Math.min(...shares))} to ${inHundred(Math.max(...shares))} of 100; taken is the one with ${inHundred(chosen.onTime)}, the best by waiting and end alone has ${inHundred(first.onTime)}.`,
    json: {
      searched: steady,
      days: daysTried,
      onTime: chosen.onTime,
      onTimeOfBest: first.onTime,
      tried: tried.map((one) => ({ onTime: one.onTime, objective: objectiveJson(day, one.objective) })),
    },
  };
}

function planned(telling: Telling, search: Search): ExitCode {
  const { seed, effort } = search;
  const { day } = telling.file;
  const answer = answerDay(day, seed, {
    search: { iterations: effort },
    contradictions: Math.ceil(effort / triesPerContradiction),
    remedy: { iterations: Math.ceil(effort / triesPerRemedyTry) },
  });
  if (answer.kind === 'planned') {
    const { bound } = answer;
    const steady = search.steady === 1 ? undefined : steadied(day, answer.plan, search);
    const plan = steady?.plan ?? answer.plan;
    const objective = objectiveOf(day, plan);
    // What is proven of the best plan is not proven of one that is a little worse and steadier.
    const isProven = answer.isProven && compareObjectives(objective, answer.objective) === 0;
    return tell(telling, plan, {
      head: {
        answer: 'planned',
        seed,
        isProven,
        atLeast: objectiveJson(day, bound),
        ...(steady === undefined ? {} : { steady: steady.json }),
      },
      says: [
        boundText(day, objective, bound, isProven),
        ...(steady === undefined ? [] : [steady.says]),
        ...tellAgain(telling.file, plan),
      ],
    });
  }
  const { isProven } = answer;
  const reasons = answer.reasons.map(({ says }) => says);
  const remedies = answer.remedies.map(({ says }) => says);
  const { json, output } = telling;
  if (json) output.out(jsonText({ answer: 'impossible', seed, isProven, reasons, remedies }));
  else
    output.out(
      [
        isProven
          ? `${day.id} is impossible:`
          : `${day.id}: no plan was found, and it is not proven that there is none:`,
        ...reasons.map((says) => `  ${says}`),
        remedies.length === 0 ? 'No single change was found that is enough.' : 'Any one of these would be enough:',
        ...remedies.map((says) => `  ${says}`),
      ].join('\n'),
    );
  return exitCodes.no;
}

/** Who has been told another time than this plan gives; nobody is told by it. */
function tellAgain({ day, told = [] }: DayFile, plan: Plan): string[] {
  const moved = told.flatMap(({ name, arrives }) => {
    const times = plan[day.visits.findIndex((visit) => visit.name === name)];
    const proposed = times === null || times === undefined ? undefined : clockAt(day, times.arrives);
    return proposed === undefined || proposed === arrives ? [] : [`  ${name}: ${proposed} instead of ${arrives}`];
  });
  if (told.length === 0) return [];
  if (moved.length === 0) return ['Everyone comes when they have been told.'];
  return [`A proposal: ${moved.length} of ${told.length} would have to be told another time.`, ...moved];
}

const isIncomplete = ({ rule }: Sentence): boolean => rule === 'times are complete';

const judged = (telling: Telling, plan: Plan): ExitCode =>
  tell(telling, plan, { head: { answer: 'judged' }, says: [] });

function improved(
  telling: Telling,
  drawn: Drawn,
  { seed, effort }: { readonly seed: number; readonly effort: number },
): ExitCode {
  const { day } = telling.file;
  const { json, output } = telling;
  const answer = improveDrawn(day, drawn, { seed, limit: { iterations: effort } });
  if (answer.kind === 'improved') {
    const before = brokenInDrawing(day, drawn).length;
    const kept = before === 0 ? '' : `; the drawing broke ${before === 1 ? 'a rule' : `rules ${before} times`}`;
    return tell(telling, answer.drawn.plan, {
      head: { answer: 'improved', seed },
      says: [`From the drawing: ${objectiveText(day, objectiveOf(day, drawn.plan))}${kept}`],
      drawn: answer.drawn,
    });
  }
  const why =
    answer.kind === 'locks break rules'
      ? answer.said.map(({ says }) => says)
      : [`Beside what is locked there is no place for ${answer.visits.map((at) => day.visits[at]?.name).join(', ')}.`];
  if (json) output.out(jsonText({ answer: answer.kind, seed, says: why }));
  else
    output.out(
      [
        answer.kind === 'locks break rules'
          ? 'Nothing was planned: what is locked breaks a rule by itself.'
          : 'Nothing was planned.',
        ...why.map((says) => `  ${says}`),
      ].join('\n'),
    );
  return exitCodes.no;
}

function plannedAgain(
  telling: Telling,
  plan: Plan,
  { now, seed, effort }: { readonly now: number; readonly seed: number; readonly effort: number },
): ExitCode {
  const { day } = telling.file;
  const missing = broken(day, plan).find(isIncomplete);
  if (missing !== undefined)
    throw misused(`The plan has to be whole before the rest can be planned again. ${missing.says}`);
  const again = replan(day, plan, { now, seed, limit: { iterations: effort } });
  const name = (visit: number): string => day.visits[visit]?.name ?? '';
  return tell(telling, again.plan, {
    head: {
      answer: 'planned again',
      seed,
      now: clockAt(day, now),
      moved: again.moved.map(({ visit, from, to }) => ({
        name: name(visit),
        from: clockAt(day, from),
        to: clockAt(day, to),
      })),
      lost: again.lost.map(name),
      cannotFinish: again.stuck.map(name),
    },
    says: [replanText(day, again)],
  });
}
