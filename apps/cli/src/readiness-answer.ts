/** One person's readiness as the command prints it: the sentences every other face shows, and the same as JSON. */
import {
  type Day,
  type DecisionContext,
  type ReadinessView,
  type SubjectRecord,
  latest,
  placeFrom,
  readiness,
  subjectId,
  viewOf,
} from '@twelvemonth/clinical';
import { columnsText } from './columns.ts';
import { type UnitWords, wordsOf } from './unit-words.ts';

export type Asked = {
  readonly record: SubjectRecord;
  readonly context: DecisionContext;
  readonly today: Day;
  readonly on: Day;
  readonly standing?: string;
  /** In whose words it is said. */
  readonly words?: UnitWords;
};

/** Empty where the notes do not say it. */
const numberOf = (record: SubjectRecord): string => latest(record, 'identity')?.body.number ?? '';

export type Answer = {
  readonly patient: string;
  readonly number: string;
  readonly standing: string | undefined;
  readonly view: ReadinessView;
  readonly words: UnitWords;
};

export function answerOf({ record, context, today, on, standing, words = wordsOf(undefined) }: Asked): Answer {
  const place = placeFrom(record, today);
  const asked = readiness(record, context, today, place === undefined ? {} : { place: place.on });
  return {
    patient: subjectId(record.subject),
    number: numberOf(record),
    standing,
    view: viewOf(asked, record, context, { on }),
    words,
  };
}

/** On the date asked about. */
export const isReady = ({ view }: Answer): boolean => view.verdictOn === 'ready';

/** Verdicts, window and every requirement with its working; dates as YYYY-MM-DD. Absent parts are left out. */
export function answerJson({ patient, number, standing, view }: Answer) {
  const { window, noWindow } = view;
  return {
    patient,
    number,
    standing,
    today: view.today,
    on: view.on,
    verdict: view.verdictOn,
    headline: view.headlineOn,
    verdictToday: view.verdict,
    headlineToday: view.headline,
    nearLimit: view.nearLimit,
    window:
      window === undefined
        ? undefined
        : {
            from: window.first,
            until: window.last,
            certain: window.certain,
            certainUntil: window.certainUntil,
            firstSession: window.firstSession,
            lastSession: window.lastSession,
            says: window.says,
          },
    noWindow,
    waitingFor: window?.waitingFor ?? [],
    next: window?.next,
    runsOut: window?.runsOut,
    runOn: window?.runOn,
    otherwise: window?.otherwise ?? [],
    nextSteps: view.nextSteps,
    requirements: view.requirements.map((requirement) => ({
      id: requirement.id,
      title: requirement.title,
      ...(requirement.onDate ?? requirement.today),
      working: requirement.workingOnDate ?? requirement.working,
      clearedBy: requirement.clearedBy,
    })),
    askedOnTheDay: view.askedOnTheDay,
    place: view.place,
    regimen: view.regimen,
    protocolVersion: view.protocolVersion,
    cautions: view.cautions,
  };
}

/** One line a person. */
export const answersTable = (answers: readonly Answer[]): string =>
  columnsText(
    ['number', 'on', 'verdict', 'window', 'why'],
    answers.map(({ number, view, words }) => [
      number,
      view.on,
      view.verdictOn,
      words(view.window?.says ?? '-'),
      words(view.headlineOn),
    ]),
  );

/** One person, whole: what a nurse would want read out. */
export function answerText({ number, standing, view, words }: Answer): string {
  const lines = [`${number}${standing === undefined ? '' : `  ${standing}`}`, `today, ${view.today}: ${view.headline}`];
  if (view.on !== view.today) lines.push(`on ${view.on}: ${view.headlineOn}`);
  const { window, noWindow } = view;
  if (window !== undefined) {
    lines.push(`window: ${window.says}`);
    if (window.waitingFor.length > 0)
      lines.push(`waiting for: ${window.waitingFor.map(({ what, until }) => `${what} (${until})`).join(' -> ')}`);
    lines.push(...[window.next, ...window.otherwise].filter((text) => text !== undefined));
    if (window.runsOut !== undefined) lines.push(`runs out: ${window.runsOut}`);
    if (window.runOn !== undefined) lines.push(window.runOn);
  }
  if (noWindow !== undefined)
    lines.push(
      `window: ${noWindow.says}`,
      ...noWindow.needs.map((need) => `  needs ${need}`),
      ...(noWindow.ifSettled === undefined ? [] : [noWindow.ifSettled]),
    );
  if (view.nextSteps.length > 0) {
    lines.push(
      '',
      'next steps',
      columnsText(
        ['from', 'until', 'what', 'who', 'counts from'],
        view.nextSteps.map((step) => [step.earliest, step.latest ?? '-', step.what, step.who, step.effectFrom]),
      ),
    );
  }
  lines.push('', `what must hold, by protocol ${view.protocolVersion}`);
  lines.push(
    columnsText(
      ['verdict', 'requirement', 'why'],
      view.requirements.map((requirement) => {
        const { verdict, nearLimit } = requirement.onDate ?? requirement.today;
        return [
          nearLimit ? `${verdict}, near the limit` : verdict,
          requirement.title,
          (requirement.workingOnDate ?? requirement.working).says,
        ];
      }),
    ),
  );
  if (view.cautions.length > 0) lines.push('', ...view.cautions);
  return words(lines.join('\n'));
}
