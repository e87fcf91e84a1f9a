import { describe, expect, test } from 'vitest';
import {
  type ProtocolSheet,
  canonicalText,
  demoSheet,
  draftBy,
  numberGroups,
  numberKeyNames,
  policies,
  protocolSchema,
  readDraft,
  sheetChanges,
  starterProtocols,
  starterUk,
  unsourcedChanges,
} from '@twelvemonth/clinical';

const before = demoSheet('thornbeck-1');
const withNumber = (key: (typeof numberKeyNames)[number], value: string | null, source?: string): ProtocolSheet => ({
  ...before,
  numbers: { ...before.numbers, [key]: { ...before.numbers[key], value, ...(source === undefined ? {} : { source }) } },
});
const first = <Item>(items: readonly Item[]): Item => {
  const [item] = items;
  if (item === undefined) throw new Error('none');
  return item;
};

describe('numbers by what they decide', () => {
  test('every number is in one group, and every group has a name of its own', () => {
    expect(numberGroups.flatMap(({ keys }) => keys).toSorted()).toEqual(numberKeyNames.toSorted());
    expect(new Set(numberGroups.map(({ title }) => title)).size).toBe(numberGroups.length);
  });
  test('none is left over without a group that says what it decides', () => {
    expect(numberGroups.filter(({ title }) => title === 'Other numbers')).toEqual([]);
  });
});

describe('policies', () => {
  test('each answers with one of its own options in every starter', () => {
    expect(policies.length).toBeGreaterThanOrEqual(3);
    for (const { key, options } of policies)
      for (const sheet of starterProtocols) expect(options.map(({ value }) => value)).toContain(sheet[key]);
  });
});

describe('what speaks for carrying on after the planned doses', () => {
  const carryOn = before.carryOn;
  const sheetWith = (list: ProtocolSheet['carryOn'], reasons?: ProtocolSheet['reasons']): ProtocolSheet => ({
    ...before,
    carryOn: list,
    ...(reasons === undefined ? {} : { reasons }),
  });
  const falls = { id: 'falls', asks: 'falls often', source: '', status: 'local decision' } as const;
  test('one struck out is told in words, and asks for a reason', () => {
    const after = sheetWith(carryOn.filter(({ id }) => id !== 'age'));
    expect(sheetChanges(before, after)).toMatchObject([
      { path: 'carryOn.age', before: '70 years old or more', after: 'not there', source: '' },
    ]);
    expect(unsourcedChanges(before, after).map(({ path }) => path)).toEqual(['reasons.carryOn.age']);
    const reasons = { 'carryOn.age': 'our committee' };
    expect(unsourcedChanges(before, sheetWith(after.carryOn, reasons))).toEqual([]);
  });
  test('one put in carries its source, which is asked for', () => {
    expect(unsourcedChanges(before, sheetWith([...carryOn, falls])).map(({ path }) => path)).toEqual([
      'carryOn.falls.source',
    ]);
    const sourced = sheetWith([...carryOn, { ...falls, source: 'our falls clinic' }]);
    expect(unsourcedChanges(before, sourced)).toEqual([]);
    expect(sheetChanges(before, sourced)).toMatchObject([
      { path: 'carryOn.falls', before: 'not there', after: 'falls often', source: 'our falls clinic' },
    ]);
  });
  test('words where the notes have their own, none where they have not, and the same twice are not read', () => {
    const [age] = carryOn;
    for (const wrong of [
      [{ ...first(carryOn), asks: '60 or more' }],
      [{ ...falls, source: 'x', asks: undefined }],
      [age, age],
    ])
      expect(protocolSchema.safeParse({ ...before, carryOn: wrong }).success).toBe(false);
  });
});

describe('what a draft says otherwise', () => {
  test('nothing about itself', () => {
    expect(sheetChanges(before, { ...before, version: 'other', title: 'other' })).toEqual([]);
    for (const sheet of starterProtocols) expect(sheetChanges(sheet, sheet)).toEqual([]);
  });

  test('nothing where the same is written in another order, as it comes back from a store or over the wire', () => {
    for (const sheet of starterProtocols) {
      const again = protocolSchema.parse(JSON.parse(canonicalText(sheet)));
      expect(sheetChanges(sheet, again)).toEqual([]);
    }
  });

  test('a number: old, new, unit and source', () => {
    expect(sheetChanges(before, withNumber('clearanceFloor', '40', 'our nephrologists, 2026'))).toEqual([
      {
        path: 'numbers.clearanceFloor',
        what: 'creatinine clearance below which the dose is not given',
        unit: 'mL/min',
        before: '35',
        after: '40',
        source: 'our nephrologists, 2026',
      },
    ]);
  });

  test.each(numberKeyNames)('%s is compared', (key) => {
    expect(sheetChanges(before, withNumber(key, '999')).map(({ path }) => path)).toEqual([`numbers.${key}`]);
  });

  test('every field of the sheet that decides is compared', () => {
    const regimen = first(before.regimens);
    const question = first(before.dayQuestions);
    const changed: readonly (readonly [string, Partial<ProtocolSheet>])[] = [
      ...policies.map(
        ({ key, options }) => [key, { [key]: options.find(({ value }) => value !== before[key])?.value }] as const,
      ),
      ['regimens.zoledronic-acid-yearly', { regimens: [{ ...regimen, plannedDoses: 5 }, ...before.regimens.slice(1)] }],
      ['dayQuestions.unwell-now', { dayQuestions: [{ ...question, holdsOn: 'no' }, ...before.dayQuestions.slice(1)] }],
      ['gravity', { gravity: before.gravity.toReversed() }],
      [
        'switches.teriparatide to romosozumab 210 mg',
        { switches: before.switches.filter(({ to }) => !(to.length === 1 && to[0] === 'romosozumab 210 mg')) },
      ],
      ['carryOn.age', { carryOn: before.carryOn.filter(({ id }) => id !== 'age') }],
      ['paracetamol.from 50 kg', { paracetamol: before.paracetamol.filter(({ id }) => id !== 'from 50 kg') }],
      ['cautions', { cautions: ['other'] }],
    ];
    for (const [path, fields] of changed)
      expect(sheetChanges(before, { ...before, ...fields }).map((change) => change.path)).toEqual([path]);
    const compared = new Set([...changed.flatMap(([, fields]) => Object.keys(fields)), 'numbers']);
    const decides = Object.keys(protocolSchema.unwrap().shape).filter(
      (field) => !['version', 'title', 'teachingOnly', 'reviewBy', 'reasons'].includes(field),
    );
    expect([...compared].toSorted()).toEqual(decides.toSorted());
  });

  test('a regimen struck out, and another that is meant where nothing is prescribed', () => {
    expect(
      sheetChanges(before, { ...before, regimens: before.regimens.slice(1) }).map(({ path, after }) => [path, after]),
    ).toEqual([
      ['regimens.zoledronic-acid-yearly', 'not there'],
      ['regimenOrder', first(before.regimens.slice(1)).title],
    ]);
  });
});

describe('from one medicine to another', () => {
  const withRow = (fields: Partial<ProtocolSheet['switches'][number]>): ProtocolSheet => ({
    ...before,
    switches: before.switches.map((row) =>
      row.from === 'ibandronate 3 mg' && row.to.length > 1 && row.earliestMonths > 0 ? { ...row, ...fields } : row,
    ),
  });
  test('a row is told pair by pair, the latest month too', () => {
    expect(
      sheetChanges(before, withRow({ latestMonths: 6, source: 'our clinic' })).map(
        ({ what, before: was, after, source }) => [what, was, after, source],
      ),
    ).toEqual(
      ['zoledronic acid 5 mg', 'denosumab 60 mg', 'ibandronate 3 mg', 'pamidronate'].map((to) => [
        `from one medicine to another: ibandronate 3 mg to ${to}`,
        'from month 3, no latest',
        'from month 3, by month 6',
        'our clinic',
      ]),
    );
  });
  test('needs a source of its own, and a row that went needs a reason', () => {
    expect(unsourcedChanges(before, withRow({ earliestMonths: 2 })).map(({ path }) => path)).toContain(
      'switches.ibandronate 3 mg to denosumab 60 mg.source',
    );
    expect(unsourcedChanges(before, withRow({ earliestMonths: 2, source: 'our clinic' }))).toEqual([]);
    const without = { ...before, switches: before.switches.filter(({ from }) => from !== 'pamidronate') };
    expect(unsourcedChanges(before, without).map(({ path }) => path)).toContain(
      'reasons.switches.pamidronate to denosumab 60 mg',
    );
  });
  test('two rows about one pair are refused: nobody could tell which decides', () => {
    const row = before.switches[0];
    const read = readDraft(before, { ...before, switches: [...before.switches, row] });
    expect('troubles' in read && read.troubles.map(({ path, says }) => [path, says])).toEqual([
      ['switches', 'one medicine after another stands in one row only'],
    ]);
  });
});

describe('a number of a regimen of its own', () => {
  const regimen = (numbers: object, source = 'our nephrologists'): ProtocolSheet => ({
    ...before,
    regimens: before.regimens.map((one) =>
      one.id === 'ibandronate-three-monthly' ? { ...one, source, numbers } : one,
    ),
  });
  const own = { value: '35', source: 'x', status: 'local decision' };
  test('is told by what it means, without sources; changed, it takes the source of the change and its author', () => {
    const [told] = sheetChanges(before, regimen({ clearanceFloor: own }));
    expect(told?.after).toBe('creatinine clearance below which the dose is not given: 35 mL/min');
    const made = draftBy('Phil Farm', before, regimen({ clearanceFloor: own }));
    expect(
      'sheet' in made &&
        made.sheet.regimens.find(({ id }) => id === 'ibandronate-three-monthly')?.numbers.clearanceFloor,
    ).toEqual({ value: '35', source: 'decided by Phil Farm: our nephrologists', status: 'local decision' });
  });
});

describe('every change says where it comes from', () => {
  test('a number with the source of the old one, a policy without a reason, a regimen with its old source', () => {
    const drafted: ProtocolSheet = {
      ...withNumber('bloodsValidDays', '30'),
      vitaminDPolicy: 'load without a level',
      regimens: before.regimens.map((regimen, index) => (index === 0 ? { ...regimen, plannedDoses: 4 } : regimen)),
    };
    expect(unsourcedChanges(before, drafted).map(({ path }) => path)).toEqual([
      'numbers.bloodsValidDays.source',
      'reasons.vitaminDPolicy',
      'regimens.zoledronic-acid-yearly.source',
    ]);
    const sourced: ProtocolSheet = {
      ...drafted,
      numbers: {
        ...drafted.numbers,
        bloodsValidDays: { ...drafted.numbers.bloodsValidDays, source: 'our laboratory' },
      },
      regimens: drafted.regimens.map((regimen) => ({ ...regimen, source: 'our course committee' })),
      reasons: { vitaminDPolicy: 'our pharmacy' },
    };
    expect(unsourcedChanges(before, sourced)).toEqual([]);
  });

  test('a reason given for an earlier change is none for the next', () => {
    const earlier: ProtocolSheet = { ...before, reasons: { gravity: 'old reason' } };
    const drafted = { ...earlier, gravity: earlier.gravity.toReversed() };
    expect(unsourcedChanges(earlier, drafted).map(({ path }) => path)).toEqual(['reasons.gravity']);
  });

  test('a suggestion taken as it stands keeps its source and is a local decision; anything else needs a source', () => {
    const { suggestion, source } = starterUk.numbers.bloodsValidDays;
    const taken = (value: string): ProtocolSheet => ({
      ...starterUk,
      numbers: { ...starterUk.numbers, bloodsValidDays: { ...starterUk.numbers.bloodsValidDays, value } },
    });
    const accepted = draftBy('Phil Farm', starterUk, taken(suggestion ?? ''));
    expect('sheet' in accepted && accepted.sheet.numbers.bloodsValidDays).toEqual({
      value: suggestion,
      suggestion,
      source: `suggestion accepted by Phil Farm; ${source}`,
      status: 'local decision',
    });
    expect(draftBy('Phil Farm', starterUk, taken('70'))).toEqual({
      troubles: [{ path: 'numbers.bloodsValidDays.source', says: 'say where this comes from' }],
    });
  });

  test('nobody passes a number off as read: what is changed is a local decision with their name', () => {
    const drafted = withNumber('clearanceFloor', '40', 'our nephrologists');
    const made = draftBy('Phil Farm', before, {
      ...drafted,
      numbers: {
        ...drafted.numbers,
        clearanceFloor: { ...drafted.numbers.clearanceFloor, status: 'read' },
        hipRepairDays: { ...drafted.numbers.hipRepairDays, status: 'local decision' },
      },
    });
    expect('sheet' in made && [made.sheet.numbers.clearanceFloor, made.sheet.numbers.hipRepairDays]).toEqual([
      {
        ...before.numbers.clearanceFloor,
        value: '40',
        source: 'decided by Phil Farm: our nephrologists',
        status: 'local decision',
      },
      before.numbers.hipRepairDays,
    ]);
  });
});

describe('reading a draft', () => {
  test('names every field that cannot be read', () => {
    const content = {
      ...before,
      title: ' ',
      numbers: {
        ...before.numbers,
        clearanceFloor: { ...before.numbers.clearanceFloor, value: 'about 35' },
        courage: {},
      },
    };
    const read = readDraft(before, content);
    expect('troubles' in read && read.troubles.map(({ path }) => path).toSorted()).toEqual([
      'numbers.clearanceFloor',
      'numbers.courage',
      'title',
    ]);
  });
  test('a teaching sheet stays one, whatever the draft says', () => {
    const read = readDraft({ ...before, teachingOnly: true }, { ...before, teachingOnly: false });
    expect('sheet' in read && read.sheet.teachingOnly).toBe(true);
  });
});
