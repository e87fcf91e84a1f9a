/** The unit's rule sheets: every version with its numbers, signatures and state, and the starters one can begin from. */
import {
  type ProtocolSheet,
  addDays,
  addMonths,
  emptyNumbers,
  exceptionsByRule,
  numberKeyNames,
  numberKeys,
  parseDay,
  plainDate,
  protocolState,
  protocolVersions,
  requirements,
  starterProtocols,
} from '@twelvemonth/clinical';
import type { ProtocolView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';

type VersionView = ProtocolView['versions'][number];

export async function protocolViewOf(
  unit: UnitNow,
  { accounts, store, people }: AtHand,
  { readsPeople }: { readonly readsPeople: boolean },
): Promise<ProtocolView> {
  const chosen = await store.setting('starter');
  return {
    unit: unit.unit.id,
    unitName: unit.unit.name,
    versions: protocolVersions(unit.protocolRecord)
      .flatMap(({ version, contentHash, sheet, added, signatures, adopted }): VersionView[] => {
        if (sheet === undefined) return [];
        return [
          {
            version,
            title: sheet.title,
            state: protocolState(unit.protocolRecord, version, unit.today),
            ...(adopted === undefined ? {} : { inForceFrom: plainDate(adopted.from) }),
            reviewBy: plainDate(parseDay(sheet.reviewBy) ?? unit.today),
            contentHash,
            signatures: signatures.map(({ as, by, at, inForceFrom }) => ({
              as,
              by: accounts.nameOf(by),
              at,
              inForceFrom: plainDate(inForceFrom),
            })),
            ...sheetViewOf(sheet),
            sheet,
            added: added.map(({ path, says }) => ({ path, says })),
          },
        ];
      })
      .toReversed(),
    unreadable: protocolVersions(unit.protocolRecord)
      .filter(({ sheet }) => sheet === undefined)
      .map(({ version, adopted, unreadable }) => ({ version, adopted: adopted !== undefined, says: unreadable })),
    starters: starterProtocols
      .map(({ version, title }) => ({ version, title, chosen: version === chosen }))
      .toSorted((a, b) => Number(b.chosen) - Number(a.chosen)),
    ...(readsPeople ? { exceptions: exceptionsOfTwelveMonths(unit, await people.all()) } : {}),
  };
}

function exceptionsOfTwelveMonths(
  { unit, today }: UnitNow,
  everyone: readonly Person[],
): NonNullable<ProtocolView['exceptions']> {
  const from = addDays(addMonths(today, -12), 1);
  const records = everyone.filter(({ unitId }) => unitId === unit.id).map(({ record }) => record);
  const { doses, rules } = exceptionsByRule(records, from, today);
  return { from: plainDate(from), until: plainDate(today), doses, rules: [...rules] };
}

const sheetViewOf = (
  sheet: ProtocolSheet,
): Pick<VersionView, 'empty' | 'numbers' | 'regimens' | 'dayQuestions' | 'policies' | 'cautions'> => ({
  empty: emptyNumbers(sheet).map(({ key, suggestion }) => ({
    key,
    means: numberKeys[key].means,
    unit: numberKeys[key].unit,
    ...(suggestion === undefined ? {} : { suggestion }),
  })),
  numbers: numberKeyNames.map((key) => {
    const { value, suggestion, source, status } = sheet.numbers[key];
    return {
      key,
      means: numberKeys[key].means,
      unit: numberKeys[key].unit,
      ...(value === null ? {} : { value }),
      ...(suggestion === undefined ? {} : { suggestion }),
      source,
      status,
    };
  }),
  regimens: sheet.regimens.map(({ id, title, intervalMonths, plannedDoses, source }) => ({
    id,
    title,
    intervalMonths,
    plannedDoses,
    source,
  })),
  dayQuestions: sheet.dayQuestions.map(({ id, asks, holdsOn, then, staysUntilCleared }) => ({
    id,
    asks,
    holdsOn,
    then,
    staysUntilCleared: staysUntilCleared === true,
  })),
  policies: [
    { what: 'days until a result may be used', says: sheet.resultDaysCounted },
    { what: 'vitamin D never measured', says: sheet.vitaminDPolicy },
    { what: 'weight in the clearance', says: `${sheet.weightThatDecides} weight decides` },
    {
      what: 'teeth and jaw',
      says:
        sheet.dentalCheck === 'demanded' ? 'a dental check in date is demanded' : 'asked about; no check is demanded',
    },
    {
      what: 'pharmacist (common practice, no source)',
      says:
        sheet.pharmacyVerification === 'before preparation'
          ? 'verifies each prescription before anything is prepared'
          : 'not asked to verify; may ask or refuse all the same, and that holds the preparation',
    },
    {
      what: 'dose at home (common practice, no source)',
      says:
        sheet.homeDoseByOne === 'not allowed'
          ? 'two registered people go: nobody gives it alone'
          : 'one may give it alone where another checked it when it was prepared, before they left',
    },
    {
      what: 'hip repair',
      says: sheet.hipRepairNeedsLoading ? 'vitamin D is loaded before the first dose' : 'no loading is asked for',
    },
    {
      what: 'trouble is named in this order',
      says: sheet.gravity.map((id) => requirements[id].title.toLowerCase()).join(', '),
    },
  ],
  cautions: [...sheet.cautions],
});
