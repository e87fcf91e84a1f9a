/** People of the demo on other regimens: each medicine that has a clock or a course of its own, told in days before today. */
import { type BodyOfKind, type Day, addDays, addMonths, plainDate } from '@twelvemonth/clinical';
import { isAskedAfter } from '../aftercare-life.ts';
import { at } from '../clock.ts';
import { type Life, Me } from '../life.ts';
import type { World } from '../world.ts';
import { type Member, castPerson, clearAndRecorded, referredAndAccepted, sampled } from './member.ts';

type Scene = { readonly member: Member; readonly begins: Day; readonly plays: (me: Me) => Life };

export function otherRegimens(world: World): readonly Life[] {
  return scenes(world.today).map(({ member, begins, plays }, n) => {
    const me = new Me(castPerson(world.seed, 700 + n, member), world, at(begins, 9, n));
    return (function* (): Life {
      yield { at: me.now };
      yield* plays(me);
    })();
  });
}

function* ordered(me: Me, regimen: string): Life {
  yield* me.writes(me.by('prescriber'), 'prescription', {
    regimen,
    validFrom: plainDate(me.today),
    validUntil: plainDate(addMonths(me.today, 24)),
  });
}

const given = (
  me: Me,
  medicine: BodyOfKind<'dose'>['medicine'],
  setting: 'this service' | 'home' = 'this service',
): Life => me.writes(me.by('nurse'), 'dose', { medicine, setting, batch: `PA-${me.chance.between(1000, 9999)}` });

function* begun(me: Me, reason: string, regimen: string, creatinine = '74'): Life {
  yield* referredAndAccepted(me, { reason });
  yield* clearAndRecorded(me);
  yield* sampled(me, me.today, { creatinine, calcium: '2.33', vitaminD: '74', kilograms: '61' });
  yield* ordered(me, regimen);
}

/** A dose every so many months, the last a number of days before today; where a creatinine is given, bloods before each. */
function* every(
  me: Me,
  today: Day,
  months: number,
  doses: number,
  lastDaysAgo: number,
  medicine: BodyOfKind<'dose'>['medicine'],
  creatinine?: string,
): Life {
  for (let back = doses - 1; back >= 0; back -= 1) {
    const on = addMonths(addDays(today, -lastDaysAgo), -months * back);
    if (creatinine !== undefined) {
      yield* me.onDay(addDays(on, -6), 10);
      yield* sampled(me, me.today, { creatinine, calcium: '2.34', kilograms: '61' });
    }
    yield* me.onDay(on, 14);
    yield* given(me, medicine);
  }
}

function scenes(today: Day): readonly Scene[] {
  const on = (offset: number): Day => addDays(today, offset);
  const woman = (n: number, given: string, family: string, born: string): Member => ({
    id: `regimen-${n}`,
    given,
    family,
    born,
    sex: 'female',
    number: `999 100 02${String(n).padStart(2, '0')}`,
  });
  return [
    {
      member: woman(1, 'Sibyl', 'Halfyear', '1950-02-11'),
      begins: on(-420),
      *plays(me) {
        yield* begun(me, 'T -3.4, clearance 33', 'denosumab-60-six-monthly', '123');
        yield* every(me, today, 6, 3, 40, 'denosumab 60 mg', '123');
      },
    },
    {
      member: woman(2, 'Thora', 'Duesoon', '1948-08-23'),
      begins: on(-400),
      *plays(me) {
        yield* begun(me, 'T -3.1, clearance 34', 'denosumab-60-six-monthly', '115');
        yield* every(me, today, 6, 2, 158, 'denosumab 60 mg', '115');
      },
    },
    {
      member: woman(3, 'Ursula', 'Twelvefold', '1955-05-17'),
      begins: on(-390),
      *plays(me) {
        yield* begun(me, 'two spine fractures, T -3.8', 'romosozumab-monthly');
        yield* every(me, today, 1, 12, 12, 'romosozumab 210 mg');
      },
    },
    {
      member: woman(4, 'Verity', 'Daysend', '1953-11-02'),
      begins: on(-720),
      *plays(me) {
        yield* begun(me, 'spine fractures, T -3.9', 'teriparatide-daily');
        yield* me.onDay(addMonths(on(20), -24), 11);
        yield* given(me, 'teriparatide', 'home');
      },
    },
    {
      member: woman(5, 'Winifred', 'Quarterly', '1949-07-30'),
      begins: on(-300),
      *plays(me) {
        yield* begun(me, 'cannot sit for a drip', 'ibandronate-three-monthly');
        yield* every(me, today, 3, 3, 85, 'ibandronate 3 mg');
      },
    },
    {
      member: woman(6, 'Xenia', 'Onceonly', '1944-12-09'),
      begins: on(-200),
      *plays(me) {
        yield* begun(me, "Paget's disease of the pelvis", 'zoledronic-acid-pagets-disease');
        yield* me.onDay(on(-150), 15);
        yield* given(me, 'zoledronic acid 5 mg');
        yield* me.onDay(addDays(me.today, 1), 11);
        yield* isAskedAfter(me, false);
      },
    },
  ];
}
