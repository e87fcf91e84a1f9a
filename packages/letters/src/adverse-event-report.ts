/**
 * A suspected reaction as a report for the local incident scheme and the national one, drafted from the notes: fields and plain
 * text only, to be copied into whatever form the scheme has. What makes a report valid is an identifiable patient, a reporter,
 * a suspect medicine and a reaction (ICH E2D: the four, from memory); seriousness by the criteria of ICH E2A (from memory).
 * Nothing unknown is filled in: it stands there as "not in the notes". A person decides whether to report, and sends it.
 */
import { type Day, shortDate } from '@twelvemonth/clinical';

export type AdverseEventFacts = {
  readonly demo: boolean;
  readonly today: Day;
  readonly unit: { readonly name: string; readonly telephone: string };
  readonly reporter: { readonly name: string; readonly role: string };
  /** The national scheme gets initials and an own reference, no name, no number. */
  readonly patient: {
    readonly initials: string;
    readonly reference: string;
    readonly sex: string | undefined;
    readonly ageYears: number | undefined;
    readonly weight: string | undefined;
  };
  readonly medicine:
    | {
        readonly name: string;
        readonly on: Day;
        readonly batch: string | undefined;
        readonly route: string;
        readonly minutes: number | undefined;
        readonly doseNumber: number;
        readonly indication: string | undefined;
      }
    | undefined;
  readonly reaction: {
    readonly what: string;
    readonly began: Day;
    readonly days: number | undefined;
    readonly severity: string;
    readonly grade: string | undefined;
    readonly treated: readonly string[];
    readonly outcome: string | undefined;
    readonly infusion: string | undefined;
  };
  readonly tests: readonly string[];
  readonly otherMedicines: readonly string[];
  readonly conditions: readonly string[];
  readonly allergies: string;
};

export type AdverseEventReport = { readonly text: string; readonly missing: readonly string[] };

const UNKNOWN = 'not in the notes';
/** ICH E2A; each is left for a person: severity is not seriousness. */
const seriousness = [
  'died',
  'life-threatening',
  'taken into hospital, or kept longer',
  'lasting or great disability',
  'birth defect',
  'medically important otherwise',
  'none of these: not serious',
];

export function adverseEventReport(facts: AdverseEventFacts): AdverseEventReport {
  const { patient, medicine, reaction, unit, reporter, today } = facts;
  const missing: string[] = [];
  const field = (label: string, value: string | undefined, wanted = true): string => {
    if (value === undefined && wanted) missing.push(label.toLowerCase());
    return `${label}: ${value ?? UNKNOWN}`;
  };
  const list = (label: string, values: readonly string[], none: string): string =>
    `${label}: ${values.length === 0 ? none : values.join('; ')}`;
  const lines = [
    ...(facts.demo ? ['DEMO: an invented person. Do not send.', ''] : []),
    'SUSPECTED REACTION TO A MEDICINE: draft, to be checked before it is sent',
    '',
    'PATIENT',
    field('Initials', patient.initials),
    field('Reference at this unit', patient.reference),
    field('Sex', patient.sex),
    field('Age at the reaction', patient.ageYears === undefined ? undefined : `${patient.ageYears} years`),
    field('Weight', patient.weight),
    '',
    'SUSPECT MEDICINE',
    field('Medicine', medicine?.name),
    field('Batch', medicine?.batch),
    field('Given on', medicine === undefined ? undefined : shortDate(medicine.on)),
    field('Route', medicine?.route),
    field('Running time', medicine?.minutes === undefined ? undefined : `${medicine.minutes} minutes`, false),
    field('Dose of this course', medicine === undefined ? undefined : String(medicine.doseNumber)),
    field('Given for', medicine?.indication),
    '',
    'REACTION',
    field('What happened', reaction.what),
    field('Began on', shortDate(reaction.began)),
    field('Days after the dose', medicine === undefined ? undefined : String(reaction.began - medicine.on)),
    field(
      'Lasted',
      reaction.days === undefined ? undefined : `${reaction.days} ${reaction.days === 1 ? 'day' : 'days'}`,
    ),
    field('Severity', reaction.severity),
    field('Grade', reaction.grade, false),
    field('The infusion', reaction.infusion, false),
    list('Treated with', reaction.treated, 'nothing in the notes'),
    field('Outcome', reaction.outcome),
    'Seriousness (tick; a person decides):',
    ...seriousness.map((one) => `  [ ] ${one}`),
    '',
    'ALSO',
    list('Tests', facts.tests, UNKNOWN),
    list('Other medicines in the last three months', facts.otherMedicines, UNKNOWN),
    list('Conditions', facts.conditions, UNKNOWN),
    `Allergies: ${facts.allergies}`,
    '',
    'REPORTER',
    field('Name', reporter.name),
    field('Role', reporter.role),
    field('Unit', `${unit.name}, ${unit.telephone}`),
    `Drafted on: ${shortDate(today)}`,
  ];
  return { text: `${lines.join('\n')}\n`, missing };
}
