/** Words in cells that stand for one of the record's own words. A word that fits none is told, never bent to fit. */
import { type BodyOfKind, namesBisphosphonate } from '@twelvemonth/clinical';

const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, ' ')
    .trim();

const firstFit = <Word>(text: string, habits: readonly (readonly [RegExp, Word])[]): Word | undefined =>
  habits.find(([words]) => words.test(plain(text)))?.[1];

export type Sex = 'female' | 'male';
/** "not said" where the cell says that it is not known. */
export const sexOf = (text: string): Sex | 'not said' | undefined =>
  firstFit(text, [
    [/^(?:f|female|fem|w|woman|girl)$/, 'female'],
    [/^(?:m|male|man|boy)$/, 'male'],
    [/^(?:u|unknown|not stated|not specified|indeterminate|)$/, 'not said'],
  ]);

type Medicine = BodyOfKind<'dose'>['medicine'];
/** The medicine and strength; without a strength, the service's own product for zoledronic acid and denosumab. */
export const medicineOf = (text: string): Medicine | undefined =>
  firstFit(text, [
    [/\bzol\w*\b.*\b4 ?mg\b/, 'zoledronic acid 4 mg'],
    [/\bzol\w*\b(?!.*\b(?!5 ?mg)\d+ ?mg\b)/, 'zoledronic acid 5 mg'],
    [/\bdenosumab\b.*\b120 ?mg\b/, 'denosumab 120 mg'],
    [/\b(?:denosumab|dmab|deno)\b(?!.*\b(?!60 ?mg)\d+ ?mg\b)/, 'denosumab 60 mg'],
    [/\bibandron\w*\b.*\b3 ?mg\b/, 'ibandronate 3 mg'],
    [/\bpamidron\w*\b/, 'pamidronate'],
    [/\bromosozumab\b/, 'romosozumab 210 mg'],
  ]);

type FractureSite = BodyOfKind<'fracture'>['site'];
export const fractureSiteOf = (text: string): FractureSite | 'none' =>
  firstFit<FractureSite | 'none'>(text, [
    [/^(?:no|none|nil|never|0)$/, 'none'],
    [/\b(?:subtrochanter\w*|thigh|femoral shaft|shaft of (?:the )?femur|diaphys\w+)\b/, 'thigh shaft'],
    [/\b(?:hip|nof|neck of femur|femoral neck|intertrochanteric|trochanter\w*|intracapsular|extracapsular)\b/, 'hip'],
    [/\b(?:spine|spinal|vertebra\w*|lumbar|thoracic|wedge|[lt]\d{1,2})\b/, 'spine'],
    [/\b(?:wrist|colles|distal radi\w+|radius|forearm)\b/, 'wrist'],
    [/\b(?:shoulder|proximal humer\w+|neck of humer\w+)\b/, 'shoulder'],
    [/\b(?:upper arm|humer\w+)\b/, 'upper arm'],
    [/\bribs?\b/, 'ribs'],
    [/\b(?:pelvi\w+|pubic|ramus|rami|sacr\w+)\b/, 'pelvis'],
    // A femur without its part: a prescriber says which it was.
    [/\b(?:femur|femoral)\b/, 'thigh shaft'],
  ]) ?? 'other';

export type Tier = BodyOfKind<'referral'>['tier'];
export const tierOf = (text: string): Tier | undefined =>
  firstFit(text, [
    [/\b(?:first in line|very high|urgent|emergency|p1|1)\b/, 'first in line'],
    [/\b(?:high|soon|p2|2)\b/, 'high'],
    [/\b(?:routine|normal|standard|low|medium|p3|3)\b/, 'routine'],
  ]);

/** What is known about allergies. Text that is not "none known" is kept whole as a substance or a reaction. */
export function allergyOf(text: string): BodyOfKind<'allergy'> | 'not asked' {
  const word = plain(text);
  if (/^(?:not asked|not known|not recorded)$/.test(word)) return 'not asked';
  if (
    /^(?:nkda|nka|nkma|none|nil|none known|nil known|no known (?:drug )?allerg(?:y|ies)|no allerg(?:y|ies)|no)$/.test(
      word,
    )
  ) {
    return { answer: 'none known' };
  }
  if (namesBisphosphonate(text)) return { answer: 'bisphosphonate', reaction: text };
  return { answer: 'other', substance: text };
}

/** What is known of the teeth. "Nothing pending" counts only with a date beside it; trouble is kept either way. */
export const dentalOf = (text: string): BodyOfKind<'dental'>['answer'] | undefined =>
  firstFit(text, [
    [/\bsocket\b|\bnot healed\b/, 'socket not healed'],
    [/\bjaw\b|\bloose\b/, 'jaw pain or loose tooth'],
    [/\bno dentist\b|\bcannot get\b/, 'cannot get a dentist'],
    [/\bpending\b(?<!nothing pending)|\bextraction\w*\b|\bimplant\w*\b|\bawait\w*\b|\bplanned\b/, 'work pending'],
    [/\b(?:ok|fit|clear|cleared|nothing pending|no problems?|checked|fine)\b/, 'nothing pending'],
  ]);

/** A text a spreadsheet would run as a formula if it were ever written back to one. */
export const startsLikeFormula = (text: string): boolean => /^[=+\-@\t\r]/.test(text);
/** A telephone number or a plain number may begin with a sign. */
export const isSignedFigure = (text: string): boolean => /^[+-][\d\s().-]+$/.test(text);
