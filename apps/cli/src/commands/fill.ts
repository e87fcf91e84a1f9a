/** People proposed for places: a list of changes, each to be accepted by somebody; or who could have a place that came free. */
import {
  type EarlierSession,
  type FillAnswer,
  type FillChange,
  type FillRequest,
  type InShares,
  fairnessOf,
  fillRequestFromNotes,
  fillInSteps,
  readFillRequest,
  standbyFor,
  tierNames,
  whyNotEarlier,
  worthOfOneMore,
} from '@twelvemonth/planning';
import { columnsText, jsonText } from '../columns.ts';
import { type Command, type Output, dateOption, readOptions } from '../command.ts';
import { type ExitCode, answeredNo, exitCodes, misused } from '../ending.ts';
import { inTurns } from '../in-turns.ts';
import { jsonFromFile, unusable } from '../json-file.ts';
import { type PlaceOptions, placeHelp, placeOptions, withNotes } from '../notes-place.ts';
import { recordsOfUnit, sessionsOfUnit, unitNamed } from '../unit-notes.ts';
import { type UnitWords, wordsOf } from '../unit-words.ts';

export const fillCommand: Command = {
  summary: 'waiting people proposed for places, as a list of changes',
  help: `twelvemonth fill FILE [options]
twelvemonth fill --unit ID [options]

FILE says who waits, in which window, and what the sessions hold; the guide shows it; - is standard input. The more urgent come
first and are never traded. Nothing is booked: each change is a proposal until somebody accepts it. Nothing is left to chance,
so there is no seed. Ends with 1 when somebody has no place. At a terminal it tells how far it is; Ctrl-C ends it with 130:
nothing is proposed then, and nothing has changed.

  --why NAME         why not earlier, session by session; may be given more than once
  --one-more KIND    in which sessions one more visit of this kind would help most
  --standby SESSION  instead: who could have a place that came free there, best first, by what they have been told
  --json             all of it as JSON
  --unit ID          instead of FILE: who waits and falls due at this unit, with the windows of their notes
  --until DATE       with --unit: sessions up to this day (all that are planned)
  --today DATE       with --unit: the day asked on (today at the unit)
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      why: { type: 'string', multiple: true, default: [] },
      'one-more': { type: 'string' },
      standby: { type: 'string' },
      json: { type: 'boolean', default: false },
      ...placeOptions,
      unit: { type: 'string' },
      until: { type: 'string' },
      today: { type: 'string' },
    });
    const [path] = positionals;
    if ((path === undefined) === (values.unit === undefined) || positionals.length > 1)
      throw misused('Say which file or which unit: fill FILE, or fill --unit ID.');
    const { written, words } =
      values.unit === undefined
        ? { written: jsonFromFile(path ?? ''), words: wordsOf(undefined) }
        : await fromNotes(values, output, values.standby !== undefined);
    const read = readFillRequest(written);
    if (!read.ok) throw unusable(path ?? 'the notes', read.problems);
    const { request, sessionNames } = read;
    const asked: Asked = { request, sessionNames, json: values.json, output, words };
    if (values.standby !== undefined) return standby(asked, indexOf('standby', sessionNames, values.standby));
    const why = values.why.map((name) =>
      indexOf(
        'why',
        request.people.map((one) => one.name),
        name,
      ),
    );
    const kind =
      values['one-more'] === undefined
        ? undefined
        : indexOf(
            'one-more',
            request.kinds.map((one) => one.name),
            values['one-more'],
          );
    if (read.hasUsualWeights)
      output.aside(
        'What counts how much are starting values (common practice, no source): write the unit’s own under "weights".',
      );
    const answer = await inTurns('filling', fillInSteps(request), output);
    if (!answer.ok)
      throw unusable(
        path ?? 'the notes',
        answer.problems.map((says) => ({ at: 'weights', says })),
      );
    const whole = await inTurns('why not earlier', wholeInSteps(request, answer, why, kind), output);
    return proposed(asked, whole);
  },
};

/** Those of a unit who wait and fall due, in its sessions up to a day. */
async function fromNotes(
  values: PlaceOptions & Readonly<Partial<Record<'unit' | 'until' | 'today', string | undefined>>>,
  output: Output,
  isStandby: boolean,
): Promise<{ readonly written: unknown; readonly words: UnitWords }> {
  const [until, asked] = [dateOption('until', values.until), dateOption('today', values.today)];
  const { made, words } = await withNotes(values, output, async (reader) => {
    const { unit, context, today: now } = await unitNamed(reader, values.unit);
    const sessions = await sessionsOfUnit(reader, unit.id);
    const made = fillRequestFromNotes({
      unit,
      context,
      today: asked ?? now,
      sessions: sessions.filter(({ on }) => until === undefined || on <= until),
      records: await recordsOfUnit(reader, unit.id),
      // Who is rung for a place that came free needs no days of notice.
      ...(isStandby ? { noticeDays: 0 } : {}),
    });
    return { made, words: wordsOf(unit) };
  });
  if (!made.ok) throw answeredNo(made.says);
  if (made.hasUsualSettings)
    output.aside(
      'The unit has not written what planning needs: starting values stand in (common practice, no source).',
    );
  for (const { name, because } of made.leftOut) output.aside(`left out: ${name}: ${because}`);
  return { written: made.request, words };
}

type Asked = {
  readonly request: FillRequest;
  readonly sessionNames: readonly string[];
  readonly json: boolean;
  readonly output: Output;
  readonly words: UnitWords;
};
type Answer = Extract<FillAnswer, { ok: true }>;

function indexOf(option: string, names: readonly string[], name: string): number {
  const index = names.indexOf(name);
  if (index < 0) throw misused(`--${option} ${name}: the file has nothing called that.`);
  return index;
}

const days = (count: number): string => (count === 1 ? '1 day' : `${count} days`);

function gainText({ from, gain }: FillChange): string {
  if (from === null) return '';
  if (gain === null) return 'the place told cannot stay';
  if (gain.days === 0) return 'somebody who was told has to move; another could as well';
  return `saves ${days(gain.days)} in all, counted for tier "${tierNames[gain.tier]}"`;
}

type Whole = {
  readonly answer: Answer;
  readonly why: readonly { readonly person: number; readonly earlier: readonly EarlierSession[] }[];
  readonly oneMore: ReturnType<typeof worthOfOneMore> | undefined;
};

function* wholeInSteps(
  request: FillRequest,
  answer: Answer,
  why: readonly number[],
  kind: number | undefined,
): InShares<Whole> {
  const { session, filling } = answer;
  // Who has no place is told why, asked or not.
  const asked = [...new Set([...why, ...withoutPlace(answer)])];
  const told: { person: number; earlier: readonly EarlierSession[] }[] = [];
  for (const person of asked) {
    yield told.length / asked.length;
    told.push({ person, earlier: whyNotEarlier(request, filling, person, session[person] ?? null) });
  }
  return { answer, why: told, oneMore: kind === undefined ? undefined : worthOfOneMore(request, filling, kind) };
}

const withoutPlace = ({ session }: Answer): number[] =>
  [...session.keys()].filter((person) => session[person] === null);

function proposed(asked: Asked, whole: Whole): ExitCode {
  const { output, json, words } = asked;
  output.out(json ? jsonText(proposalJson(asked, whole)) : words(proposalText(asked, whole)));
  return withoutPlace(whole.answer).length === 0 ? exitCodes.done : exitCodes.no;
}

function proposalJson({ request, sessionNames }: Asked, { answer, why, oneMore }: Whole) {
  const person = (index: number): string => request.people[index]?.name ?? '';
  const session = (index: number | null | undefined): string | null => sessionNames[index ?? -1] ?? null;
  return {
    places: answer.session.map((own, index) => ({ name: person(index), session: session(own) })),
    changes: answer.changes.map((change) => ({
      name: person(change.person),
      from: session(change.from),
      to: session(change.to),
      gain: change.gain === null ? null : { tier: tierNames[change.gain.tier], days: change.gain.days },
    })),
    tiers: answer.tiers.map(({ tier, ...rest }) => ({ tier: tierNames[tier], ...rest })),
    fairness: fairnessOf(request, answer.session),
    why: why.map((one) => ({
      name: person(one.person),
      sessions: one.earlier.map((earlier) => ({ ...earlier, session: session(earlier.session) })),
    })),
    ...(oneMore === undefined
      ? {}
      : {
          oneMore: oneMore.map((worth) => ({
            session: session(worth.session),
            tier: tierNames[worth.tier],
            days: worth.days,
          })),
        }),
  };
}

/** Sessions that one more visit would help most, told in words; `--json` has them all. */
const mostWorth = 5;

function proposalText({ request, sessionNames }: Asked, { answer, why, oneMore }: Whole): string {
  const person = (index: number): string => request.people[index]?.name ?? '';
  const session = (index: number | null | undefined): string => sessionNames[index ?? -1] ?? 'no place';
  const placed = answer.session.filter((own) => own !== null).length;
  const groups = fairnessOf(request, answer.session);
  const changes = answer.changes.map((change) => [
    person(change.person),
    change.from === null ? '' : session(change.from),
    session(change.to),
    gainText(change),
  ]);
  return [
    `${request.people.length} people, ${request.sessions.length} sessions: ${placed} have a place, ${request.people.length - placed} none. Nothing is booked: each change waits until somebody accepts it.`,
    '',
    columnsText(
      ['tier', 'people', 'no place', 'days counted', 'no filling below'],
      answer.tiers.map((one) => [
        tierNames[one.tier],
        String(one.people),
        String(one.withoutPlace),
        String(one.days),
        one.days === one.atLeast ? `${one.atLeast}: proven best` : String(one.atLeast),
      ]),
    ),
    '',
    changes.length === 0 ? 'Nothing changes.' : columnsText(['change for', 'told', 'proposed', 'because'], changes),
    ...why.flatMap((one) => [
      '',
      `${person(one.person)}: ${session(answer.session[one.person])}.`,
      ...(one.earlier.length === 0 ? ['  no session is earlier'] : one.earlier.map(({ says }) => `  ${says}`)),
    ]),
    ...(oneMore === undefined
      ? []
      : [
          '',
          columnsText(
            ['one more visit in', 'would save'],
            oneMore
              .slice(0, mostWorth)
              .map((worth) => [
                session(worth.session),
                worth.days <= 0 ? 'nothing' : `${days(worth.days)}, tier "${tierNames[worth.tier]}"`,
              ]),
          ),
        ]),
    ...(groups.length === 0
      ? []
      : [
          '',
          columnsText(
            ['group', 'people', 'no place', 'days late, half up to', 'nine in ten up to'],
            groups.map((one) => [
              one.group,
              String(one.people),
              String(one.withoutPlace),
              String(one.medianDaysLate),
              String(one.ninthDecileDaysLate),
            ]),
          ),
        ]),
  ].join('\n');
}

function standby({ request, sessionNames, json, output, words }: Asked, session: number): ExitCode {
  const told = request.people.map((one) => one.told);
  const list = standbyFor(request, told, session).map(({ person, from, ...rest }) => ({
    name: request.people[person]?.name ?? '',
    tier: tierNames[request.people[person]?.tier ?? 2],
    ...rest,
    from: from === null ? null : (sessionNames[from] ?? null),
  }));
  if (json) output.out(jsonText({ session: sessionNames[session], standby: list }));
  else if (list.length === 0)
    output.out(
      words('Nobody could have the place: ready, reachable in time, with bloods that hold, and no earlier one.'),
    );
  else
    output.out(
      columnsText(
        ['could come', 'tier', 'because', 'minutes away', 'would leave free'],
        list.map((one) => [one.name, one.tier, one.because, String(one.travelMinutes), one.from ?? '']),
      ),
    );
  return list.length === 0 ? exitCodes.no : exitCodes.done;
}
