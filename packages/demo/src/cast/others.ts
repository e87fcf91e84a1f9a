/** More of the cast: look-alikes, a corrected name, referrals of this week, a part dose nobody has judged, an exception. */
import { type Day, addDays, addMonths, dangerSignNames, factsOf, plainDate } from '@twelvemonth/clinical';
import { answersOf, isAskedAfter, tells } from '../aftercare-life.ts';
import { at } from '../clock.ts';
import { type Life, Me } from '../life.ts';
import { careHome } from '../year.ts';
import { prescribes } from '../work-up.ts';
import type { World } from '../world.ts';
import { type Member, castPerson, clearAndRecorded, doseOn, referredAndAccepted, sampled } from './member.ts';

type Scene = { readonly member: Member; readonly begins: Day; readonly plays: (me: Me) => Life };

export function otherCast(world: World): readonly Life[] {
  return [...scenes(world.today), ...freshReferrals(world.today)].map(({ member, begins, plays }, n) => {
    const me = new Me(castPerson(world.seed, 500 + n, member), world, at(begins, 9, n));
    return (function* (): Life {
      yield { at: me.now };
      yield* plays(me);
    })();
  });
}

const numbered = (id: string, n: number, rest: Omit<Member, 'id' | 'number'>): Member => ({
  ...rest,
  id,
  number: `999 100 01${String(n).padStart(2, '0')}`,
});

function scenes(today: Day): readonly Scene[] {
  const on = (offset: number): Day => addDays(today, offset);
  return [
    {
      member: numbered('look-alike-a', 1, { given: 'Agnes', family: 'Brookfield', born: '1946-04-12', sex: 'female' }),
      begins: on(-500),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* me.onDay(on(-300), 15);
        yield* doseOn(me, me.today);
      },
    },
    {
      member: numbered('look-alike-b', 2, { given: 'Agnes', family: 'Brookfeld', born: '1946-04-12', sex: 'female' }),
      begins: on(-45),
      *plays(me) {
        yield* me.does(me.by('clerk'), {
          name: 'register',
          patient: me.patient,
          identity: {
            family: 'Brookfeld',
            given: 'Agnes',
            title: 'Mrs',
            born: '1946-04-12',
            sex: 'female',
            number: me.person.number,
          },
          contact: { telephone: '07700 900455', address: '88 Quay Row, Thornbeck' },
          referral: { from: 'family doctor', reason: 'T -3.1, tablets stopped', unit: 'thornbeck', tier: 'routine' },
          on: plainDate(me.today),
          notTheSameAs: ['look-alike-a'],
        });
        yield* me.onDay(on(-40), 11);
        yield* me.writes(me.by('nurse in charge'), 'triage', { outcome: 'accepted' });
        yield* clearAndRecorded(me);
      },
    },
    {
      member: numbered('once-called-otherwise', 3, {
        given: 'Perpetua',
        family: 'Wolde',
        born: '1952-01-29',
        sex: 'female',
      }),
      begins: on(-120),
      *plays(me) {
        yield* referredAndAccepted(me);
        const first = factsOf(me.record(), 'identity')[0];
        yield* me.onDay(on(-90), 10);
        if (first === undefined) return;
        yield* me.does(me.by('clerk'), {
          name: 'record',
          patient: me.patient,
          amends: first.id,
          line: {
            kind: 'identity',
            body: { ...first.body, family: 'Wolde-Sandström', formerNames: ['Wolde'] },
            effectiveAt: plainDate(me.today),
          },
        });
        yield* clearAndRecorded(me);
        yield* prescribes(me);
      },
    },
    {
      member: numbered('part-dose', 4, {
        given: 'Rosamund',
        family: 'Halfpint',
        born: '1951-10-08',
        sex: 'female',
        unit: 'saltmere',
      }),
      begins: on(-100),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-9), 14);
        yield* me.writes(me.by('nurse'), 'dose', {
          medicine: 'zoledronic acid 5 mg',
          setting: 'ward',
          batch: 'PA-2391',
          partMilliliters: 45,
        });
      },
    },
    {
      member: numbered('severe-reaction', 10, {
        given: 'Philippa',
        family: 'Overwater',
        born: '1949-03-02',
        sex: 'female',
      }),
      begins: on(-90),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-30), 14);
        yield* me.writes(
          me.by('nurse'),
          'dose',
          { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' },
          addMonths(today, -12),
        );
        yield* me.writes(
          me.by('nurse'),
          'reaction',
          { what: 'face swollen and wheezing an hour after the drip, treated elsewhere', severity: 'severe' },
          addMonths(today, -12),
        );
      },
    },
    {
      member: numbered('thigh-shaft', 11, {
        given: 'Leontine',
        family: 'Grasmoor',
        born: '1950-09-14',
        sex: 'female',
        unit: 'saltmere',
      }),
      begins: on(-80),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-12), 14);
        yield* me.writes(
          me.by('nurse'),
          'fracture',
          { site: 'thigh shaft', dateKnown: true, note: 'stepped off a kerb, nailed elsewhere' },
          addMonths(today, -5),
        );
      },
    },
    {
      member: numbered('tingling', 12, { given: 'Hedda', family: 'Lindqvist-Moor', born: '1944-05-11', sex: 'female' }),
      begins: on(-60),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-14), 11);
        yield* doseOn(me, me.today);
        yield* me.onDay(addDays(me.today, 1), 10);
        yield* isAskedAfter(me, true);
        const dose = factsOf(me.record(), 'dose').at(-1);
        if (dose === undefined) return;
        yield* me.onDay(today, 9, 20);
        const signs = ['tingling or cramps'] as const;
        yield* tells(
          me,
          me.by('nurse'),
          answersOf(me, dose, undefined, {
            how: 'they rang us',
            feels: 'a little rough',
            signs,
            notSigns: dangerSignNames.filter((sign) => sign !== signs[0]),
            words: 'pins and needles round the mouth since last night',
          }),
        );
      },
    },
    {
      member: numbered('not-reached', 13, { given: 'Wilfred', family: 'Stanbury', born: '1940-01-19', sex: 'male' }),
      begins: on(-60),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-7), 11);
        yield* doseOn(me, me.today);
        for (const offset of [-6, -3]) {
          yield* me.onDay(on(offset), 14);
          yield* me.writes(me.by('clerk'), 'call', {
            route: 'telephone',
            about: 'aftercare',
            reached: false,
            note: 'rings out',
          });
        }
      },
    },
    {
      member: numbered('first-dose-this-week', 14, {
        given: 'Mabel',
        family: 'Tarrant-Lowe',
        born: '1936-02-08',
        sex: 'female',
      }),
      begins: on(-60),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.writes(me.by('clerk'), 'contact-person', careHome);
        yield* me.onDay(on(-2), 11);
        yield* doseOn(me, me.today);
      },
    },
    {
      member: numbered('exception', 5, { given: 'Ingrid', family: 'Leeway', born: '1944-07-17', sex: 'female' }),
      begins: on(-7),
      *plays(me) {
        yield* referredAndAccepted(me, {
          from: 'orthogeriatric ward',
          reason: 'hip fracture repaired, going home soon',
          tier: 'high',
        });
        yield* clearAndRecorded(me);
        yield* me.writes(me.by('nurse'), 'fracture', { site: 'hip', dateKnown: true, treated: 'repaired' }, on(-9));
        yield* me.writes(me.by('nurse'), 'surgery', { what: 'hip repair' }, on(-8));
        yield* prescribes(me);
        yield* me.writes(me.by('prescriber'), 'prescriber-exception', {
          requirement: 'hip repair',
          reason: 'before discharge, on the orthogeriatric protocol',
          expiresOn: plainDate(on(14)),
        });
      },
    },
    {
      member: numbered('oncology', 6, { given: 'Sabine', family: 'Fourmill', born: '1957-05-23', sex: 'female' }),
      begins: on(-70),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* me.writes(
          me.by('nurse'),
          'dose',
          { medicine: 'zoledronic acid 4 mg', setting: 'elsewhere' },
          addMonths(today, -7),
        );
        yield* prescribes(me);
        yield* me.onDay(on(-20), 10);
        yield* sampled(me, me.today, { creatinine: '66', calcium: '2.38', vitaminD: '90', kilograms: '71.2' });
      },
    },
    {
      member: numbered('unsigned', 7, {
        given: 'Ursula',
        family: 'Penless',
        born: '1949-11-30',
        sex: 'female',
        unit: 'saltmere',
      }),
      begins: on(-40),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-6), 15);
        yield* sampled(me, on(-8), { creatinine: '81', calcium: '2.27', vitaminD: '59', kilograms: '63.0' }, false);
      },
    },
    {
      member: numbered('thigh-pain', 8, { given: 'Leonie', family: 'Aker', born: '1946-03-30', sex: 'female' }),
      begins: on(-500),
      *plays(me) {
        yield* referredAndAccepted(me);
        yield* clearAndRecorded(me);
        yield* prescribes(me);
        yield* me.onDay(on(-330), 11);
        yield* doseOn(me, me.today);
        yield* me.onDay(on(-2), 15);
        yield* me.writes(me.by('nurse'), 'symptom', { what: 'thigh, hip or groin pain' });
      },
    },
  ];
}

const fresh = [
  ['Thelma', 'Newbourne', '1955-02-14', 'thornbeck'],
  ['Olwen', 'Freshwater', '1947-09-01', 'thornbeck'],
  ['Basil', 'Lately', '1943-06-21', 'saltmere'],
  ['Nora', 'Morrowby', '1950-03-27', 'saltmere'],
  ['Maeve', 'Earlham', '1939-12-12', 'thornbeck'],
] as const;

/** Referrals of the last few days that nobody has decided on. */
const freshReferrals = (today: Day): readonly Scene[] =>
  fresh.map(([given, family, born, unit], n) => ({
    member: numbered(`fresh-${n + 1}`, 20 + n, {
      given,
      family,
      born,
      sex: given === 'Basil' ? 'male' : 'female',
      unit,
    }),
    begins: addDays(today, -(n + 1)),
    *plays(me: Me): Life {
      yield* me.does(me.by('clerk'), {
        name: 'register',
        patient: me.patient,
        identity: { family, given, born, sex: me.person.sex, number: me.person.number },
        contact: { telephone: '01632 960321', familyDoctor: 'Dr M. Okafor-Lisle, Saltmere Surgery' },
        referral: {
          from: 'fracture liaison service',
          reason: 'spine fracture found by chance, T -3.0',
          unit,
          tier: n === 0 ? 'high' : 'routine',
        },
        on: plainDate(me.today),
      });
    },
  }));
