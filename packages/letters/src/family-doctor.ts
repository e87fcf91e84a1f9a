/**
 * The letter to the family doctor after a visit: what was given or why not, the batch, when the next dose is due, who calls
 * the patient, when bloods are needed, what not to prescribe, calcium and vitamin D, what to look out for.
 * Content of the list: practice of the trade (common practice, no source); warning signs: zoledronic acid 5 mg product text
 * sections 4.4 and 4.8 and the acute-phase study of Reid 2010, see docs/safety/sources.md.
 */
import { type Day, type LetterBlock, type LetterSheet, dateWithWeekday, shortDate } from '@twelvemonth/clinical';
import { type Language, type Speaker, speakerOf } from './speaker.ts';

export const FAMILY_DOCTOR_WORDING = 'family-doctor-2';

/** What British and American English call differently; everything else stands in the letter itself. */
const words = {
  'en-GB': { bloods: 'Bloods for it', eye: 'a red, painful or light-shy eye', sincerely: 'Yours sincerely' },
  'en-US': { bloods: 'Blood tests for it', eye: 'a red, painful or light-sensitive eye', sincerely: 'Sincerely' },
} as const satisfies Readonly<Record<Language, object>>;
type Says = Speaker<keyof (typeof words)['en-GB']> & { readonly between: (day: Day) => string };

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
        readonly doseNumber: number;
        readonly plannedDoses: number;
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
    | { readonly kind: 'put off'; readonly on: Day; readonly reason: string; readonly nextStep: string }
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

function given(
  outcome: Extract<FamilyDoctorFacts['outcome'], { kind: 'given' }>,
  unit: FamilyDoctorFacts['unit'],
  { date, say, between }: Says,
): LetterBlock[] {
  const part = outcome.partMilliliters;
  const rows: [string, string][] = [
    [
      'Medicine',
      part === undefined
        ? 'zoledronic acid 5 mg in 100 mL, whole infusion'
        : `zoledronic acid 5 mg in 100 mL: only ${part} mL was given`,
    ],
    ['Date', date(outcome.on)],
    ['Dose', `${outcome.doseNumber} of ${outcome.plannedDoses} planned`],
    ['Batch', `${outcome.batch}, expires ${outcome.expires}`],
    ['Running time', outcome.minutes === undefined ? 'not measured' : `${outcome.minutes} minutes`],
  ];
  const next: [string, string][] = [];
  if (part !== undefined)
    next.push(['Next', 'a prescriber decides whether this part dose counts; we will write again']);
  else if (outcome.reviewNext)
    next.push(['Next', 'the planned doses are complete: a prescriber reviews the treatment before any further dose']);
  else if (outcome.nextDue !== undefined) {
    next.push(['Next dose due', `from ${date(outcome.nextDue)}`]);
    if (outcome.bloodsBetween !== undefined) {
      next.push([
        say('bloods'),
        `creatinine, adjusted calcium between ${between(outcome.bloodsBetween.from)} and ${between(outcome.bloodsBetween.until)}`,
      ]);
    }
  }
  next.push(['Who calls the patient', `${unit.name}, ${unit.telephone}. You need not arrange the next dose.`]);
  return [
    {
      kind: 'paragraph',
      text:
        part === undefined
          ? `Your patient was given the yearly infusion on ${date(outcome.on)}.`
          : `Your patient's infusion on ${date(outcome.on)} had to be stopped before the end.`,
    },
    { kind: 'facts', heading: 'What was given', rows },
    { kind: 'facts', heading: 'What comes next', rows: next },
    {
      kind: 'list',
      heading: 'Please',
      items: [
        'continue calcium and vitamin D as before;',
        'do not prescribe another bisphosphonate or denosumab beside this treatment without asking us;',
        'tell us of new kidney trouble, a new fracture, dental extraction or implant planned, or a new medicine hard on the kidneys.',
      ],
    },
    {
      kind: 'list',
      heading: 'Look out for',
      items: [
        'flu-like aching or fever in the first three days: common after a first dose, rarer later; fever for more than three days wants another cause looked for;',
        'tingling, cramps or spasm at any time in the next months: adjusted calcium the same day;',
        `${say('eye')}: eye clinic the same day;`,
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
  const speaker: Says = { ...said, between: language === 'en-GB' ? dateWithWeekday : date };
  const blocks: LetterBlock[] =
    outcome.kind === 'given'
      ? given(outcome, unit, speaker)
      : outcome.kind === 'reviewed'
        ? reviewed(outcome, unit, speaker)
        : [
            {
              kind: 'paragraph',
              text: `Your patient came on ${date(outcome.on)} for the yearly infusion. It was not given.`,
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
    title: `Letter to the family doctor, ${shortDate(facts.today)}`,
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
