/** Readiness in sentences and plain dates: made once, shown the same on screens, in letters and on the command line. */
import { type Day, addDays, dateWithWeekday, day as dayOf, plainDate, shortDate } from '../calendar/day.ts';
import { protocolFor } from '../course/prescribed.ts';
import { firstSessionDay, lastSessionDay } from '../calendar/unit-calendar.ts';
import { numberKeys } from '../protocol/number-keys.ts';
import { type Protocol, type ProtocolTimeline, numberOf } from '../protocol/protocol.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { requirements } from '../requirements/index.ts';
import { standsOn, verdictOn } from './ask.ts';
import type { DecisionContext } from './context.ts';
import type { NextStep, NoWindow, Readiness, VerdictOn, Window } from './readiness.ts';
import { rangeText } from './texts.ts';
import type { NextStepView, ReadinessView, RequirementView, WorkingView } from './view.ts';
import type { Span, Timeline, Working } from './working.ts';

export type Viewed = {
  /** The date asked about; today if absent. */
  readonly on?: Day;
};

/** The version in force on a day, as it stands for what is prescribed now. */
const inForceFor = (protocols: ProtocolTimeline, record: SubjectRecord, today: Day, day: Day): Protocol | undefined => {
  const found = protocols.findLast(({ from }) => from <= day)?.protocol;
  return found === undefined ? undefined : protocolFor(found, record, today);
};

export function viewOf(
  asked: Readiness,
  record: SubjectRecord,
  context: DecisionContext,
  viewed: Viewed = {},
): ReadinessView {
  const today = asked.asked;
  const on = viewed.on !== undefined && viewed.on > today ? viewed.on : today;
  const now = verdictOn(asked, today);
  const then = on === today ? now : verdictOn(asked, on);
  const inForceOn = (day: Day): Protocol | undefined => inForceFor(context.protocols, record, today, day);
  const protocol = inForceOn(today);
  return {
    today: plainDate(today),
    on: plainDate(on),
    protocolVersion: asked.protocolVersion,
    ...(asked.regimen === undefined ? {} : { regimen: asked.regimen }),
    verdict: now.verdict,
    nearLimit: now.nearLimit,
    headline: headlineToday(asked, now),
    verdictOn: then.verdict,
    headlineOn: then.headline,
    ...(asked.window === undefined ? {} : { window: windowView(asked, asked.window, context) }),
    ...(asked.noWindow === undefined ? {} : { noWindow: noWindowView(asked.noWindow) }),
    nextSteps: asked.nextSteps.map(stepView),
    requirements: asked.timelines.map((timeline) => requirementView(timeline, today, on, inForceOn)),
    askedOnTheDay:
      protocol === undefined
        ? []
        : [
            ...(protocol.leavesOut.has('kidney-function')
              ? []
              : ['Weigh: the clearance is worked out again with the weight of the day.']),
            ...protocol.sheet.dayQuestions.map(({ asks }) => asks),
          ],
    ...(asked.place === undefined ? {} : { place: plainDate(asked.place) }),
    cautions: cautionsOf(record, protocol, today),
  };
}

function headlineToday(asked: Readiness, now: VerdictOn): string {
  const { window, noWindow } = asked;
  if (now.verdict === 'ready' || now.verdict === 'does not apply') {
    return window?.last === undefined ? now.headline : `${now.headline} until ${dateWithWeekday(window.last)}`;
  }
  if (window !== undefined)
    return `${now.headline}. Possible from ${dateWithWeekday(window.first)}${ifGood(asked, window)}`;
  const needs = noWindow?.needs[0];
  return `${now.headline}. No date yet${needs === undefined ? '' : `: needs ${needs.what}`}`;
}

/** ", if good", or what exactly is assumed where it is one value never measured. */
function ifGood(asked: Readiness, window: Window): string {
  if (window.certain) return '';
  const [only, ...others] = window.otherwise;
  const draws = asked.nextSteps.filter(({ kind }) => kind === 'draw');
  const onlyVitaminD = draws.length === 1 && draws[0]?.tests?.length === 1 && draws[0].tests[0] === 'vitamin D';
  if (only !== undefined && others.length === 0 && onlyVitaminD && asked.nextSteps.length === 1)
    return `, if ${only.when.replace(/is below (.*)/, 'is $1 or more')}`;
  return ', if good';
}

function windowView(
  asked: Readiness,
  window: Window,
  { calendar }: DecisionContext,
): NonNullable<ReadinessView['window']> {
  const { first, last } = window;
  const firstSession = firstSessionDay(calendar, first, last);
  const lastSession = last === undefined ? undefined : lastSessionDay(calendar, last, first);
  return {
    first: plainDate(first),
    ...(last === undefined ? {} : { last: plainDate(last) }),
    ...(firstSession === undefined ? {} : { firstSession: plainDate(firstSession) }),
    ...(lastSession === undefined ? {} : { lastSession: plainDate(lastSession) }),
    certain: window.certain,
    ...(window.certainUntil === undefined ? {} : { certainUntil: plainDate(window.certainUntil) }),
    says: `${rangeText(first, last)}${ifGood(asked, window)}`,
    waitingFor: window.waitingFor.map(({ what, until }) => ({ what, until: plainDate(until) })),
    ...nextText(window),
    ...(window.runsOut === undefined || last === undefined
      ? {}
      : { runsOut: `${window.runsOut.cause} on ${shortDate(addDays(last, 1))}` }),
    ...(window.runOn === undefined
      ? {}
      : {
          runOn: `${window.runOn.what} by ${shortDate(window.runOn.by)} would run on without a gap${window.runOn.last === undefined ? '' : `, to ${shortDate(window.runOn.last)}`}`,
        }),
    otherwise: window.otherwise.map(
      ({ when, first: from }) =>
        `if ${when}: ${from === undefined ? 'no date, a prescriber decides' : `from ${shortDate(from)}`}`,
    ),
  };
}

function nextText({ next, waitingFor }: Window): { readonly next?: string } {
  const root = waitingFor[0];
  if (next === undefined || root === undefined) return {};
  return {
    next: `without that it would be possible from ${shortDate(next.first)}${next.what === 'nothing more' ? '' : `, then waiting for ${next.what}`}`,
  };
}

function noWindowView({ needs, ifSettled }: NoWindow): NonNullable<ReadinessView['noWindow']> {
  return {
    says: 'no date yet',
    needs: needs.map(({ requirement, what }) => `${requirements[requirement].title}: ${what}`),
    ...(ifSettled === undefined
      ? {}
      : { ifSettled: `if settled today: ${rangeText(ifSettled.first, ifSettled.last)}, if good` }),
  };
}

const stepView = (step: NextStep): NextStepView => ({
  kind: step.kind,
  what: step.what,
  who: step.who === 'patient' ? 'the patient' : step.who,
  earliest: plainDate(step.earliest),
  ...(step.latest === undefined ? {} : { latest: plainDate(step.latest) }),
  effectFrom: plainDate(step.effectFrom),
  assumed: step.assumed,
  why: step.why,
});

const answerView = ({ verdict, cause, nearLimit, exception }: Span) => ({
  verdict,
  cause,
  nearLimit,
  exception: exception !== undefined,
});

function requirementView(
  timeline: Timeline,
  today: Day,
  on: Day,
  inForceOn: (day: Day) => Protocol | undefined,
): RequirementView {
  const { title, clearedBy, exceptionPossible } = requirements[timeline.requirement];
  const span = standsOn(timeline, today);
  const then = on === today ? undefined : standsOn(timeline, on);
  return {
    id: timeline.requirement,
    title,
    today: { ...answerView(span), ...(span.until === undefined ? {} : { until: plainDate(span.until) }) },
    ...(then === undefined ? {} : { onDate: answerView(then) }),
    working: workingView(span.working(), inForceOn(today)),
    ...(then === undefined ? {} : { workingOnDate: workingView(then.working(), inForceOn(on)) }),
    clearedBy,
    exceptionPossible,
  };
}

function workingView(working: Working, protocol: Protocol | undefined): WorkingView {
  return {
    says: working.says,
    inputs: working.inputs.map(({ label, text, on, entry }) => ({
      label,
      text,
      ...(on === undefined ? {} : { on: plainDate(on) }),
      ...(entry === undefined ? {} : { entry }),
    })),
    formulas: working.formulas,
    thresholds: working.thresholds.map((threshold) => {
      if (!('key' in threshold)) return { ...threshold, status: 'local decision' };
      const { unit, means } = numberKeys[threshold.key];
      const number = protocol === undefined ? undefined : numberOf(protocol, threshold.key);
      return {
        label: means,
        text: `${number?.value ?? '-'} ${unit}`,
        source: number?.source ?? 'no protocol in force',
        status: number?.status ?? 'local decision',
      };
    }),
    cautions: [...unsignedCautions(working, protocol), ...working.cautions],
    protocolVersion: protocol?.version ?? 'none in force',
  };
}

/** A number nobody at the unit has signed decides like any other, and says so wherever it has decided. */
const unsignedCautions = ({ thresholds }: Working, protocol: Protocol | undefined): string[] =>
  thresholds.flatMap((threshold) =>
    'key' in threshold &&
    protocol !== undefined &&
    numberOf(protocol, threshold.key).status === 'added by an upgrade, not signed'
      ? [
          `“${numberKeys[threshold.key].means}” was added by an upgrade of the product: the protocol ${protocol.version} was signed without it.`,
        ]
      : [],
  );

function cautionsOf(record: SubjectRecord, protocol: Protocol | undefined, today: Day): string[] {
  const cautions: string[] = [];
  if (protocol === undefined) cautions.push('No protocol is in force today: nothing can be judged.');
  else {
    if (protocol.sheet.reviewBy < plainDate(today))
      cautions.push(
        `The protocol ${protocol.version} is past its review date, ${shortDate(dayOf(protocol.sheet.reviewBy))}.`,
      );
    const { length: added } = protocol.added;
    if (added > 0)
      cautions.push(
        `The protocol ${protocol.version} was signed before an upgrade of the product: ${added === 1 ? 'one part of it is' : `${added} parts of it are`} filled in from the starter and not signed by anybody here. A new version is to be signed by two people.`,
      );
    cautions.push(...protocol.regimen.cautions, ...protocol.sheet.cautions);
  }
  const { length } = record.problems;
  if (length > 0)
    cautions.push(
      `${length} ${length === 1 ? 'entry' : 'entries'} of these notes could not be read: what they say is not in this answer.`,
    );
  return cautions;
}
