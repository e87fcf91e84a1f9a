/**
 * Red flags of symptoms: what somebody tells about themselves after a dose that may not wait, who acts, by when, and what to do
 * now. The one home of these rules: the aftercare call, the advice line and the answers a person sends by link read them here.
 * They follow the table "Red flags after dose" of the clinical sheet (practice page 8, rows 9 and 10, in the person's words).
 * They add caution only: nothing here says that all is well, and the local protocol and a prescriber decide.
 */
import type { Protocol } from '../protocol/protocol.ts';

export const urgencies = ['now', 'today', 'this week'] as const;
/** By when somebody acts, counted from the telling. */
export type Urgency = (typeof urgencies)[number];

type Rule = {
  /** What is asked, so that "yes" is the sign. */
  readonly asks: string;
  /** What it may be: for staff, never said to the person. */
  readonly thinkOf: string;
  readonly urgency: Urgency;
  /** Who acts. */
  readonly who: string;
  /** Read out to the person at once, or shown on their page. */
  readonly doNow: string;
  readonly source: string;
};

const MEMORY = 'from memory';

/** Asked one by one; each "yes" is a red flag, at any hour and however long after the dose. */
export const dangerSigns = {
  'trouble breathing or swelling': {
    asks: 'Trouble breathing, a swollen face or throat, a rash all over, or a collapse?',
    thinkOf: 'severe allergic reaction, narrow airways',
    urgency: 'now',
    who: 'ambulance',
    doNow: 'Ring the emergency number now. Do not wait for us, and do not drive yourself.',
    source: `severe allergic reaction: Resuscitation Council UK 2021 (read); when and who ${MEMORY}`,
  },
  'chest pain or stroke signs': {
    asks: 'Chest pain, a face that droops, a weak arm, or speech that is not clear?',
    thinkOf: 'heart attack, stroke',
    urgency: 'now',
    who: 'ambulance',
    doNow: 'Ring the emergency number now. Do not wait for us, and do not drive yourself.',
    source: MEMORY,
  },
  palpitations: {
    asks: 'A heart that races or beats out of time, and is new?',
    thinkOf: 'atrial fibrillation; low calcium',
    urgency: 'today',
    who: 'prescriber: pulse, ECG and calcium',
    doNow:
      'Someone must listen to your heart today. With chest pain, a faint or no breath: ring the emergency number now.',
    source: `atrial fibrillation: EU product text 2.5 against 1.9 in 100 (read); when and who ${MEMORY}`,
  },
  'a fit or a faint': {
    asks: 'A fit, or a faint?',
    thinkOf: 'low calcium, heart rhythm',
    urgency: 'now',
    who: 'ambulance',
    doNow: 'Ring the emergency number now. Do not drive.',
    source: `signs of low calcium: product text (read); when and who ${MEMORY}`,
  },
  'tingling or cramps': {
    asks: 'Tingling round the mouth or in the fingers, cramps or twitching?',
    thinkOf: 'low calcium: lowest about 9 to 11 days after the dose, and possible for months',
    urgency: 'today',
    who: 'prescriber: calcium now, ECG',
    doNow: 'You need a blood test for calcium today. With a fit, a faint or a racing heart: ring the emergency number.',
    source: `signs of low calcium: product text (read); lowest at day 9 to 11 (Black 2007, ${MEMORY}); for months: safety rules`,
  },
  'little or no urine': {
    asks: 'Passing little or no water?',
    thinkOf: 'kidneys harmed, too little drunk',
    urgency: 'today',
    who: 'prescriber: creatinine today, fluids',
    doNow:
      'You need a blood test for your kidneys today. Drink, unless you were told to limit fluids. Take no ibuprofen.',
    source: `kidney harm after zoledronic acid: MHRA April 2010 (read); when and who ${MEMORY}`,
  },
  'cannot keep fluids down': {
    asks: 'Vomiting or loose stools, so that nothing you drink stays?',
    thinkOf: 'too dry, kidneys harmed',
    urgency: 'today',
    who: 'prescriber: creatinine today, fluids',
    doNow: 'Someone must see you today: your kidneys need fluid. Small sips often until then. Take no ibuprofen.',
    source: `kidney harm when dry: MHRA April 2010 (read); when and who ${MEMORY}`,
  },
  'shaking chills': {
    asks: 'Shaking chills that rattle the bed?',
    thinkOf: 'infection, not the reaction to the dose',
    urgency: 'today',
    who: 'same-day medical review',
    doNow: 'A doctor must see you today. Confused, very drowsy or cold and mottled: ring the emergency number now.',
    source: MEMORY,
  },
  'red or painful eye': {
    asks: 'A red or painful eye, light that hurts, or blurred sight?',
    thinkOf: 'inflammation inside the eye: mostly 1 to 7 days after a first dose',
    urgency: 'today',
    who: 'eye casualty',
    doNow:
      'Your eye must be seen today at an eye casualty. Take your lenses out. Say which bone medicine you had, and when.',
    source: `Patel 2013, Ophthalmology 120:773: mean 3 days, 1 to 7 (read); same day ${MEMORY}`,
  },
  'swollen or painful where it went in': {
    asks: 'Where the drip or injection went in: swollen, hot, red or painful?',
    thinkOf: 'the drip ran beside the vein, inflamed vein, infection, clot',
    urgency: 'today',
    who: 'nurse: look at the place',
    doNow: 'Someone must look at it today. Lay an arm high until then.',
    source: `practice page 8, row 9; ${MEMORY}`,
  },
  'thigh, hip or groin pain': {
    asks: 'New pain in a thigh, a hip or the groin?',
    thinkOf: 'atypical fracture of the thigh bone',
    urgency: 'today',
    who: 'prescriber: X-ray of both whole thigh bones; no dose until then',
    doNow:
      'Spare that leg, and no sport or jumping. We arrange an X-ray. If you cannot stand on it, ring the emergency number.',
    source: `product text 4.4, ASBMR (thigh, hip or groin pain: read); both sides, and when, ${MEMORY}`,
  },
  'jaw or tooth trouble': {
    asks: 'Jaw pain, a loose tooth, a numb lip, or a gap that does not heal?',
    thinkOf: 'bone of the jaw that does not heal',
    urgency: 'this week',
    who: 'dentist, and the nurse in charge',
    doNow: 'See your dentist this week and say which bone medicine you had. Have no tooth pulled before they know.',
    source: `product text and reminder card (read); when ${MEMORY}`,
  },
  'ear pain or discharge': {
    asks: 'Ear pain, or an ear that runs?',
    thinkOf: 'bone of the ear canal that does not heal',
    urgency: 'this week',
    who: 'prescriber: refer',
    doNow: 'A doctor must look into your ear this week. Put nothing into it.',
    source: `MHRA December 2015 (read); when ${MEMORY}`,
  },
} as const satisfies Readonly<Record<string, Rule>>;

export type DangerSign = keyof typeof dangerSigns;
export const dangerSignNames = Object.keys(dangerSigns) as DangerSign[];

/** Found from a number or an answer, not asked as a sign. */
const found = {
  'fever that is too long or too high': {
    thinkOf: 'infection, not the reaction to the dose; paracetamol may hide it',
    urgency: 'today',
    who: 'same-day medical review',
    doNow: 'A doctor must see you today. Confused, very drowsy or cold and mottled: ring the emergency number now.',
    source: 'clinical sheet 7; the numbers are the protocol’s',
  },
  'fever, and nobody has said how much is too much': {
    thinkOf: 'no protocol in force: any fever is looked at',
    urgency: 'today',
    who: 'same-day medical review',
    doNow: 'A doctor must see you today. Confused, very drowsy or cold and mottled: ring the emergency number now.',
    source: 'safety rules: what is not known is looked at',
  },
  'hardly drinks': {
    thinkOf: 'too dry, kidneys harmed',
    urgency: 'today',
    who: 'prescriber: creatinine today, fluids',
    doNow:
      'Your kidneys need fluid. Small sips often, unless you were told to limit fluids. Someone must see you today.',
    source: `kidney harm when dry: MHRA April 2010 (read); when and who ${MEMORY}`,
  },
  'more paracetamol than told': {
    thinkOf: 'liver harmed, even where they feel well',
    urgency: 'now',
    who: 'emergency department or poisons advice',
    doNow:
      'Take no more paracetamol. You need a blood test now, even if you feel well: go to the emergency department.',
    source: MEMORY,
  },
  'very unwell': {
    thinkOf: 'infection, dry, low calcium, or something that has nothing to do with the dose',
    urgency: 'today',
    who: 'same-day medical review',
    doNow: 'A doctor must see you today. If it gets worse before then, ring the emergency number.',
    source: 'common practice, no source',
  },
  'severe pain in bones, joints or muscles': {
    thinkOf: 'severe pain of the class: days to months after a dose',
    urgency: 'this week',
    who: 'prescriber; no further dose until then',
    doNow: 'Take paracetamol as told. A doctor looks at it before any other dose.',
    source: `product text (US) 5.6: severe pain, withhold further doses (read); when ${MEMORY}`,
  },
  'new back pain, or grown shorter': {
    thinkOf: 'fracture of the spine: several at once after denosumab that nothing followed in time',
    urgency: 'this week',
    who: 'prescriber: the same day where denosumab is late; looks at the spine; no dose until then',
    doNow:
      'Lift nothing heavy. A doctor looks at your back before any other dose. With weak or numb legs, or trouble passing water or stools: ring the emergency number now.',
    source: `new back pain or height loss opens a review: safety rules; rebound after denosumab: MHRA August 2020 (${MEMORY}); when, and signs of the cord, ${MEMORY}`,
  },
} as const satisfies Readonly<Record<string, Omit<Rule, 'asks'>>>;

export type RedFlagName = DangerSign | keyof typeof found;
const rules: Readonly<Record<RedFlagName, Omit<Rule, 'asks'>>> = { ...dangerSigns, ...found };
export const redFlagNames = Object.keys(rules) as RedFlagName[];

export type RedFlag = Omit<Rule, 'asks'> & { readonly name: RedFlagName };

export const redFlagNamed = (name: RedFlagName): RedFlag => {
  const { thinkOf, urgency, who, doNow, source } = rules[name];
  return { name, thinkOf, urgency, who, doNow, source };
};

/** Beside every flag that somebody must act on today: at night too it says what to do now. */
export const ifNobodyAnswers =
  'If nobody answers here, ring the out-of-hours service or go to the emergency department. Do not leave it until the next day.';

export const amountsDrunk = ['as usual or more', 'less than usual', 'hardly anything'] as const;
export const feelings = ['as before the dose', 'a little rough', 'rough', 'very unwell'] as const;
export const paracetamolTaken = ['none', 'as told', 'more than told', 'may not take it'] as const;

/** What somebody tells, by whatever way. What is absent was not told, and raises nothing: whoever asks says what was not asked. */
export type Told = {
  readonly signs: readonly DangerSign[];
  readonly feels?: (typeof feelings)[number] | undefined;
  readonly temperatureCelsius?: number | undefined;
  /** From the first fever to today while it lasts, in days; 0: it began today. */
  readonly feverDays?: number | undefined;
  readonly drinks?: (typeof amountsDrunk)[number] | undefined;
  readonly paracetamol?: (typeof paracetamolTaken)[number] | undefined;
  readonly severeAches?: boolean | undefined;
};

/** What of the numbers of a protocol these rules read. */
export type RedFlagLimits = Pick<Protocol['number'], 'feverTooHighCelsius' | 'feverTooLongDays'>;

/** Every red flag in what was told, the most urgent first. Without a protocol any fever is one. */
export function redFlagsIn(told: Told, limits: RedFlagLimits | undefined): readonly RedFlag[] {
  const names: RedFlagName[] = [...told.signs, ...feverFlags(told, limits)];
  if (told.paracetamol === 'more than told') names.push('more paracetamol than told');
  if (told.drinks === 'hardly anything') names.push('hardly drinks');
  if (told.feels === 'very unwell') names.push('very unwell');
  if (told.severeAches === true) names.push('severe pain in bones, joints or muscles');
  const flags = redFlagNames.filter((name) => names.includes(name)).map(redFlagNamed);
  return flags.toSorted((a, b) => urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency));
}

function feverFlags({ temperatureCelsius, feverDays }: Told, limits: RedFlagLimits | undefined): RedFlagName[] {
  if (limits === undefined)
    return temperatureCelsius === undefined && feverDays === undefined
      ? []
      : ['fever, and nobody has said how much is too much'];
  const { feverTooHighCelsius, feverTooLongDays } = limits;
  const tooHigh = temperatureCelsius !== undefined && temperatureCelsius > feverTooHighCelsius;
  const tooLong = feverDays !== undefined && feverDays > feverTooLongDays;
  return tooHigh || tooLong ? ['fever that is too long or too high'] : [];
}
