/**
 * What a column's heading usually means. The first line that fits decides, so lines that could be mistaken for another
 * stand above it ("next dose due" is never a dose). A heading that fits nothing is left to a person.
 */
import { type Measure } from '@twelvemonth/clinical';
import type { Meaning } from './mapping.ts';

/** Lower case, no accents, brackets and punctuation as spaces, "#1" as "no 1". */
const plainHeader = (header: string): string =>
  header
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll('#', ' no ')
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .trim();

const dose = '(?:zol\\w*|dose|infusion|inf|iv|drip|treatment)';
const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** The number of a dose a heading names: "Zol 2", "2nd infusion", "Infusion no 3 date", "third dose". */
function doseNumber(plain: string): number | undefined {
  const match =
    new RegExp(`^${dose}(?: (?:dose|infusion|date))? ?(?:no )?([1-6])(?: date| given| on)*$`).exec(plain) ??
    new RegExp(`^(?:date (?:of )?)?([1-6]) ?(?:st|nd|rd|th) ${dose}(?: date| given| on)*$`).exec(plain) ??
    new RegExp(`^date (?:of )?${dose} (?:no )?([1-6])$`).exec(plain);
  if (match !== null) return Number(match[1]);
  const word = ordinals.findIndex((ordinal) =>
    new RegExp(`^(?:date (?:of )?)?${ordinal} ${dose}(?: date| given| on)*$`).test(plain),
  );
  return word < 0 ? undefined : word + 1;
}

const dateWords = /\b(?:date|dt|taken|drawn|collected|on|when|weighed|sampled)\b/;

/** Things that are measured, and the column of their own date. */
const measured: readonly (readonly [RegExp, Meaning, Meaning])[] = [
  [
    /\b(?:vit(?:amin)? ?d[23]?|25 ?oh ?(?:d[23]?|vit(?:amin)? ?d[23]?)?|25 hydroxy\w*|calcidiol)\b/,
    'vitamin D',
    'vitamin D date',
  ],
  [
    /\b(?:adj\w*|corr\w*|korr\w*)\b.*\bca(?:lcium)?\b|\bca(?:lcium)?\b.*\b(?:adj\w*|corr\w*|korr\w*)\b|^aca$|^cca$/,
    'adjusted calcium',
    'calcium date',
  ],
  [/\b(?:s ?)?(?:cr|crea|creat\w*|scr|kreatinin\w*)\b/, 'creatinine', 'creatinine date'],
  [/\be? ?gfr\b/, 'egfr', 'bloods date'],
  [/\balb(?:umin)?\b/, 'albumin', 'bloods date'],
  [/\bca(?:lcium)?\b/, 'calcium', 'calcium date'],
  [/\b(?:wt|weight|weighed)\b/, 'weight', 'weight date'],
  [/\b(?:ht|height)\b/, 'height', 'weight date'],
];

const habits: readonly (readonly [RegExp, Meaning])[] = [
  [/\bnext\b|\bdue\b|\brecall\b|\bclearance\b|\bcrcl\b|\bbmi\b|\bage\b|\bt score\b/, 'ignore'],
  [/\bdob\b|\bd o b\b|\bbirth|\bborn\b/, 'birth date'],
  [/\bdied\b|\bdeath\b|\bdeceased\b|\brip\b/, 'died on'],
  [/\bmaiden\b|\bformer\b.*\bnames?\b|\bprevious (?:sur)?names?\b/, 'former name'],
  [/\b(?:gp|general practi\w+|family doctor|family physician|pcp)\b/, 'family doctor'],
  [/\bsurname\b|\b(?:family|last) ?name\b|^family$|^last$/, 'family name'],
  [/\bforenames?\b|\b(?:given|first|christian) ?names?\b|^given$|^first$/, 'given name'],
  [/^(?:patients? )?(?:full )?name$|^patients?$|^full ?name$/, 'full name'],
  [/^title$/, 'title'],
  [/^(?:sex|gender|m f|f m|m w|w m)\b/, 'sex'],
  [/\b(?:phone|telephone|tel|mobile)\b|^cell$|^contact (?:no|number)$/, 'telephone'],
  [/\baddress\b|\bpost ?code\b|\bzip\b/, 'address'],
  [/\ballerg\w*\b|\bsensitivit\w+\b|\badrs?\b/, 'allergy'],
  [/\bconsent\w*\b/, 'consent'],
  [/\bdental\b|\bdentist\b|\bteeth\b|\bjaw\b/, 'dental'],
  [/\brefer\w* (?:by|from|source)\b|\breferrer\b|\bsource of refer\w+\b/, 'referred by'],
  [/\brefer\w*\b.*\b(?:date|on|received)\b|\bdate\b.*\brefer\w*\b|^referral$/, 'referred on'],
  [/\breason\b|\bindication\b|\bdiagnos\w+\b/, 'reason'],
  [/\bpriority\b|\burgency\b|\btier\b/, 'tier'],
  [/\bdenosumab\b|\bdmab\b|\bdeno\b/, 'denosumab date'],
  [new RegExp(`\\b(?:last|latest|previous|most recent)\\b.*\\b${dose}\\b`), 'last dose date'],
  [/\bbatch\b|\blot\b/, 'dose batch'],
  [
    /\bhip\b.*\b(?:repair\w*|operation|op|surgery|fixation|hemi\w*|replace\w*)\b|\b(?:repair|operation|surgery)\b.*\bhip\b/,
    'hip repair date',
  ],
  [/\b(?:fracture|fx)\b.*\b(?:date|on|when)\b|\bdate\b.*\b(?:fracture|fx)\b/, 'fracture date'],
  [/\b(?:fracture|fx)\b/, 'fracture site'],
  [/\b(?:drug|medicine|medication|product|agent)\b|^treatment$/, 'dose medicine'],
  [
    new RegExp(
      `\\b(?:date|given|administered)\\b.*\\b${dose}\\b|\\b${dose}\\b.*\\b(?:date|given|on)\\b|^(?:date )?(?:given|administered)(?: on)?$|^zol\\w*(?: acid)?$|^infusion$|^dose$`,
    ),
    'dose date',
  ],
  [/\b(?:bloods?|labs?|samples?|specimen|collection|phlebotomy|venepuncture|u e)\b/, 'bloods date'],
  [
    /\b(?:nhs|mrn|crn|chi)\b|\b(?:hosp\w*|patient|unit|chart|record|case|pat)\b.*\b(?:no|nr|num|number|id)\b|^(?:no|nr|number|id|pid)$/,
    'number',
  ],
  [/\bnotes?\b|\bcomments?\b|\bremarks?\b|\binfo\w*\b|\bhistory\b/, 'note'],
];

/** The usual meaning of a heading; undefined if no habit we know of fits. */
export function meaningOfHeader(header: string): Meaning | undefined {
  const plain = plainHeader(header);
  if (plain === '') return undefined;
  const [first] = habits;
  if (first?.[0].test(plain) === true) return first[1];
  const numbered = doseNumber(plain);
  if (numbered !== undefined) return `dose ${numbered} date` as Meaning;
  if (/\bdate given\b/.test(plain)) return 'dose date';
  for (const [words, value, date] of measured) if (words.test(plain)) return dateWords.test(plain) ? date : value;
  return habits.find(([words]) => words.test(plain))?.[1];
}

const measures: readonly Meaning[] = [
  'creatinine',
  'adjusted calcium',
  'calcium',
  'albumin',
  'vitamin D',
  'egfr',
  'weight',
  'height',
];
/** The measure of a meaning that carries a number. */
export const measureOf = (meaning: Meaning): Measure | undefined =>
  measures.includes(meaning) ? (meaning as Measure) : undefined;

/** Columns that hold a date. */
export const isDateMeaning = (meaning: Meaning): boolean =>
  meaning.endsWith(' date') || meaning === 'referred on' || meaning === 'died on';
