import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  type PlainDate,
  type ProtocolSheet,
  beginningFrom,
  canonicalText,
  day,
  demoSheet,
  emptyNumbers,
  everyDay,
  numberKeyNames,
  protocolFrom,
  protocolsInForce,
  readSheet,
  readiness,
  recordOfEntries,
  starterSheet,
  usualDayQuestions,
  viewOf,
} from '@twelvemonth/clinical';
import { DayUnit } from './decide/a-day-unit.ts';
import { bloods, personOf } from './person.ts';

const samples = new URL('./stored-sheets/', import.meta.url);
const sampleNamed = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(new URL(name, samples), 'utf8')) as Record<string, unknown>;
const adopted = (): Record<string, unknown> => JSON.parse(canonicalText(demoSheet('old'))) as Record<string, unknown>;

/** The sheet as an older version of the product would have written it: without something. */
const without = (key: string): Record<string, unknown> => {
  const sheet = adopted();
  const numbers = { ...(sheet['numbers'] as Record<string, unknown>) };
  delete numbers[key];
  return { ...sheet, numbers };
};
const read = (content: unknown): { sheet: ProtocolSheet; added: readonly { path: string; says: string }[] } => {
  const found = readSheet(content);
  if ('says' in found) throw new Error(found.says);
  return found;
};

describe('sheets that earlier versions of the product have stored', () => {
  const names = readdirSync(samples);
  test('there are samples, and none is ever taken away', () => {
    expect(names).toEqual(
      expect.arrayContaining([
        '2026-11-25-demo-unit.json',
        '2026-11-25-starter-accepted.json',
        '2026-11-29-starter-accepted.json',
        '2026-11-30-demo-unit.json',
      ]),
    );
  });

  test.each(names)('%s is still read, decides, and keeps every number that was signed', (name) => {
    const stored = sampleNamed(name);
    const { sheet, added } = read(stored);
    expect('protocol' in protocolFrom(sheet, added)).toBe(true);
    for (const [key, number] of Object.entries(stored['numbers'] as Record<string, object>))
      expect(sheet.numbers[key as keyof ProtocolSheet['numbers']]).toEqual(number);
    const told = new Set(added.map(({ path }) => path));
    for (const key of numberKeyNames) {
      const isNew = !(key in (stored['numbers'] as object));
      expect([key, told.has(`numbers.${key}`)]).toEqual([key, isNew]);
      expect([key, sheet.numbers[key].status === 'added by an upgrade, not signed']).toEqual([key, isNew]);
    }
  });
});

describe('what an older sheet lacks', () => {
  test('a sheet of today lacks nothing', () => {
    expect(read(adopted())).toEqual({ sheet: demoSheet('old'), added: [] });
  });

  test.each(numberKeyNames)(
    '%s is filled in from the starter, never left out, and says that nobody signed it',
    (key) => {
      const { sheet, added } = read(without(key));
      const { value, suggestion, source } = starterSheet.numbers[key];
      expect(sheet.numbers[key]).toEqual({
        value: value ?? suggestion,
        source,
        status: 'added by an upgrade, not signed',
      });
      expect(added.map(({ path }) => path)).toEqual([`numbers.${key}`]);
      const made = protocolFrom(sheet, added);
      expect('protocol' in made && made.protocol.added).toEqual(added);
    },
  );

  test('a requirement is looked at all the same, in its place', () => {
    const sheet = adopted();
    const gravity = (sheet['gravity'] as string[]).filter((id) => id !== 'symptoms');
    const found = read({ ...sheet, gravity });
    expect(found.sheet.gravity).toEqual(starterSheet.gravity);
    expect(found.added.map(({ path }) => path)).toEqual(['gravity']);
  });

  test('a requirement keeps the order the unit chose for the others', () => {
    const sheet = adopted();
    const own = (sheet['gravity'] as string[]).toReversed();
    const found = read({ ...sheet, gravity: own.filter((id) => id !== 'calcium') });
    expect(found.sheet.gravity.filter((id) => id !== 'calcium')).toEqual(own.filter((id) => id !== 'calcium'));
  });

  test('a policy, a field of a regimen and a field of a question come from the starter; what is optional is not put in', () => {
    const { vitaminDPolicy: _, ...sheet } = adopted();
    const [yearly] = sheet['regimens'] as object[];
    const { plannedDoses: __, ...regimen } = yearly as Record<string, unknown>;
    const [unwell, ...others] = usualDayQuestions.map((question) => ({ ...question }));
    const { says: ___, ...question } = unwell as Record<string, unknown>;
    const teeth = { ...others.find(({ id }) => id === 'teeth') };
    delete teeth.exception;
    const found = read({ ...sheet, regimens: [regimen], dayQuestions: [question, teeth] });
    expect(found.added.map(({ path }) => path).toSorted()).toEqual([
      'dayQuestions.unwell-now.says',
      'regimens.zoledronic-acid-yearly.plannedDoses',
      'vitaminDPolicy',
    ]);
    expect(found.sheet.vitaminDPolicy).toBe(starterSheet.vitaminDPolicy);
    expect(found.sheet.dayQuestions[1]).toEqual(teeth);
  });

  // Severe and fatal hypocalcaemia below 30 mL/min: denosumab 60 mg product text; severe renal impairment: romosozumab product text (clinical.md 8, read).
  test('denosumab and romosozumab that left the kidneys out ask them, by the starter’s number, marked as nobody’s decision', () => {
    const sheet = adopted();
    const older = (sheet['regimens'] as Record<string, unknown>[]).map((regimen) => {
      if (!/^(?:denosumab|romosozumab)/.test(String(regimen['medicine']))) return regimen;
      const { clearanceFloor: _, nearLimitCeiling: __, ...numbers } = regimen['numbers'] as Record<string, unknown>;
      const { belowClearanceFloor: ___, ...rest } = regimen;
      return { ...rest, numbers, leavesOut: ['kidney-function', 'hip-repair'] };
    });
    const found = read({ ...sheet, regimens: older });
    expect(found.added.map(({ path }) => path)).toEqual([
      'regimens.denosumab-60-six-monthly.leavesOut',
      'regimens.denosumab-120.leavesOut',
      'regimens.romosozumab-monthly.leavesOut',
    ]);
    const of = (read: ProtocolSheet) => read.regimens.find(({ id }) => id === 'denosumab-60-six-monthly');
    expect(of(found.sheet)).toMatchObject({
      leavesOut: ['hip-repair'],
      belowClearanceFloor: 'a prescriber decides',
      numbers: {
        clearanceFloor: { value: '30', status: 'added by an upgrade, not signed' },
        maxConsecutiveDoses: { value: '10' },
      },
    });
    expect(of(beginningFrom(found.sheet))).toEqual(of(starterSheet));
    expect(of(found.sheet)?.numbers.overdueAfterDays).toEqual(of(starterSheet)?.numbers.overdueAfterDays);
  });

  test('what speaks for carrying on comes from the starter, and is told in words', () => {
    const { carryOn: _, ...sheet } = adopted();
    const found = read(sheet);
    expect(found.sheet.carryOn).toEqual(starterSheet.carryOn);
    expect(found.added).toEqual([
      { path: 'carryOn', says: 'what speaks for carrying on after the planned doses: as the starter has it' },
    ]);
  });

  test('what cannot be completed is not read, and says why', () => {
    const { reviewBy: _, ...sheet } = adopted();
    expect(readSheet(sheet)).toEqual({ says: expect.stringContaining('reviewBy') });
    expect(readSheet('protocol')).toHaveProperty('says');
    const [yearly] = adopted()['regimens'] as object[];
    expect(readSheet({ ...adopted(), regimens: [{ ...yearly, id: 'own', plannedDoses: undefined }] })).toHaveProperty(
      'says',
    );
  });

  test('a number this version does not know is never dropped in silence: the sheet is not read', () => {
    const sheet = adopted();
    const numbers = { ...(sheet['numbers'] as object), courage: { value: '1', source: 'x', status: 'read' } };
    expect(readSheet({ ...sheet, numbers })).toEqual({ says: expect.stringContaining('courage') });
  });

  test('a version begun from such a sheet has the number empty again, to be decided', () => {
    const begun = beginningFrom(read(without('vitaminDFloor')).sheet);
    expect(emptyNumbers(begun)).toEqual([{ key: 'vitaminDFloor', suggestion: '50' }]);
  });
});

describe('a unit whose signed sheet is older than the product', () => {
  const context = () => {
    const { sheet, added } = read(without('vitaminDFloor'));
    const made = protocolFrom(sheet, added);
    if (!('protocol' in made)) throw new Error('has a gap');
    return { protocols: [{ from: 0, protocol: made.protocol }], calendar: everyDay };
  };

  test('every verdict says so, and the working that used the number names it', () => {
    const record = personOf([...bloods('2026-11-20', { 'vitamin D': '68 nmol/L' })]);
    const asked = readiness(record, context(), day('2026-11-25'));
    const view = viewOf(asked, record, context());
    expect(view.cautions.join(' ')).toContain('signed before an upgrade of the product: one part of it is filled in');
    const vitaminD = view.requirements.find(({ id }) => id === 'vitamin-d')?.working;
    const kidneys = view.requirements.find(({ id }) => id === 'kidney-function')?.working;
    expect(vitaminD?.cautions.join(' ')).toContain('was added by an upgrade of the product');
    expect(kidneys?.cautions.join(' ')).not.toContain('was added by an upgrade');
  });

  test('nobody can write or sign a number as “added by an upgrade”', () => {
    const unit = new DayUnit();
    const { sheet } = read(without('vitaminDFloor'));
    const refusals = unit.do('imre', {
      name: 'write protocol',
      unit: 'thornbeck',
      sheet: { ...sheet, version: 'thornbeck-2' },
      contentHash: 'of the server',
    });
    expect(refusals).toMatchObject([{ name: 'field-wrong', field: 'sheet.numbers.vitaminDFloor' }]);
  });
});

describe('a version that cannot be read', () => {
  test('is not passed over for the one before it: nothing is in force until a version that can be read is adopted', () => {
    const unit = new DayUnit();
    const before = protocolsInForce(unit.record('protocol/thornbeck'));
    expect(before).toHaveLength(1);
    const sign = (as: 'clinician' | 'pharmacist') => ({
      name: 'sign protocol' as const,
      unit: 'thornbeck',
      version: 'thornbeck-2',
      contentHash: 'hash 2',
      as,
      inForceFrom: '2026-12-01' as PlainDate,
    });
    const sheet = { ...demoSheet('thornbeck-2') };
    unit.expect('imre', { name: 'write protocol', unit: 'thornbeck', sheet, contentHash: 'hash 2' });
    unit.expect('halina', sign('clinician'));
    unit.expect('priya', sign('pharmacist'));
    expect(protocolsInForce(unit.record('protocol/thornbeck'))).toHaveLength(2);
    const entries = unit
      .entries('protocol/thornbeck')
      .map((entry) =>
        entry.kind === 'protocol-written' && (entry.body as { version: string }).version === 'thornbeck-2'
          ? { ...entry, body: { ...(entry.body as object), content: '{"version":"thornbeck-2"}' } }
          : entry,
      );
    expect(protocolsInForce(recordOfEntries('protocol/thornbeck', entries))).toEqual([]);
  });
});
