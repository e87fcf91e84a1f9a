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
  heldToTime,
  improveDrawn,
  objectiveOf,
  objectiveText,
  replan,
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
const leastOnTime = 50;
const mostOnTime = 99;
/** Plans searched for beside the first, where that ends on time too seldom. */
const othersTried = 7;
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
  --on-time N        of 100 rehearsals so many are to end by closing, ${leastOnTime} to ${mostOnTime} (what the unit, or FILE under "onTimePercent", asks):
                     where the best plan does so less often, others nearly as good are searched for and rehearsed alike
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
      'on-time': { type: 'string' },
      effort: { type: 'string', default: usualEffort },
      json: { type: 'boolean', default: false },
      ...sessionOptions,
      ...restOptions,
    });
    if (Number(values.check) + Number(values.improve) + Number(values.now !== undefined) > 1)
      throw misused('One of --check, --improve and --now, not two.');
    const seed = wholeOption('seed', values.seed, 0, mostSeed);
    const effort = wholeOption('effort', values.effort, 1, mostEffort);
    const isWhole = !values.check && !values.improve && values.now === undefined;
    if (values['on-time'] !== undefined && !isWhole)
      throw misused('--on-time is for a plan of the whole day: not with --check, --improve or --now.');
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
    if (values['on-time'] === undefined) return planned(telling, { seed, effort });
    const onTimePercent = wholeOption('on-time', values['on-time'], leastOnTime, mostOnTime);
    return planned({ ...telling, file: { ...file, day: { ...file.day, onTimePercent } } }, { seed, effort });
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

type Search = { readonly seed: number; readonly effort: number };

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
    const held = heldToTime(day, answer, usualChances, {
      others: othersTried,
      search: { iterations: effort },
      rehearse: { seed, days: daysTried },
    });
    const { plan, objective, isProven } = held?.answer ?? answer;
    return tell(telling, plan, {
      head: {
        answer: 'planned',
        seed,
        isProven,
        atLeast: objectiveJson(day, bound),
        ...(held === undefined
          ? {}
          : {
              onTime: {
                askedPercent: day.onTimePercent,
                reached: held.onTime,
                ofBest: held.onTimeOfBest,
                tried: held.tried,
                days: daysTried,
              },
            }),
      },
      says: [
        boundText(day, objective, bound, isProven),
        ...(held === undefined ? [] : [held.says]),
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
