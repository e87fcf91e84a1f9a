/** Who fell out where, of each year's starters of a unit: curves, and the people behind every step. */
import {
  type Limits,
  type Observed,
  type StepTaken,
  type Stayed,
  begunHere,
  incidenceOf,
  kaplanMeier,
  plainDate,
  stayed,
  stayingEnds,
  stepAfter,
  stepEnds,
  yearBegun,
} from '@twelvemonth/clinical';
import type { CohortCurve, CohortView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';

type Starter = { readonly person: Person; readonly year: string };
type Taken = StepTaken | Stayed;

/** Days at which the table is read, and what each is called. */
const readAt = [
  [182, '6 months'],
  [365, '1 year'],
  [410, '1 year and 45 days'],
  [547, '18 months'],
  [730, '2 years'],
] as const;
const readStayingAt = [...readAt.filter(([days]) => days !== 410), [1095, '3 years']] as const;

export function cohortViewOf(everyone: readonly Person[], unit: UnitNow, year: string | undefined): CohortView {
  const all = everyone
    .filter(({ unitId }) => unitId === unit.unit.id)
    .flatMap((person): Starter[] => {
      const doses = begunHere(person.record, person.today);
      return doses === undefined ? [] : [{ person, year: yearBegun(doses) }];
    });
  const shown = year === undefined ? all : all.filter((one) => one.year === year);
  const years = [...new Set(all.map((one) => one.year))].toSorted().toReversed();
  const stays = shown.flatMap(({ person }) => {
    const protocol = person.unit?.protocol;
    const found = protocol === undefined ? undefined : stayed(person.record, protocol, person.today);
    return found === undefined ? [] : [{ person, taken: found }];
  });
  return {
    unit: unit.unit.id,
    today: plainDate(unit.today),
    years: years.map((one) => ({ year: one, began: all.filter((starter) => starter.year === one).length })),
    ...(year === undefined ? {} : { year }),
    began: shown.length,
    curves: [1, 2].map((dose) =>
      curveOf(
        dose === 1 ? 'Coming for the second dose' : 'Coming for the third dose',
        `Days from dose ${dose}. Who came counts as come however late; who left, or died first, cannot come any more (Aalen-Johansen). Handed over to another service, or not there yet: seen until then.`,
        shown.flatMap(({ person }) => {
          const taken = stepAfter(person.record, dose, person.today);
          return taken === undefined ? [] : [{ person, taken }];
        }),
        stepEnds,
        readAt,
      ),
    ),
    ...(stays.length === 0 ? {} : { staying: stayingOf(stays) }),
  };
}

const endWords: Readonly<Record<string, string>> = {
  came: 'came',
  'fell out': 'fell out',
  'ended by decision': 'ended by decision',
  died: 'died',
  'off treatment': 'off treatment',
};

function curveOf<End extends string>(
  title: string,
  counted: string,
  of: readonly { readonly person: Person; readonly taken: Taken & Observed<End> }[],
  ends: readonly End[],
  at: readonly (readonly [days: number, says: string])[],
): CohortCurve {
  const observed = of.map(({ taken }) => taken);
  const steps = incidenceOf(observed, ends);
  const until = seenUntil(observed, at);
  return {
    title,
    counted,
    people: of.length,
    until,
    rows: readUntil(at, until).map(([days, says]) => ({
      days,
      says,
      atRisk: observed.filter((one) => one.days > days).length,
    })),
    lines: ends.map((end) => ({
      says: endWords[end] ?? end,
      from: 0,
      points: steps.map(({ days, share, limits }) => pointOf(days, share[end], limits[end])),
    })),
    ends: [...ends, 'still under way'].map((end) => ({
      end,
      count: observed.filter((one) => one.end === end).length,
    })),
    who: of
      .map(({ person, taken }) => ({
        patient: person.patient,
        name: fullName(person),
        end: taken.end,
        from: plainDate(taken.from),
        on: plainDate(taken.on),
        days: taken.days,
        why: taken.why === 'still under way' ? inWords(person) : taken.why,
      }))
      .toSorted((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.name < b.name ? -1 : 1)),
  };
}

const pointOf = (days: number, share: number, limits: Limits | undefined) => ({
  days,
  share,
  ...(limits === undefined ? {} : { limits: { lower: limits.lower, upper: limits.upper } }),
});

type ReadAt = readonly (readonly [days: number, says: string])[];

/** A curve ends where the last person was seen: beyond it nobody knows. */
const seenUntil = (observed: readonly { readonly days: number }[], at: ReadAt): number =>
  Math.min(at[at.length - 1]?.[0] ?? 0, Math.max(1, ...observed.map(({ days }) => days)));

/** The days up to there; before the first of them the last day itself. */
function readUntil(at: ReadAt, until: number): ReadAt {
  const seen = at.filter(([days]) => days <= until);
  return seen.length === 0 ? [[until, `day ${until}`]] : seen;
}

/** Where somebody stands who is on the way: "overdue since ...". */
const inWords = ({ standing }: Person): string => (standing.says === '' ? standing.standing : standing.says);

function stayingOf(stays: readonly { readonly person: Person; readonly taken: Stayed }[]): CohortView['staying'] {
  const counted =
    'Days from the first dose. Off treatment: a dose overdue by the protocol’s days, a no, or not to be reached. A decision to pause, to change or to end, and a handing over, end the looking. “On treatment” (Kaplan-Meier) takes those who died as if they might still have left; “off treatment” and “died” (Aalen-Johansen) do not, so the three need not make a hundred.';
  const curve = curveOf('Staying on treatment', counted, stays, stayingEnds, readStayingAt);
  const steps = kaplanMeier(stays.map(({ taken }) => ({ days: taken.days, event: taken.end === 'off treatment' })));
  return {
    ...curve,
    lines: [
      {
        says: 'on treatment',
        from: 1,
        points: steps.map(({ days, survival, limits }) => pointOf(days, survival, limits)),
      },
      ...curve.lines,
    ],
  };
}
