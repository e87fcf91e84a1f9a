/** What is done so that a dose can be given: asked, measured, taken, signed, prescribed. The demo follows the engine's next steps. */
import {
  type Act,
  type BodyOfKind,
  type Day,
  type NextStep,
  type Readiness,
  type StepKind,
  addDays,
  addMonths,
  factsOf,
  plainDate,
  quantity,
  readiness,
} from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';

type ResultBody = BodyOfKind<'result'>;
type Line = Extract<Act, { name: 'record together' }>['lines'][number];

/** How a sample turns out: as the person usually is, or as a story needs it. */
export type Values = { readonly creatinine?: number; readonly calcium?: string; readonly vitaminD?: number };

export function readinessNow(me: Me, place?: Day): Readiness {
  const context = me.context();
  if (context === undefined) throw new RangeError(`no protocol in force at ${me.person.unit}`);
  return readiness(me.record(), context, me.today, place === undefined ? {} : { place });
}

/** A sample of today, with the weight; its results come in one to three days later and wait for a signature. */
export function* drawsBloods(me: Me, withVitaminD: boolean, values: Values = {}): Life {
  const { chance, person } = me;
  const drawn = me.today;
  yield* weighs(me);
  yield* me.days(1, 2);
  const creatinine = values.creatinine ?? Math.round(person.creatinine * chance.around(0.95, 1.05));
  const line = (body: ResultBody): Line => ({ kind: 'result', body, effectiveAt: plainDate(drawn) });
  const calcium = values.calcium ?? (2.24 + chance.between(0, 26) / 100).toFixed(2);
  const vitaminD = values.vitaminD ?? Math.max(12, person.vitaminD + chance.between(-4, 6));
  const lines: Line[] = [
    line({
      analyte: 'creatinine',
      quantity: quantity(String(creatinine), 'umol/L'),
      laboratory: 'Marlowe Vale laboratory',
    }),
    line({
      analyte: 'adjusted calcium',
      quantity: quantity(calcium, 'mmol/L'),
      referenceLow: '2.20',
      referenceHigh: '2.60',
    }),
    ...(chance.isTrue(0.4)
      ? [
          line({
            analyte: 'alkaline phosphatase',
            quantity: quantity(String(chance.between(48, 118)), 'U/L'),
            referenceLow: '30',
            referenceHigh: '130',
          }),
        ]
      : []),
    ...(withVitaminD ? [line({ analyte: 'vitamin D', quantity: quantity(String(vitaminD), 'nmol/L') })] : []),
  ];
  yield* me.does(me.by('nurse'), { name: 'record together', patient: me.patient, lines });
}

export function* weighs(me: Me): Life {
  if (me.chance.isTrue(0.006)) yield* writesInTheWrongNotes(me);
  const kilograms = (me.person.weight + me.chance.between(-12, 12) / 10).toFixed(1);
  const swapped = me.chance.isTrue(0.015) && kilograms[0] !== kilograms[1];
  const typed = swapped ? `${kilograms[1] ?? ''}${kilograms[0] ?? ''}${kilograms.slice(2)}` : kilograms;
  yield* me.writes(me.by('assistant'), 'weight', { quantity: quantity(typed, 'kg'), method: 'measured' });
  if (!swapped) return;
  const wrong = factsOf(me.record(), 'weight').at(-1);
  yield* me.minutes(3, 20);
  if (wrong === undefined) return;
  yield* me.does(me.by('nurse'), {
    name: 'record',
    patient: me.patient,
    amends: wrong.id,
    line: {
      kind: 'weight',
      body: { quantity: quantity(kilograms, 'kg'), method: 'measured' },
      effectiveAt: plainDate(wrong.on),
    },
  });
}

/** Someone else's weight, withdrawn within minutes. */
function* writesInTheWrongNotes(me: Me): Life {
  yield* me.writes(me.by('assistant'), 'weight', {
    quantity: quantity(String(me.chance.between(50, 95)), 'kg'),
    method: 'measured',
  });
  const wrong = factsOf(me.record(), 'weight').at(-1);
  yield* me.minutes(2, 12);
  if (wrong !== undefined)
    yield* me.does(me.by('assistant'), {
      name: 'withdraw',
      patient: me.patient,
      entry: wrong.id,
      reason: 'written in the wrong notes',
    });
}

/** Every result that waits, signed by a nurse. */
export function* signsResults(me: Me): Life {
  const signed = new Set(factsOf(me.record(), 'results-signed').flatMap(({ body }) => body.results));
  const waiting = factsOf(me.record(), 'result').filter(({ id, first }) => !signed.has(id) && !signed.has(first));
  if (waiting.length > 0) yield* me.writes(me.by('nurse'), 'results-signed', { results: waiting.map(({ id }) => id) });
}

export function* prescribes(me: Me): Life {
  yield* me.writes(me.by('prescriber'), 'prescription', {
    regimen: 'zoledronic-acid-yearly',
    validFrom: plainDate(me.today),
    validUntil: plainDate(addDays(addMonths(me.today, 12), -1)),
  });
}

/** A course of vitamin D, taken week by week as the person tells us; one in twelve is not finished. */
function* loadsVitaminD(me: Me, until?: number): Life {
  const doses = 6;
  yield* me.writes(me.by('nurse'), 'vitamin-d-loading', {
    doses,
    everyDays: 7,
    unitsPerDose: 50_000,
    startOn: plainDate(me.today),
  });
  const stopsAfter = until ?? (me.chance.isTrue(0.08) ? me.chance.between(2, 4) : doses);
  for (let dose = 1; dose <= Math.min(doses, stopsAfter); dose += 1) {
    if (dose > 1) yield* me.until(me.now + 7 * 1440);
    yield* me.writes(me.by('clerk'), 'vitamin-d-taken', { doses: 1, source: 'told us' });
  }
  if (stopsAfter >= doses || until !== undefined) return;
  yield* me.days(8, 16);
  yield* me.writes(me.by('nurse'), 'vitamin-d-loading-stopped', {
    reason: me.chance.oneOf(['nausea with the capsules', 'ran out, did not ask for more', 'thought one was enough']),
  });
}

type OtherAllergy = { readonly substance: string; readonly medicine: 'medicine not for bones' | 'not a medicine' };
const otherAllergies: readonly [OtherAllergy, ...OtherAllergy[]] = [
  { substance: 'penicillin', medicine: 'medicine not for bones' },
  { substance: 'trimethoprim', medicine: 'medicine not for bones' },
  { substance: 'codeine', medicine: 'medicine not for bones' },
  { substance: 'sticking plaster', medicine: 'not a medicine' },
  { substance: 'chlorhexidine', medicine: 'not a medicine' },
];

/** The story's person as first seen: asked once what is asked of everyone. */
export function* asksEverything(me: Me): Life {
  const { chance, person } = me;
  const nurse = me.by('nurse');
  yield* me.writes(
    nurse,
    'allergy',
    chance.isTrue(0.75)
      ? { answer: 'none known' }
      : {
          answer: 'other',
          ...chance.oneOf(otherAllergies),
          reaction: chance.oneOf(['rash', 'sick', 'itching']),
        },
  );
  yield* me.writes(nurse, 'pregnancy', {
    answer: 'does not apply',
    reason: person.sex === 'male' ? 'asked: it cannot be' : 'told us: long past the menopause',
  });
  yield* asksAboutTeeth(me);
  yield* looksForCauses(me);
  if (chance.isTrue(0.6))
    yield* me.writes(nurse, 'height', {
      quantity: quantity(
        String(chance.between(person.sex === 'female' ? 153 : 165, person.sex === 'female' ? 169 : 183)),
        'cm',
      ),
      which: 'peak adult',
    });
  if (chance.isTrue(0.55)) {
    const began = addDays(me.today, -chance.between(500, 2600));
    const stopped = addDays(began, chance.between(90, 480));
    yield* me.writes(
      nurse,
      'medicine',
      { name: 'alendronic acid 70 mg weekly', sort: 'bisphosphonate tablet', stoppedOn: plainDate(stopped) },
      began,
    );
  }
  if (chance.isTrue(0.5))
    yield* me.writes(
      nurse,
      'fracture',
      { site: chance.oneOf(['wrist', 'spine', 'shoulder', 'pelvis']), dateKnown: true },
      addDays(me.today, -chance.between(40, 900)),
    );
  if (chance.isTrue(0.12))
    yield* me.writes(
      nurse,
      'medicine',
      { name: 'apixaban', sort: 'anticoagulant' },
      addDays(me.today, -chance.between(30, 900)),
    );
}

export function* consents(me: Me): Life {
  if (me.chance.isTrue(0.03)) return yield* decidesInBestInterest(me);
  yield* me.writes(me.by('nurse'), 'consent', {
    decision: 'given',
    how: me.chance.isTrue(0.5) ? 'spoken' : 'in writing',
  });
}

/** For one dose: the next needs a decision of its own. */
export function* decidesInBestInterest(me: Me): Life {
  yield* me.writes(me.by('nurse'), 'consent', {
    decision: 'best interest',
    basis: 'advanced dementia, hip fracture last year',
    consulted: 'daughter, attorney for health',
  });
}

function* looksForCauses(me: Me): Life {
  yield* me.writes(me.by('nurse'), 'secondary-causes', {
    answer: 'none found',
    note: 'blood count, thyroid, protein electrophoresis, coeliac screen',
  });
}

function* asksAboutTeeth(me: Me): Life {
  yield* me.writes(me.by('nurse'), 'dental', {
    answer: 'nothing pending',
    checkedOn: plainDate(addDays(me.today, -me.chance.between(20, 300))),
  });
}

/** Does what the engine says is next, until the dose is ready or time or a person's decision is all that is missing. */
export function* worksTowards(me: Me, deadline: Day, values: Values = {}): Life<Readiness> {
  for (let round = 0; round < 8; round += 1) {
    const now = readinessNow(me);
    if (now.window === undefined || now.window.certain) return now;
    const step = now.nextSteps.find(({ earliest }) => earliest <= deadline);
    if (step === undefined) return now;
    yield* takes(me, step, values);
  }
  return readinessNow(me);
}

function* takes(me: Me, step: NextStep, values: Values): Life {
  if (step.earliest > me.today) yield* me.officeDay(addDays(step.earliest, me.chance.between(0, 3)));
  const take = steps[step.kind];
  yield* take === undefined ? me.days(7) : take(me, step, values);
}

const steps: Partial<Record<StepKind, (me: Me, step: NextStep, values: Values) => Life>> = {
  draw: (me, step, values) => drawsBloods(me, step.tests?.includes('vitamin D') ?? false, values),
  weigh: (me) => weighs(me),
  *'sign results'(me) {
    yield* me.days(0, me.chance.isTrue(0.1) ? 9 : 2);
    yield* signsResults(me);
  },
  'loading dose': (me) => loadsVitaminD(me),
  'ask consent': (me) => consents(me),
  'ask allergies': (me) => me.writes(me.by('nurse'), 'allergy', { answer: 'none known' }),
  'ask pregnancy': (me) =>
    me.writes(me.by('nurse'), 'pregnancy', { answer: 'does not apply', reason: 'told us: long past the menopause' }),
  'ask teeth': (me) => asksAboutTeeth(me),
  'look for causes': (me) => looksForCauses(me),
  'ask maintenance': (me) => me.writes(me.by('clerk'), 'vitamin-d-maintenance', { taken: me.chance.isTrue(0.93) }),
};
