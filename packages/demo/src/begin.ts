/** How a person comes to the service: referred, brought in from another register, or with a dose from a ward. */
import { type Act, type BodyOfKind, type Day, addDays, addMonths, plainDate } from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';
import { address, familyDoctor, landline, mobile } from './names.ts';
import type { Person } from './people.ts';

const identityOf = (person: Person): BodyOfKind<'identity'> => ({
  family: person.family,
  given: person.given,
  title: person.sex === 'female' ? 'Mrs' : 'Mr',
  born: person.born,
  sex: person.sex,
  number: person.number,
});

function contactOf({ person, chance }: Me): BodyOfKind<'contact'> {
  const needs = [
    ...(chance.isTrue(0.18) ? ['hearing aids'] : []),
    ...(chance.isTrue(0.2) ? ['hospital transport'] : []),
    ...(chance.isTrue(0.04) ? ['hoist'] : []),
    ...(chance.isTrue(0.03) ? ['interpreter'] : []),
  ];
  return {
    telephone: chance.isTrue(0.5) ? mobile(chance) : landline(chance),
    address: address(chance, person.town),
    familyDoctor: familyDoctor(chance, person.town),
    ...(needs.length > 0 ? { needs } : {}),
    ...(chance.isTrue(0.06) ? { armToAvoid: chance.oneOf(['left', 'right']) } : {}),
  };
}

const referrers = [
  'fracture liaison service',
  'orthogeriatric ward',
  'rheumatology clinic',
  'family doctor',
  'falls clinic',
] as const;
const reasons = [
  'wrist fracture, hip T -2.8, cannot take tablets',
  'two spine fractures, T -3.4',
  'hip fracture, tablets not swallowed',
  'tablets stopped: stomach',
  'T -2.9, on steroids',
  'shoulder fracture after a fall, T -2.6',
] as const;

export function* isReferred(
  me: Me,
  more: Partial<BodyOfKind<'referral'>> = {},
  notTheSameAs: readonly string[] = [],
): Life {
  const { chance, person } = me;
  const act: Act = {
    name: 'register',
    patient: person.id,
    identity: identityOf(person),
    contact: contactOf(me),
    referral: {
      from: chance.oneOf(referrers),
      reason: chance.oneOf(reasons),
      unit: person.unit,
      tier: chance.isTrue(0.2) ? 'high' : 'routine',
      ...more,
    },
    on: plainDate(me.today),
    ...(notTheSameAs.length > 0 ? { notTheSameAs } : {}),
  };
  yield* me.does(me.by('clerk'), act);
}

export function* isAccepted(me: Me): Life {
  yield* me.days(1, 6);
  yield* me.writes(me.by('nurse in charge'), 'triage', { outcome: 'accepted' });
}

export function* isReturned(me: Me): Life {
  yield* me.days(1, 6);
  yield* me.writes(me.by('nurse in charge'), 'triage', {
    outcome: 'returned',
    reason: me.chance.oneOf([
      'can take tablets: start those first',
      'no bone density and no fracture told',
      'clearance of 24 mL/min in the letter: other treatment',
    ]),
  });
}

/** A hip broken and repaired, and a first dose on the ward before they are ours. */
export function* hadWardDose(me: Me): Life {
  const repaired = addDays(me.today, -me.chance.between(22, 40));
  yield* me.writes(
    me.by('nurse'),
    'fracture',
    { site: 'hip', dateKnown: true, treated: 'repaired' },
    addDays(repaired, -1),
  );
  yield* me.writes(me.by('nurse'), 'surgery', { what: 'hip repair' }, repaired);
  yield* me.writes(
    me.by('nurse'),
    'dose',
    { medicine: 'zoledronic acid 5 mg', setting: 'ward', batch: `PA-${me.chance.between(1000, 9999)}` },
    addDays(repaired, 17),
  );
}

/** Six-monthly denosumab elsewhere, the last so many months ago. */
export function* hadDenosumab(me: Me, monthsSinceLast: number, doses: number): Life {
  for (let back = doses - 1; back >= 0; back -= 1) {
    yield* me.writes(
      me.by('nurse'),
      'dose',
      { medicine: 'denosumab 60 mg', setting: 'elsewhere' },
      addMonths(me.today, -(monthsSinceLast + 6 * back)),
    );
  }
}

/** A row of another service's register: who they are and the doses they have had. */
export function* isBroughtIn(me: Me, doses: readonly Day[]): Life {
  const { person } = me;
  const on = plainDate(me.today);
  const act: Act = {
    name: 'take in',
    patient: person.id,
    isNew: true,
    lines: [
      { kind: 'identity', body: identityOf(person), effectiveAt: on },
      { kind: 'contact', body: contactOf(me), effectiveAt: on },
      {
        kind: 'referral',
        body: {
          from: 'register of the old service',
          reason: 'under its care until now',
          unit: person.unit,
          tier: 'routine',
        },
        effectiveAt: on,
      },
      { kind: 'triage', body: { outcome: 'accepted' }, effectiveAt: on },
      ...doses.map((given) => ({
        kind: 'dose' as const,
        body: { medicine: 'zoledronic acid 5 mg', setting: 'elsewhere' },
        effectiveAt: plainDate(given),
      })),
    ],
  };
  yield* me.does(me.by('nurse in charge'), act);
}
