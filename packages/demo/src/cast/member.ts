/** People of the demo who are written by hand: they have names one can look for, and a story told in days before today. */
import {
  type Act,
  type Analyte,
  type BodyOfKind,
  type Comparator,
  type Day,
  type LaboratoryUnit,
  plainDate,
  quantity,
} from '@twelvemonth/clinical';
import type { Life, Me } from '../life.ts';
import type { Person } from '../people.ts';
import { chanceFrom, seedOf } from '../random.ts';
import { type UnitId, nursesAt } from '../staff.ts';
import { signsResults } from '../work-up.ts';

export type Member = {
  readonly id: string;
  readonly given: string;
  readonly family: string;
  readonly born: string;
  readonly sex: 'female' | 'male';
  readonly number: string;
  readonly unit?: UnitId;
};

/** A member of the cast as a person: nothing about them is left to chance but who signs what. */
export const castPerson = (seed: number, n: number, member: Member): Person => ({
  ...member,
  unit: member.unit ?? 'thornbeck',
  town: member.unit === 'saltmere' ? 'Saltmere' : 'Thornbeck',
  chance: chanceFrom(seedOf(seed, 100_000 + n)),
  story: 'ordinary',
  referredOn: 0 as Day,
  diesOn: undefined,
  weight: 56,
  creatinine: 79,
  vitaminD: 68,
});

/** "What is not mentioned is clear and recorded." */
export function* clearAndRecorded(me: Me, allergy: BodyOfKind<'allergy'> = { answer: 'none known' }): Life {
  const nurse = me.by('nurse');
  yield* me.writes(nurse, 'allergy', allergy);
  yield* me.writes(nurse, 'pregnancy', { answer: 'does not apply', reason: 'told us: long past the menopause' });
  yield* me.writes(nurse, 'secondary-causes', { answer: 'none found' });
  yield* askedAgain(me);
}

/** What is asked again before each dose: consent, teeth and jaw. */
export function* askedAgain(me: Me): Life {
  const nurse = me.by('nurse');
  yield* me.writes(nurse, 'consent', { decision: 'given', how: 'spoken' });
  yield* me.writes(nurse, 'dental', { answer: 'nothing pending', checkedOn: plainDate((me.today - 60) as Day) });
}

export function* referredAndAccepted(
  me: Me,
  referral: Partial<BodyOfKind<'referral'>> = {},
  contact: BodyOfKind<'contact'> = {},
): Life {
  const { person } = me;
  yield* me.does(me.by('clerk'), {
    name: 'register',
    patient: person.id,
    identity: {
      family: person.family,
      given: person.given,
      title: person.sex === 'female' ? 'Mrs' : 'Mr',
      born: person.born,
      sex: person.sex,
      number: person.number,
    },
    contact: {
      telephone: '07700 900100',
      address: '1 Heron Street, Thornbeck',
      familyDoctor: 'Dr A. Penrose, Thornbeck Surgery',
      ...contact,
    },
    referral: {
      from: 'fracture liaison service',
      reason: 'wrist fracture, hip T -2.8, cannot take tablets',
      unit: person.unit,
      tier: 'routine',
      ...referral,
    },
    on: plainDate(me.today),
  });
  yield* me.minutes(30);
  yield* me.writes(me.by('nurse in charge'), 'triage', { outcome: 'accepted' });
  yield* me.minutes(30);
}

export type Sample = {
  readonly creatinine?: string;
  readonly calcium?: string;
  readonly vitaminD?: string;
  readonly vitaminDComparator?: Comparator;
  readonly kilograms?: string;
};

/** Results of a sample drawn on a day, written now; signed or left waiting. */
export function* sampled(me: Me, drawn: Day, sample: Sample, signed = true): Life {
  const on = plainDate(drawn);
  const line = (
    analyte: Analyte,
    value: string,
    unit: LaboratoryUnit,
    comparator: Comparator = '',
  ): Extract<Act, { name: 'record together' }>['lines'][number] => ({
    kind: 'result',
    body: { analyte, quantity: quantity(value, unit, comparator) },
    effectiveAt: on,
  });
  if (sample.kilograms !== undefined)
    yield* me.writes(
      me.by('assistant'),
      'weight',
      { quantity: quantity(sample.kilograms, 'kg'), method: 'measured' },
      drawn,
    );
  const lines = [
    ...(sample.creatinine === undefined ? [] : [line('creatinine', sample.creatinine, 'umol/L')]),
    ...(sample.calcium === undefined ? [] : [line('adjusted calcium', sample.calcium, 'mmol/L')]),
    ...(sample.vitaminD === undefined
      ? []
      : [line('vitamin D', sample.vitaminD, 'nmol/L', sample.vitaminDComparator ?? '')]),
  ];
  if (lines.length > 0) yield* me.does(me.by('nurse'), { name: 'record together', patient: me.patient, lines });
  yield* me.minutes(5);
  if (signed && lines.length > 0) yield* signsResults(me);
}

export function* doseOn(
  me: Me,
  on: Day,
  setting: BodyOfKind<'dose'>['setting'] = 'this service',
  batch = 'PA-2391',
): Life {
  const giver = me.by('nurse');
  const checker = nursesAt(me.person.unit).find(({ staff }) => staff !== giver.staff);
  const checked = setting === 'home' ? { checkedBy: checker?.staff, checkedWhen: 'there, before it ran' as const } : {};
  yield* me.writes(giver, 'dose', { medicine: 'zoledronic acid 5 mg', setting, batch, ...checked }, on);
}
