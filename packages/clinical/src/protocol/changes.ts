/**
 * What one rule sheet says otherwise than another, in words for whoever signs it, and which of these changes still lack the
 * source a change must have.
 */
import { textInOrder } from './canonical-text.ts';
import { type CarryOn, carryOnAsks } from './carry-on.ts';
import type { DayQuestion } from './day-question.ts';
import { numberKeyNames, numberKeys } from './number-keys.ts';
import { paracetamolSays } from './paracetamol.ts';
import { policies, policySays, policyValue } from './policies.ts';
import type { ProtocolSheet } from './protocol.ts';
import type { Regimen } from './regimen.ts';
import type { SwitchRule } from './switch-rule.ts';

export type SheetChange = {
  /** Where it is: "numbers.clearanceFloor", "regimens.zoledronic-acid-yearly", "vitaminDPolicy". */
  readonly path: string;
  readonly what: string;
  readonly unit: string;
  readonly before: string;
  readonly after: string;
  /** Where the new value comes from; empty where nobody has said yet. */
  readonly source: string;
};

const EMPTY = 'empty';
const ABSENT = 'not there';

/** One medicine after one other, as the rows of a sheet say it: several may stand in one row. */
export type SwitchPair = { readonly id: string; readonly when: string; readonly source: string };

/** "romosozumab 210 mg to denosumab 60 mg" */
export const switchPairId = (from: string, to: string): string => `${from} to ${to}`;

/** "from month 1, by month 2" */
export const switchSays = ({ earliestMonths, latestMonths }: SwitchRule): string =>
  `from month ${earliestMonths}${latestMonths === undefined ? ', no latest' : `, by month ${latestMonths}`}`;

export const switchPairs = ({ switches }: ProtocolSheet): readonly SwitchPair[] =>
  switches.flatMap((row) =>
    row.to.map((to) => ({ id: switchPairId(row.from, to), when: switchSays(row), source: row.source })),
  );

/** Everything that decides or is asked; names, titles and dates of the sheet are not compared. */
export function sheetChanges(before: ProtocolSheet, after: ProtocolSheet): readonly SheetChange[] {
  return [
    ...numberChanges(before, after),
    ...policies.flatMap((policy) =>
      change(after, policy.key, policy.title, [before, after], (sheet) =>
        policySays(policy, policyValue(sheet, policy)),
      ),
    ),
    ...eachOf(before.regimens, after.regimens, regimenSays, regimenField).map(({ id, ...one }) => ({
      ...one,
      path: `regimens.${id}`,
      what: `regimen: ${(after.regimens.find((regimen) => regimen.id === id) ?? before.regimens.find((regimen) => regimen.id === id))?.title ?? id}`,
      unit: '',
      source: after.regimens.find((regimen) => regimen.id === id)?.source ?? reasonFor(after, `regimens.${id}`),
    })),
    ...change(
      after,
      'regimenOrder',
      'what is meant where nothing is prescribed',
      [before, after],
      (sheet) => sheet.regimens[0]?.title ?? ABSENT,
    ),
    ...eachOf(before.carryOn, after.carryOn, asksUnder(after), fieldInWords).map(({ id, ...one }) => ({
      ...one,
      path: `carryOn.${id}`,
      what: 'what speaks for carrying on',
      unit: '',
      source: after.carryOn.find((criterion) => criterion.id === id)?.source ?? reasonFor(after, `carryOn.${id}`),
    })),
    ...eachOf(before.paracetamol, after.paracetamol, paracetamolSays, fieldInWords).map(({ id, ...one }) => ({
      ...one,
      path: `paracetamol.${id}`,
      what: `paracetamol, ${id}`,
      unit: '',
      source: after.paracetamol.find((row) => row.id === id)?.source ?? reasonFor(after, `paracetamol.${id}`),
    })),
    ...eachOf(before.dayQuestions, after.dayQuestions, questionSays, fieldInWords).map(({ id, ...one }) => ({
      ...one,
      path: `dayQuestions.${id}`,
      what: `question of the day: ${id}`,
      unit: '',
      source: reasonFor(after, `dayQuestions.${id}`),
    })),
    ...change(after, 'gravity', 'order in which trouble is named', [before, after], ({ gravity }) =>
      gravity.join(', '),
    ),
    ...eachOf(
      switchPairs(before),
      switchPairs(after),
      ({ when }) => when,
      (_, when) => String(when),
    ).map(({ id, ...one }) => ({
      ...one,
      path: `switches.${id}`,
      what: `from one medicine to another: ${id}`,
      unit: '',
      source: switchPairs(after).find((pair) => pair.id === id)?.source ?? reasonFor(after, `switches.${id}`),
    })),
    ...change(after, 'cautions', 'cautions beside every verdict', [before, after], ({ cautions }) =>
      cautions.join(' '),
    ),
  ];
}

const reasonFor = ({ reasons }: ProtocolSheet, path: string): string => reasons?.[path] ?? '';

function numberChanges(before: ProtocolSheet, after: ProtocolSheet): SheetChange[] {
  return numberKeyNames.flatMap((key): SheetChange[] => {
    const [old, now] = [before.numbers[key], after.numbers[key]];
    if (old.value === now.value) return [];
    return [
      {
        path: `numbers.${key}`,
        what: numberKeys[key].means,
        unit: numberKeys[key].unit,
        before: old.value ?? EMPTY,
        after: now.value ?? EMPTY,
        source: now.source,
      },
    ];
  });
}

function change(
  sheet: ProtocolSheet,
  path: string,
  what: string,
  [before, after]: readonly [ProtocolSheet, ProtocolSheet],
  says: (sheet: ProtocolSheet) => string,
): SheetChange[] {
  const [old, now] = [says(before), says(after)];
  return old === now ? [] : [{ path, what, unit: '', before: old, after: now, source: reasonFor(sheet, path) }];
}

/** Items of a list by their id: one that came or went as a whole, one that is otherwise by the fields that are. */
function eachOf<Item extends { readonly id: string }>(
  before: readonly Item[],
  after: readonly Item[],
  whole: (item: Item) => string,
  fieldSays: (name: string, value: unknown) => string,
): { readonly id: string; readonly before: string; readonly after: string }[] {
  const ids = [...new Set([...before, ...after].map(({ id }) => id))];
  return ids.flatMap((id) => {
    const [old, now] = [before, after].map((items) => items.find((item) => item.id === id));
    if (old === undefined || now === undefined)
      return [{ id, before: old === undefined ? ABSENT : whole(old), after: now === undefined ? ABSENT : whole(now) }];
    const differing = Object.keys({ ...old, ...now }).filter(
      (name) => decides(name) && valueAt(old, name) !== valueAt(now, name),
    );
    if (differing.length === 0) return [];
    const told = (item: Item): string =>
      differing.map((name) => fieldSays(name, (item as Readonly<Record<string, unknown>>)[name])).join('; ');
    return [{ id, before: told(old), after: told(now) }];
  });
}

/** A source says where something comes from, and decides nothing. */
const decides = (name: string): boolean => name !== 'source' && name !== 'status';
const valueAt = (item: object, name: string): string =>
  textInOrder((item as Readonly<Record<string, unknown>>)[name] ?? null);

/** "intervalMonths" as "interval months". */
const inWords = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
const plainValue = (value: unknown): string =>
  value === undefined || value === null
    ? 'none'
    : typeof value === 'string'
      ? value
      : textInOrder(value).replaceAll('"', '');

const fieldInWords = (name: string, value: unknown): string => `${inWords(name)}: ${plainValue(value)}`;

function regimenField(name: string, value: unknown): string {
  if (name === 'intervalMonths') return `every ${String(value)} months`;
  if (name === 'numbers') return ownNumbersSay(value as Regimen['numbers'] | undefined);
  if (name === 'followOn') return followOnSays(value as Regimen['followOn']);
  return name === 'plannedDoses' ? `${String(value)} doses before a review` : fieldInWords(name, value);
}
/** Its own numbers, without their sources: "lowest calcium 2.1 mmol/L". */
const ownNumbersSay = (numbers: Regimen['numbers'] = {}): string =>
  numberKeyNames
    .flatMap((key) => {
      const own = numbers[key];
      return own === undefined ? [] : [`${numberKeys[key].means}: ${own.value} ${numberKeys[key].unit}`];
    })
    .join('; ') || 'no numbers of its own';

const followOnSays = (followOn: Regimen['followOn']): string =>
  followOn === undefined
    ? 'nothing must follow'
    : `another bone medicine follows, due ${followOn.dueMonths} months after the last dose, reached within ${followOn.reachMonths} more; listed ${followOn.listMonths} months before it is due, first in line ${followOn.firstInLineMonths} months before`;

const regimenSays = ({ intervalMonths, plannedDoses }: Regimen): string =>
  `every ${intervalMonths} months, ${plannedDoses} doses before a review`;

const asksUnder =
  ({ numbers }: ProtocolSheet) =>
  (criterion: CarryOn): string =>
    carryOnAsks(criterion, (key) => numbers[key].value ?? EMPTY);

const questionSays = ({ asks, holdsOn, then }: DayQuestion): string => `${asks} “${holdsOn}” means ${then}`;

/** What is told beside the field. */
export const sayWhere = 'say where this comes from';

export type Unsourced = { readonly path: string; readonly says: string };

/**
 * Changes that do not say where they come from. A number, a regimen, a switch, what speaks for carrying on and an amount carry their source; for the rest a reason stands in the
 * sheet's `reasons` under the path. A suggestion taken as it stands keeps the source it was suggested with.
 */
export function unsourcedChanges(before: ProtocolSheet, after: ProtocolSheet): readonly Unsourced[] {
  return sheetChanges(before, after).flatMap(({ path, after: now }): Unsourced[] => {
    const [list, id] = path.split('.');
    if (list === 'numbers') {
      const key = numberKeyNames.find((one) => one === id);
      if (key === undefined || now === EMPTY) return [];
      const { source, suggestion, value } = before.numbers[key];
      if (value === null && after.numbers[key].value === suggestion) return [];
      return ['', source].includes(after.numbers[key].source.trim())
        ? [{ path: `${path}.source`, says: sayWhere }]
        : [];
    }
    if ((list === 'regimens' || list === 'carryOn' || list === 'paracetamol') && now !== ABSENT) {
      const [was, is] = [before, after].map((sheet) => sheet[list].find((item) => item.id === id)?.source);
      return is === '' || was === is ? [{ path: `${path}.source`, says: sayWhere }] : [];
    }
    if (list === 'switches' && now !== ABSENT) {
      const [was, is] = [before, after].map((sheet) => switchPairs(sheet).find((pair) => pair.id === id)?.source);
      return is === '' || was === is ? [{ path: `${path}.source`, says: sayWhere }] : [];
    }
    const reason = reasonFor(after, path);
    return reason === '' || reason === reasonFor(before, path) ? [{ path: `reasons.${path}`, says: sayWhere }] : [];
  });
}
