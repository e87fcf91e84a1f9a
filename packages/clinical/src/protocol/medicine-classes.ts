/**
 * Medicines that matter before a dose, found in free text by the stems of their generic names, with the sort they are entered as
 * (clinical fact sheet 4e; what it only had from memory, and every stem, is `from memory`). It can only find: a name that is not
 * found says nothing, and nothing is entered for anybody. A question is asked, the nurse answers.
 */
import type { BodyOfKind } from '../kinds/index.ts';
import { namesBisphosphonate, namesMedicine, plainText } from './medicine-words.ts';

export type MedicineSort = BodyOfKind<'medicine'>['sort'];

export type MedicineClass = {
  /** "an anti-inflammatory, hard on the kidneys" */
  readonly is: string;
  /** Each sort under which it is entered: a loop diuretic takes fluid from the kidneys and calcium from the blood. */
  readonly sorts: readonly [MedicineSort, ...MedicineSort[]];
  /** Sorts under which it is entered as well as under those: a cancer plan says more of denosumab than its name. */
  readonly or?: readonly MedicineSort[];
};

type Found = MedicineClass & { readonly names: RegExp };

const classes: readonly Found[] = [
  // read
  {
    is: 'an anti-inflammatory, hard on the kidneys',
    sorts: ['nephrotoxic'],
    names: /ibuprofen|naproxen|diclofenac|ketoprofen|indomet|meloxicam|piroxicam|etodolac|ketorolac|coxib\b/,
  },
  // read for the kidneys; from memory for calcium
  {
    is: 'a loop diuretic, hard on the kidneys when dry, and lowers calcium',
    sorts: ['nephrotoxic', 'calcium-lowering'],
    names: /furosemid|frusemid|bumetanid|torasemid|torsemid/,
  },
  // read
  {
    is: 'a diuretic, hard on the kidneys when dry',
    sorts: ['nephrotoxic'],
    names: /thiazid|indapamid|chlort(?:h)?alidon|metolazon|spironolact|eplerenon|amilorid|triamteren/,
  },
  // secondary
  {
    is: 'an aminoglycoside, hard on the kidneys, and lowers calcium for weeks',
    sorts: ['nephrotoxic', 'calcium-lowering'],
    names: /gentamicin|tobramycin|amikacin|streptomycin/,
  },
  // from memory from here on, vancomycin and amphotericin read
  {
    is: 'hard on the kidneys when dry',
    sorts: ['nephrotoxic'],
    names: /\w{2}pril\b|sartan\b|gliflozin\b/,
  },
  { is: 'a calcineurin inhibitor, hard on the kidneys', sorts: ['nephrotoxic'], names: /c[iy]closporin|tacrolimus/ },
  {
    is: 'against infection, hard on the kidneys, and lowers calcium',
    sorts: ['nephrotoxic', 'calcium-lowering'],
    names: /foscarnet|pentamidin/,
  },
  {
    is: 'against infection, hard on the kidneys',
    sorts: ['nephrotoxic'],
    names: /vancomycin|amphotericin|colisti|tenofovir/,
  },
  { is: 'hard on the kidneys', sorts: ['nephrotoxic'], names: /platin\b|methotrexat|ifosfamid|lithium|mesala[sz]in/ },
  {
    is: 'lowers calcium',
    sorts: ['calcium-lowering'],
    names: /cinacalcet|etelcalcetid|calcitonin|phenytoin|carbamazepin|phenobarb|primidon/,
  },
  {
    is: 'can lower magnesium, and with it calcium',
    sorts: ['calcium-lowering'],
    names: /(?:es)?omeprazol|lansoprazol|pantoprazol|rabeprazol/,
  },
  {
    is: 'a steroid',
    sorts: ['steroid'],
    names: /prednisolon|prednison|dexamethason|hydrocortison|deflazacort/,
  },
  {
    is: 'thins the blood',
    sorts: ['anticoagulant'],
    names: /warfarin|apixaban|rivaroxaban|edoxaban|dabigatran|heparin|dalteparin|enoxaparin|tinzaparin/,
  },
  {
    is: 'another bone medicine',
    sorts: ['other bone medicine'],
    or: ['oncology bone plan'],
    names: /raloxifen|bazedoxifen|strontium ranelat|abalopara/,
  },
];

const otherBoneMedicines = ['denosumab 60 mg', 'romosozumab 210 mg', 'teriparatide'] as const;

/** What a name says about its sort; undefined: no word of it is known here. */
export function medicineClassOf(name: string): MedicineClass | undefined {
  if (namesBisphosphonate(name))
    return {
      is: 'a bisphosphonate',
      sorts: ['bisphosphonate tablet'],
      or: ['other bone medicine', 'oncology bone plan'],
    };
  if (otherBoneMedicines.some((medicine) => namesMedicine(name, medicine)))
    return { is: 'another bone medicine', sorts: ['other bone medicine'], or: ['oncology bone plan'] };
  const text = plainText(name);
  return classes.find(({ names }) => names.test(text));
}
