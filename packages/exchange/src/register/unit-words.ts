/** How units are written in headers and cells, and what they are. Only spellings that cannot mean two units are here. */
import { type Measure, heightUnits, unitsOf, weightUnits } from '@twelvemonth/clinical';

/** Units that may be named for a measure, in the record's own spelling. */
const unitsFor = (measure: Measure): readonly string[] =>
  measure === 'weight' ? weightUnits : measure === 'height' ? heightUnits : unitsOf[measure];

const spellings: Readonly<Record<string, readonly string[]>> = {
  'umol/L': ['umol/l', 'umol', 'micromol/l', 'micromol', 'micromoles/l', 'micromoles/litre', 'mcmol/l', 'umoll'],
  'mg/dL': ['mg/dl', 'mg/100ml', 'mg%', 'mgdl'],
  'mmol/L': ['mmol/l', 'mmol', 'mmoll', 'millimol/l'],
  'g/L': ['g/l', 'gl'],
  'g/dL': ['g/dl', 'gdl', 'g/100ml', 'g%'],
  'nmol/L': ['nmol/l', 'nmol', 'nmoll', 'nanomol/l'],
  // A microgram in a litre is a nanogram in a millilitre: the same number.
  'ng/mL': ['ng/ml', 'ngml', 'ug/l', 'mcg/l'],
  'mL/min/1.73m2': ['ml/min/1.73m2', 'ml/min/1.73', 'ml/min/1.73m^2', 'ml/min/1.73qm', 'ml/min'],
  kg: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  lb: ['lb', 'lbs', 'pound', 'pounds'],
  cm: ['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  in: ['in', 'ins', 'inch', 'inches', '"'],
};

const unitBySpelling = new Map(Object.entries(spellings).flatMap(([unit, texts]) => texts.map((text) => [text, unit])));

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[µμ]/g, 'u')
    .replaceAll('²', '2')
    .replaceAll(/\s+per\s+/g, '/')
    .replaceAll(/[\s.]+$|^\s+/g, '')
    .replaceAll(/\s+/g, '');

/** The unit a text means for this measure; undefined if it means none of the measure's units. */
export function unitFromText(measure: Measure, text: string): string | undefined {
  const unit = unitBySpelling.get(plain(text));
  return unit !== undefined && unitsFor(measure).includes(unit) ? unit : undefined;
}

/** A text that is some unit, whatever it measures. */
export const isSomeUnit = (text: string): boolean => unitBySpelling.has(plain(text));

/** Unit written in a header: in brackets, after a comma, or as its last word or two. */
export function unitInHeader(measure: Measure, header: string): string | undefined {
  const bracketed = [...header.matchAll(/[([{]([^)\]}]*)[)\]}]/g)].map((match) => match[1] ?? '');
  const words = header
    .replaceAll(/[([{][^)\]}]*[)\]}]/g, ' ')
    .split(/[\s,_:]+/)
    .filter((word) => word !== '');
  const ends = [words.slice(-1), words.slice(-2)].map((end) => end.join(''));
  for (const text of [...bracketed, ...ends]) {
    const unit = unitFromText(measure, text);
    if (unit !== undefined) return unit;
  }
  return undefined;
}
