/** Vitamin D: a level that passes in the unit it was reported in, or a finished loading that still stands (docs/readiness.md R4). */
import { type Day, addDays, shortDate } from '../calendar/day.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Working } from '../readiness/working.ts';
import type { Evidence } from './evidence.ts';
import { exceptionFor } from './exceptions.ts';
import { type LoadingPlan, remainingDoses } from './loading.ts';
import {
  type Judge,
  type Judgement,
  type Needs,
  type Path,
  type Requirement,
  judgement,
  readyPath,
  withException,
} from './requirement.ts';
import { isOutOfDate } from './samples.ts';
import { floorText, levelFloor, levelOutcome, levelText, vitaminDWorking } from './vitamin-d-level.ts';

const reads = [
  'vitaminD',
  'loading',
  'finishedLoadings',
  'maintenance',
  'operations',
  'anyZoledronicDose',
  'today',
  'exceptions',
] as const;
type Read = Pick<Evidence, (typeof reads)[number]>;

function judge(evidence: Read, protocol: Protocol): Judge {
  const { vitaminD: level, loading, maintenance, today } = evidence;
  const { vitaminDValidDays, maintenanceConfirmDays, loadingHoldsDays, hipLookbackDays } = protocol.number;
  const floor = level === undefined ? undefined : levelFloor(level, protocol);
  const outcome = level === undefined ? undefined : levelOutcome(level, floor);
  const levelSays = level === undefined ? '' : levelText(level);
  const floorSays = level === undefined ? '' : floorText(level, floor);
  const finishedOn = loading?.state.is === 'finished' ? loading.state.on : undefined;
  /** The level was measured after the loading ended or was stopped, so it and not the loading is the newer word. */
  const levelAfter = (ended: Day): boolean => level !== undefined && level.on > ended;
  const maintained =
    finishedOn !== undefined && maintenance !== undefined && maintenance.on > finishedOn ? maintenance : undefined;
  /** Known to be taken from then on: the last loading dose, or the newest word that the daily vitamin D is taken. */
  const holdsUntil =
    finishedOn === undefined || maintained?.taken === false
      ? undefined
      : maintained === undefined
        ? addDays(finishedOn, maintenanceConfirmDays)
        : (Math.max(
            addDays(finishedOn, maintenanceConfirmDays),
            Math.min(addDays(finishedOn, loadingHoldsDays), addDays(maintained.on, maintenanceConfirmDays)),
          ) as Day);

  const working = (says: () => string) => (): Working => vitaminDWorking(evidence, says(), floor);
  // A newer level decides once it is signed, and is never passed over where it is bad.
  const newerDecides =
    finishedOn !== undefined && levelAfter(finishedOn) && (level?.signed === true || outcome !== 'passing');
  const running = loading?.state.is === 'running';

  // Each is made when a day first asks for it: few of them ever are.
  let levelOutOfDate: Judgement | undefined;
  let levelStands: Judgement | undefined;
  let loadingStands: Judgement | undefined;
  let loadingOver: Judgement | undefined;
  let notFinished: Judgement | undefined;
  let afterHip: Judgement | undefined;

  const outOfDate = (of: Day): Judgement =>
    judgement(
      'cannot say',
      `vitamin D of ${shortDate(of)} out of date`,
      working(
        () => `The level counts for ${vitaminDValidDays} days, up to ${shortDate(addDays(of, vitaminDValidDays))}.`,
      ),
    );
  function byLoadingOn(day: Day, ended: Day): Judgement {
    if (holdsUntil !== undefined && day <= holdsUntil)
      return (loadingStands ??= judgement(
        'ready',
        'vitamin D loading finished',
        working(() => `Loading finished on ${shortDate(ended)}; it stands until ${shortDate(holdsUntil)}.`),
      ));
    return (loadingOver ??= judgement(
      'cannot say',
      maintained?.taken === false ? 'vitamin D maintenance not taken' : 'vitamin D loading no longer stands',
      working(() => `Loading finished on ${shortDate(ended)}. ${whyOver(ended)}`),
    ));
  }

  function levelJudgement(): Judgement {
    if (level === undefined)
      return judgement(
        'cannot say',
        'vitamin D never measured',
        working(() => 'No vitamin D level is in these notes.'),
      );
    if (!level.signed)
      return judgement(
        'cannot say',
        `vitamin D of ${shortDate(level.on)} not signed`,
        working(() => 'Nobody has signed that this level has been read and belongs to this person.'),
      );
    if (outcome === 'cannot be told')
      return judgement(
        'cannot say',
        `${levelSays} cannot be judged`,
        working(() =>
          floor === undefined
            ? level.contradicted
              ? 'Another level of the same day says otherwise and both stand: withdraw or correct the one that is wrong.'
              : 'Its unit does not belong to vitamin D.'
            : `${levelSays} may or may not reach ${floorSays}.`,
        ),
      );
    if (outcome === 'failing')
      return judgement(
        'not ready',
        `${levelSays}${floorSays === '' ? '' : `, below ${floorSays}`}`,
        working(() => `${levelSays}; floor ${floorSays}, compared in the unit reported.`),
      );
    return judgement(
      'ready',
      level.value === 'assumed good' ? 'vitamin D, if good' : 'vitamin D',
      working(() =>
        level.value === 'assumed good'
          ? 'Assumed good: not measured yet.'
          : `${levelSays}; floor ${floorSays}, compared in the unit reported.`,
      ),
    );
  }

  function whyOver(ended: Day): string {
    if (maintained?.taken === false) return 'The daily vitamin D is not taken: a level or a new loading.';
    const stands = `A loading stands ${loadingHoldsDays} days, to ${shortDate(addDays(ended, loadingHoldsDays))}, while the daily vitamin D is taken`;
    return maintained === undefined
      ? `${stands}, which nobody has confirmed since.`
      : `${stands}: last confirmed on ${shortDate(maintained.on)}, which counts ${maintenanceConfirmDays} days.`;
  }

  function byLevel(day: Day): Judgement {
    if (level?.signed === true && isOutOfDate(level, day, vitaminDValidDays))
      return (levelOutOfDate ??= outOfDate(level.on));
    return (levelStands ??= levelJudgement());
  }

  const repair = evidence.operations.findLast(({ body }) => body.what !== 'other operation');
  const asksLoading = (day: Day): boolean =>
    protocol.sheet.hipRepairNeedsLoading &&
    repair !== undefined &&
    day - repair.on <= hipLookbackDays &&
    !evidence.anyZoledronicDose;
  const isAfterRepair = (dated: Day, assumed: boolean): boolean => repair === undefined || assumed || dated > repair.on;
  const loadedSinceRepair = evidence.finishedLoadings.some(({ dated, entry }) =>
    isAfterRepair(dated, entry === undefined),
  );

  function on(day: Day): Judgement {
    if (asksLoading(day) && !loadedSinceRepair)
      return (afterHip ??= judgement(
        'not ready',
        'vitamin D loading after hip repair',
        working(() => 'After a hip repair a first dose waits for a loading begun since.'),
      ));
    if (finishedOn !== undefined && !newerDecides) return byLoadingOn(day, finishedOn);
    const judged = byLevel(day);
    if (loading === undefined || !running || judged.verdict === 'ready') return judged;
    return (notFinished ??= judgement(
      'not ready',
      'vitamin D loading not finished',
      working(() => `${loading.taken} of ${loading.doses} loading doses taken.`),
    ));
  }

  const span = (protocol.number.loadingDoses - 1) * protocol.number.loadingEveryDays;
  const remaining = running && loading !== undefined ? remainingDoses(loading, today) : undefined;

  /** A new loading, as early as today, or as late as it must be to stand on the day; ready only once it is finished. */
  function newLoading(day: Day, why: string): Path {
    const first = Math.max(today, day - maintenanceConfirmDays - span) as Day;
    const last = addDays(first, span);
    if (last > day) return { is: 'waiting', what: 'vitamin D loading' };
    return {
      is: 'steps',
      needs: {
        load: {
          sort: 'new loading',
          count: protocol.number.loadingDoses,
          everyDays: protocol.number.loadingEveryDays,
          first,
          last,
          why,
        },
      },
    };
  }
  /** Whether the daily vitamin D is taken, told from the day after a loading ended: then it stands for so long from that word. */
  const asked = (ended: Day, stands: string): NonNullable<Needs['ask']> => ({
    what: 'maintenance',
    notBefore: addDays(ended, 1),
    validDays: maintenanceConfirmDays,
    why: `${stands}, and longer only while the daily vitamin D is confirmed as taken: each word counts ${maintenanceConfirmDays} days`,
  });
  const afterRest = (last: Day): string =>
    `the loading, finished on ${shortDate(last)} if each dose is taken on its day, would stand until ${shortDate(addDays(last, maintenanceConfirmDays))}`;
  function theRest(plan: LoadingPlan, day: Day): Path {
    const load = { ...plan, why: 'vitamin D loading is under way' };
    if (plan.last > day || day > plan.last + Math.max(loadingHoldsDays, maintenanceConfirmDays))
      return { is: 'waiting', what: 'vitamin D loading' };
    return {
      is: 'steps',
      needs:
        day > plan.last + maintenanceConfirmDays ? { load, ask: asked(plan.last, afterRest(plan.last)) } : { load },
    };
  }
  const draw = (why: string): Path => ({
    is: 'steps',
    needs: {
      draw: {
        test: 'vitamin D',
        validDays: vitaminDValidDays,
        neverMeasured: level === undefined || outcome === 'cannot be told',
        why,
      },
    },
  });

  function path(day: Day): Path {
    if (on(day).verdict === 'ready') return readyPath;
    if (asksLoading(day) && !loadedSinceRepair) {
      return remaining !== undefined && loading !== undefined && isAfterRepair(loading.dated, false)
        ? theRest(remaining, day)
        : newLoading(day, 'after a hip repair the first dose waits for a loading');
    }
    if (remaining !== undefined) return theRest(remaining, day);
    const state = loading?.state;
    // After a stop the level decides: a passing one in date that only waits for its signature is signed, whatever its date.
    const waitsToBeSigned =
      level !== undefined && outcome === 'passing' && !isOutOfDate(level, day, vitaminDValidDays) && !level.signed;
    if (
      state !== undefined &&
      state.is !== 'running' &&
      !levelAfter(state.on) &&
      !(state.is === 'stopped' && waitsToBeSigned)
    ) {
      if (state.is === 'finished' && maintained?.taken !== false && day <= state.on + loadingHoldsDays)
        return {
          is: 'steps',
          needs: {
            ask: asked(
              state.on,
              `the loading that ended on ${shortDate(state.on)} stands until ${shortDate(holdsUntil ?? addDays(state.on, maintenanceConfirmDays))}`,
            ),
          },
        };
      return newLoading(
        day,
        state.is === 'finished' ? 'the last loading no longer stands' : 'the last loading was stopped',
      );
    }
    if (level === undefined) {
      return protocol.sheet.vitaminDPolicy === 'load without a level'
        ? newLoading(day, 'no level is awaited: loading instead')
        : draw('vitamin D was never measured');
    }
    if (outcome === 'failing') return newLoading(day, `${levelSays} is below ${floorSays}`);
    if (outcome === 'cannot be told') return draw(`${levelSays} cannot be judged`);
    if (isOutOfDate(level, day, vitaminDValidDays))
      return draw(
        `vitamin D of ${shortDate(level.on)} counts until ${shortDate(addDays(level.on, vitaminDValidDays))}`,
      );
    return {
      is: 'steps',
      needs: {
        sign: {
          results: level.entry === undefined ? [] : [level.entry],
          why: `vitamin D of ${shortDate(level.on)} is not signed`,
        },
      },
    };
  }

  const changes: Day[] = [addDays(today, span), addDays(today, span + maintenanceConfirmDays + 1)];
  if (level !== undefined) changes.push(addDays(level.on, vitaminDValidDays + 1));
  if (holdsUntil !== undefined) changes.push(addDays(holdsUntil, 1));
  if (finishedOn !== undefined) changes.push(addDays(finishedOn, loadingHoldsDays + 1));
  if (remaining !== undefined) {
    changes.push(remaining.last);
    for (const days of [maintenanceConfirmDays, loadingHoldsDays]) changes.push(addDays(remaining.last, days + 1));
  }
  if (repair !== undefined) changes.push(addDays(repair.on, hipLookbackDays + 1));
  return withException({ changes, on, path }, exceptionFor(evidence, protocol, 'vitamin D'), 'vitamin D');
}

export const vitaminD: Requirement<(typeof reads)[number]> = {
  id: 'vitamin-d',
  title: 'Vitamin D',
  clearedBy: 'a level that passes, or a finished loading',
  exceptionPossible: true,
  reads,
  judge,
};
