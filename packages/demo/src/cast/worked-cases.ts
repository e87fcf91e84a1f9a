/**
 * The worked cases of docs/readiness.md as people one can open. Days are told from the demo's day, which the page calls
 * Wed 25 Nov 2026: on that day their windows are the page's own.
 */
import { type Day, addDays, addMonths, civilFromDay, dayFromCivil, plainDate } from '@twelvemonth/clinical';
import { type Life, Me } from '../life.ts';
import { at } from '../clock.ts';
import { sessionDayFrom, sessionId } from '../units.ts';
import { prescribes, signsResults } from '../work-up.ts';
import { type World } from '../world.ts';
import {
  type Member,
  askedAgain,
  castPerson,
  clearAndRecorded,
  doseOn,
  referredAndAccepted,
  sampled,
} from './member.ts';

type Scene = { readonly member: Member; readonly begins: Day; readonly plays: (me: Me) => Life };

/** Dates of the page, as days before or after its own day. */
const page = dayFromCivil(2026, 11, 25);
const onPage = (year: number, month: number, dayOfMonth: number): number =>
  dayFromCivil(year, month, dayOfMonth) - page;

export function workedCases(world: World): readonly Life[] {
  return scenes(world.today).map(({ member, begins, plays }, n) => {
    const me = new Me(castPerson(world.seed, n, member), world, at(begins, 9));
    return (function* (): Life {
      yield* me.until(me.now);
      yield { at: me.now };
      yield* plays(me);
    })();
  });
}

function scenes(today: Day): readonly Scene[] {
  const on = (offset: number): Day => addDays(today, offset);
  const date = (year: number, month: number, dayOfMonth: number): Day => on(onPage(year, month, dayOfMonth));
  const woman = (n: number, given: string, family: string, born: string): Member => ({
    id: `case-${String(n).padStart(2, '0')}`,
    given,
    family,
    born,
    sex: 'female',
    number: `999 100 00${String(n).padStart(2, '0')}`,
  });
  const usual = '1941-06-02';

  /** Case 1 up to its bloods: what several others begin with. */
  function* caseOne(me: Me): Life {
    yield* referredAndAccepted(me);
    yield* clearAndRecorded(me);
    yield* me.onDay(date(2025, 3, 14), 15);
    yield* doseOn(me, date(2025, 3, 14), 'ward');
    yield* me.onDay(date(2026, 10, 9), 10);
    yield* askedAgain(me);
    yield* prescribes(me);
    yield* sampled(me, me.today, { creatinine: '79', calcium: '2.29', vitaminD: '68', kilograms: '56.2' });
  }
  function* firstTimer(me: Me): Life {
    yield* referredAndAccepted(me);
    yield* clearAndRecorded(me);
    yield* prescribes(me);
  }

  return [
    { member: woman(1, 'Adeline', 'Casewick', usual), begins: date(2025, 2, 3), plays: caseOne },
    {
      member: {
        id: 'wilhelmina-arkwright-poe',
        given: 'Wilhelmina',
        family: 'Arkwright-Poe',
        born: usual,
        sex: 'female',
        number: '999 204 7713',
      },
      begins: date(2022, 11, 7),
      plays: (me) => wilhelmina(me, today, date),
    },
    {
      member: woman(3, 'Beatrix', 'Hipwell', '1948-02-11'),
      begins: on(-11),
      *plays(me) {
        yield* referredAndAccepted(me, { from: 'orthogeriatric ward', reason: 'hip fracture repaired', tier: 'high' });
        yield* clearAndRecorded(me);
        yield* me.writes(me.by('nurse'), 'fracture', { site: 'hip', dateKnown: true, treated: 'repaired' }, on(-13));
        yield* me.writes(me.by('nurse'), 'surgery', { what: 'hip repair' }, on(-12));
        yield* prescribes(me);
        yield* me.onDay(on(-1), 16);
        yield* sampled(me, on(-1), { creatinine: '68', calcium: '2.36', kilograms: '61.4' }, false);
        yield* me.onDay(today, 9);
        yield* signsResults(me);
      },
    },
    {
      member: woman(4, 'Clarice', 'Yearling', '1950-08-20'),
      begins: on(-400),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* me.onDay(date(2025, 12, 2), 15);
        yield* doseOn(me, me.today, 'ward');
        yield* me.onDay(date(2026, 10, 1), 10);
        yield* askedAgain(me);
        yield* prescribes(me);
        yield* sampled(me, me.today, { creatinine: '70', calcium: '2.33', vitaminD: '74', kilograms: '60.0' });
        yield* me.onDay(today, 9, 5);
        yield* sampled(me, today, { kilograms: '60.2' });
      },
    },
    {
      member: woman(5, 'Dorothea', 'Birthdale', plainDate(addMonths(on(51), -85 * 12))),
      begins: on(-30),
      *plays(me) {
        yield* firstTimer(me);
        yield* me.onDay(on(-5), 10);
        yield* sampled(me, me.today, { creatinine: '80', calcium: '2.31', vitaminD: '70', kilograms: '48.5' });
      },
    },
    {
      member: woman(6, 'Estelle', 'Narrowgate', plainDate(addMonths(today, -85 * 12))),
      begins: on(-30),
      *plays(me) {
        yield* firstTimer(me);
        yield* me.onDay(on(-5), 10);
        yield* sampled(me, me.today, { creatinine: '85', calcium: '2.34', vitaminD: '66', kilograms: '52' });
      },
    },
    {
      member: woman(7, 'Flora', 'Leapington', '1945-09-30'),
      begins: addDays(lastLeapDay(today), -30),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* me.onDay(lastLeapDay(today), 16);
        yield* doseOn(me, me.today, 'ward');
      },
    },
    {
      member: woman(8, 'Greta', 'Promisell', '1949-12-05'),
      begins: on(-90),
      *plays(me) {
        yield* referredAndAccepted(me, {
          from: 'family doctor',
          reason: 'denosumab stopped, to be replaced',
          tier: 'first in line',
        });
        yield* clearAndRecorded(me);
        yield* me.writes(
          me.by('nurse'),
          'dose',
          { medicine: 'denosumab 60 mg', setting: 'elsewhere' },
          addMonths(date(2026, 1, 15), -6),
        );
        yield* me.writes(
          me.by('nurse'),
          'dose',
          { medicine: 'denosumab 60 mg', setting: 'elsewhere' },
          date(2026, 1, 15),
        );
        yield* prescribes(me);
        yield* me.onDay(on(-20), 11);
        yield* sampled(me, me.today, { creatinine: '72', calcium: '2.30', vitaminD: '81', kilograms: '58.8' });
      },
    },
    {
      member: woman(9, 'Hester', 'Thirdlaw', '1947-03-03'),
      begins: addMonths(today, -40),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        for (const months of [-38, -26, -14]) {
          yield* me.onDay(addMonths(today, months), 15);
          yield* doseOn(me, me.today, 'home');
        }
        yield* me.onDay(on(-40), 10);
        yield* askedAgain(me);
        yield* prescribes(me);
        yield* sampled(me, me.today, { creatinine: '74', calcium: '2.35', vitaminD: '77', kilograms: '59.1' });
      },
    },
    {
      member: woman(10, 'Imelda', 'Undated', '1941'),
      begins: on(-60),
      *plays(me) {
        yield* firstTimer(me);
        yield* me.onDay(on(-20), 10);
        yield* sampled(me, me.today, { creatinine: '79', calcium: '2.29', vitaminD: '68', kilograms: '56.2' });
      },
    },
    {
      member: woman(11, 'Joyce', 'Lowsun', usual),
      begins: date(2025, 2, 4),
      *plays(me) {
        yield* caseOne(me);
        yield* me.onDay(on(-5), 11);
        yield* sampled(me, me.today, { vitaminD: '20', vitaminDComparator: '<' });
      },
    },
    {
      member: woman(12, 'Kezia', 'Queasely', usual),
      begins: date(2025, 2, 5),
      *plays(me) {
        yield* caseOne(me);
        yield* me.onDay(on(-2), 12);
        yield* me.writes(me.by('nurse'), 'illness', { what: 'vomiting for three days', sort: 'illness' });
      },
    },
  ];
}

function lastLeapDay(today: Day): Day {
  let { year } = civilFromDay(today);
  while (year % 4 !== 0 || dayFromCivil(year, 2, 29) > addDays(today, -30)) year -= 1;
  return dayFromCivil(year, 2, 29);
}

/** The patient of the look's first picture: three doses, a review, low vitamin D found late, loading just begun, a place in January. */
function* wilhelmina(me: Me, today: Day, date: (year: number, month: number, dayOfMonth: number) => Day): Life {
  yield* referredAndAccepted(
    me,
    {},
    { telephone: '07700 900123', needs: ['hearing aids', 'hospital transport'], armToAvoid: 'left' },
  );
  yield* clearAndRecorded(me, {
    answer: 'other',
    substance: 'penicillin',
    medicine: 'medicine not for bones',
    reaction: 'rash',
  });
  const nurse = me.by('nurse');
  yield* me.writes(
    nurse,
    'medicine',
    { name: 'alendronic acid 70 mg weekly', sort: 'bisphosphonate tablet', stoppedOn: plainDate(date(2022, 9, 1)) },
    date(2019, 3, 4),
  );
  yield* me.writes(nurse, 'fracture', { site: 'wrist', dateKnown: true, note: 'fall on ice' }, date(2018, 12, 9));
  for (const [year, batch] of [
    [2023, 'PA-1804'],
    [2024, 'PA-2077'],
    [2025, 'PA-2391'],
  ] as const) {
    yield* me.onDay(date(year, 3, 14), 16);
    yield* doseOn(me, me.today, 'this service', batch);
    if (year === 2023) {
      yield* me.onDay(addDays(me.today, 3), 11);
      yield* me.writes(me.by('nurse'), 'call', {
        route: 'telephone',
        about: 'aftercare',
        reached: true,
        note: 'better now',
      });
      yield* me.writes(
        me.by('nurse'),
        'reaction',
        { what: 'flu-like, aching', days: 2, severity: 'mild' },
        addDays(me.today, -2),
      );
    }
  }
  yield* me.onDay(date(2025, 6, 10), 11);
  yield* me.writes(me.by('prescriber'), 'course-review', {
    outcome: 'carry on',
    toDoses: 6,
    capacity: 'specialist',
    reason: 'hip T -2.8, wrist fracture',
  });
  yield* me.onDay(date(2026, 10, 8), 10);
  yield* me.writes(me.by('clerk'), 'call', {
    route: 'telephone',
    about: 'recall',
    reached: true,
    note: 'wants to come, bloods at the surgery',
  });
  yield* prescribes(me);
  yield* me.onDay(date(2026, 10, 12), 10);
  yield* sampled(me, date(2026, 10, 9), { creatinine: '79', calcium: '2.29', kilograms: '56.2' });
  yield* me.onDay(date(2026, 11, 16), 10);
  yield* sampled(me, date(2026, 11, 12), { vitaminD: '31' });
  yield* me.onDay(date(2026, 11, 23), 15);
  yield* me.writes(me.by('nurse'), 'dental', { answer: 'nothing pending', checkedOn: plainDate(date(2026, 9, 3)) });
  yield* me.writes(me.by('nurse'), 'consent', { decision: 'given', how: 'spoken' });
  yield* me.writes(me.by('nurse'), 'vitamin-d-loading', {
    doses: 6,
    everyDays: 7,
    unitsPerDose: 50_000,
    startOn: plainDate(date(2026, 11, 24)),
  });
  yield* me.onDay(date(2026, 11, 24), 14);
  yield* me.writes(me.by('clerk'), 'vitamin-d-taken', { doses: 1, source: 'told us' });
  yield* me.onDay(today, 9, 40);
  const place = 7;
  yield* me.does(me.by('clerk'), {
    name: 'book',
    patient: me.patient,
    session: sessionId('thornbeck', sessionDayFrom('thornbeck', addDays(today, 64))),
    place,
  });
}
