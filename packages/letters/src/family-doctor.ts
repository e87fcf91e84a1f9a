/**
 * The letter to the family doctor after a visit: what was given or why not, the batch, when the next dose is due, who calls
 * the patient, when bloods are needed, what not to prescribe, calcium and vitamin D, what to look out for.
 * Content of the list: practice of the trade (common practice, no source); warning signs: zoledronic acid 5 mg product text
 * sections 4.4 and 4.8 and the acute-phase study of Reid 2010, see docs/safety/sources.md.
 */
import { type Day, type LetterBlock, type LetterSheet, dateWithWeekday } from '@twelvemonth/clinical';
import { type DaySpan, type Language, type Speaker, englishSpan, shortDateIn, speakerOf } from './speaker.ts';

export const FAMILY_DOCTOR_WORDING = 'family-doctor-3';

/** What British and American English call differently; everything else stands in the letter itself. */
const words = {
  'en-GB': { bloods: 'Bloods for it', eye: 'a red, painful or light-shy eye', sincerely: 'Yours sincerely' },
  'en-US': { bloods: 'Blood tests for it', eye: 'a red, painful or light-sensitive eye', sincerely: 'Sincerely' },
} as const satisfies Readonly<Record<Language, object>>;
type Says = Speaker<keyof (typeof words)['en-GB']> & { readonly when: (days: DaySpan) => string };

export type FamilyDoctorFacts = {
  readonly language: Language;
  readonly unit: { readonly name: string; readonly telephone: string; readonly demo: boolean };
  readonly today: Day;
  readonly patient: { readonly name: string; readonly born: string; readonly number: string };
  readonly familyDoctor: string | undefined;
  readonly signedBy: { readonly name: string; readonly role: string };
  readonly outcome:
    | {
        readonly kind: 'given';
        readonly on: Day;
        readonly medicine: string;
        /** Where; undefined: it ran into a vein as a drip. */
        readonly injectedInto: string | undefined;
        readonly doseNumber: number;
        readonly plannedDoses: number | undefined;
        readonly batch: string;
        readonly expires: string;
        readonly minutes: number | undefined;
        /** Set when only part was given. */
        readonly partMilliliters: number | undefined;
        readonly nextDue: Day | undefined;
        readonly bloodsBetween: { readonly from: Day; readonly until: Day } | undefined;
        /** After the planned doses: review instead of a next date. */
        readonly reviewNext: boolean;
      }
    | {
        readonly kind: 'put off';
        readonly on: Day;
        readonly medicine: string;
        readonly reason: string;
        readonly nextStep: string;
      }
    | {
        readonly kind: 'reviewed';
        readonly on: Day;
        /** "a planned break until 28 Mar 2029" */
        readonly decided: string;
        readonly decidedBy: string;
        readonly reason: string;
        /** What follows, a sentence each. */
        readonly follows: readonly string[];
      };
  /** What was seen at the chair, one text each, with its time. */
  readonly reactions: readonly string[];
  readonly protocolVersion: string;
};

const fluLike =
  'flu-like aching or fever in the first three days: common after a first dose, rarer later; fever for more than three days wants another cause looked for;';

const medicineInTheBag = (medicine: string): string =>
  medicine === 'zoledronic acid 5 mg' ? `${medicine} in 100 mL` : medicine;

/** Safety page, "denosumab is a promise with a date"; more than 16 weeks late: spine fracture hazard ratio 3.91 (Lyu 2020). */
const mustNotBeLate: LetterBlock = {
  kind: 'paragraph',
  text: 'This medicine wears off when a dose is late: several spine bones may break. Never stop it without a plan for what follows. If your patient cannot come, or has new back pain, tell us the same day.',
};

/** What a medicine has of its own: product texts (denosumab: skin infection, from memory; romosozumab: read). */
function lookOutFor(medicine: string): readonly string[] {
  if (medicine.startsWith('denosumab')) return ['a hot, red or swollen patch of skin: see them the same day;'];
  if (medicine.startsWith('romosozumab'))
    return ['chest pain, or signs of a stroke: emergency number, and no further dose;'];
  return [];
}

function given(
  outcome: Extract<FamilyDoctorFacts['outcome'], { kind: 'given' }>,
  unit: FamilyDoctorFacts['unit'],
  { date, say, when }: Says,
): LetterBlock[] {
  const { medicine, injectedInto, plannedDoses, partMilliliters: part } = outcome;
  const isDrip = injectedInto === undefined;
  const rows: [string, string][] = [
    [
      'Medicine',
      !isDrip
        ? `${medicine}, injected (${injectedInto})`
        : part === undefined
          ? `${medicineInTheBag(medicine)}, whole infusion`
          : `${medicineInTheBag(medicine)}: only ${part} mL was given`,
    ],
    ['Date', date(outcome.on)],
    ['Dose', plannedDoses === undefined ? `${outcome.doseNumber}` : `${outcome.doseNumber} of ${plannedDoses} planned`],
    ['Batch', `${outcome.batch}, expires ${outcome.expires}`],
    ...(isDrip
      ? [
          ['Running time', outcome.minutes === undefined ? 'not measured' : `${outcome.minutes} minutes`] as [
            string,
            string,
          ],
        ]
      : []),
  ];
  const next: [string, string][] = [];
  if (part !== undefined)
    next.push(['Next', 'a prescriber decides whether this part dose counts; we will write again']);
  else if (outcome.reviewNext)
    next.push(['Next', 'the planned doses are complete: a prescriber reviews the treatment before any further dose']);
  else if (outcome.nextDue !== undefined) {
    next.push(['Next dose due', `from ${date(outcome.nextDue)}`]);
    if (outcome.bloodsBetween !== undefined) {
      next.push([say('bloods'), `creatinine, adjusted calcium ${when(outcome.bloodsBetween)}`]);
    }
  }
  next.push(['Who calls the patient', `${unit.name}, ${unit.telephone}. You need not arrange the next dose.`]);
  return [
    {
      kind: 'paragraph',
      text:
        part === undefined
          ? `Your patient was given ${medicine} on ${date(outcome.on)}.`
          : `Your patient's infusion of ${medicine} on ${date(outcome.on)} had to be stopped before the end.`,
    },
    { kind: 'facts', heading: 'What was given', rows },
    { kind: 'facts', heading: 'What comes next', rows: next },
    ...(medicine.startsWith('denosumab') ? [mustNotBeLate] : []),
    {
      kind: 'list',
      heading: 'Please',
      items: [
        'continue calcium and vitamin D as before;',
        'do not prescribe another bone medicine (bisphosphonate, denosumab or other) beside this treatment without asking us;',
        'tell us of new kidney trouble, a new fracture, dental extraction or implant planned, or a new medicine hard on the kidneys.',
      ],
    },
    {
      kind: 'list',
      heading: 'Look out for',
      items: [
        ...(isDrip ? [fluLike] : []),
        'tingling, cramps or spasm at any time in the next months: adjusted calcium the same day;',
        ...(isDrip ? [`${say('eye')}: eye clinic the same day;`] : []),
        ...lookOutFor(medicine),
        'new pain in thigh, hip or groin: X-ray both whole femurs and hold further doses;',
        'jaw pain, a loose tooth or a socket that does not heal: dentist, and tell us.',
      ],
    },
  ];
}

const reactionsAtTheChair = (reactions: readonly string[]): LetterBlock => ({
  kind: 'list',
  heading: 'Reaction while they were here',
  items: reactions,
});

function reviewed(
  outcome: Extract<FamilyDoctorFacts['outcome'], { kind: 'reviewed' }>,
  unit: FamilyDoctorFacts['unit'],
  { date }: Says,
): LetterBlock[] {
  return [
    { kind: 'paragraph', text: `We reviewed your patient's bone treatment on ${date(outcome.on)}.` },
    {
      kind: 'facts',
      heading: 'What was decided',
      rows: [
        ['Decision', outcome.decided],
        ['Decided by', outcome.decidedBy],
        ['Reason', outcome.reason],
        ['Who arranges it', `${unit.name}, ${unit.telephone}`],
      ],
    },
    { kind: 'list', heading: 'What follows', items: [...outcome.follows] },
    {
      kind: 'list',
      heading: 'Please',
      items: [
        'tell us the same week of a new fracture, new back pain, lost height, or a steroid begun: the review is then opened again at once;',
        'continue calcium and vitamin D as before;',
        'do not prescribe another bone medicine without asking us.',
      ],
    },
  ];
}

export function familyDoctorLetter(facts: FamilyDoctorFacts): LetterSheet {
  const { language, unit, patient, outcome, reactions } = facts;
  const said = speakerOf(words[language], language);
  const { date, say } = said;
  const speaker: Says = { ...said, when: (days) => englishSpan(days, language === 'en-GB' ? dateWithWeekday : date) };
  const blocks: LetterBlock[] =
    outcome.kind === 'given'
      ? given(outcome, unit, speaker)
      : outcome.kind === 'reviewed'
        ? reviewed(outcome, unit, speaker)
        : [
            {
              kind: 'paragraph',
              text: `Your patient came on ${date(outcome.on)} for ${outcome.medicine}. It was not given.`,
            },
            {
              kind: 'facts',
              heading: 'Why, and what next',
              rows: [
                ['Reason', outcome.reason],
                ['What happens next', outcome.nextStep],
                ['Who arranges it', `${unit.name}, ${unit.telephone}`],
              ],
            },
            {
              kind: 'list',
              heading: 'Please',
              items: [
                'continue calcium and vitamin D as before;',
                'do not prescribe another bone medicine in place of it without asking us.',
              ],
            },
          ];
  return {
    language,
    version: FAMILY_DOCTOR_WORDING,
    title: `Letter to the family doctor, ${shortDateIn(language, facts.today)}`,
    from: [unit.name, unit.telephone],
    to: [facts.familyDoctor ?? 'To the family doctor'],
    dated: date(facts.today),
    about: `${patient.name}, born ${patient.born}, number ${patient.number}`,
    blocks:
      reactions.length === 0 ? blocks : [...blocks.slice(0, 1), reactionsAtTheChair(reactions), ...blocks.slice(1)],
    closing: [say('sincerely'), `${facts.signedBy.name}, ${facts.signedBy.role}`],
    foot: `Decided under protocol ${facts.protocolVersion}. Wording ${FAMILY_DOCTOR_WORDING}. ${unit.name}. Clinical judgement and local policy decide.`,
    demo: unit.demo,
  };
}
