/** A laboratory value in a report of a reaction: as it stands in the notes, with its grade where the numbers settle one. */
import {
  type CtcaeVersion,
  type Fact,
  type Ratio,
  type SubjectRecord,
  compareRatios,
  creatinineIncreasedGrade,
  creatinineUmolPerL,
  entryText,
  exactValue,
  factsOf,
  lowCalciumGrade,
  parseScaled,
  ratioOf,
} from '@twelvemonth/clinical';

const version: CtcaeVersion = '5.0';

export function gradedResult(record: SubjectRecord, result: Fact<'result'>): string {
  const found = result.body.quantity.comparator === '' ? gradeOf(record, result) : undefined;
  return found === undefined || found.grade === 0
    ? entryText(result)
    : `${entryText(result)}: ${found.term} ${'atLeast' in found && found.atLeast ? 'at least ' : ''}grade ${found.grade}, CTCAE ${found.version}`;
}

function gradeOf(record: SubjectRecord, { body, on }: Fact<'result'>) {
  const { analyte, quantity, referenceLow, referenceHigh } = body;
  if (analyte === 'adjusted calcium') {
    const lowerLimit = parseScaled(referenceLow ?? '');
    const { unit } = quantity;
    return lowerLimit === undefined || (unit !== 'mmol/L' && unit !== 'mg/dL')
      ? undefined
      : lowCalciumGrade({ adjusted: ratioOf(exactValue(quantity)), lowerLimit, unit }, version);
  }
  const umolPerL = analyte === 'creatinine' ? creatinineUmolPerL(quantity) : undefined;
  if (umolPerL === undefined) return undefined;
  const upperLimit =
    referenceHigh === undefined ? undefined : creatinineUmolPerL({ ...quantity, value: referenceHigh });
  return creatinineIncreasedGrade({ umolPerL, baseline: lowestBefore(record, on), upperLimit }, version);
}

/** Their own lowest creatinine of an earlier day. */
const lowestBefore = (record: SubjectRecord, on: number): Ratio | undefined =>
  factsOf(record, 'result')
    .filter((one) => one.on < on && one.body.analyte === 'creatinine' && one.body.quantity.comparator === '')
    .flatMap(({ body }) => creatinineUmolPerL(body.quantity) ?? [])
    .toSorted(compareRatios)[0];
