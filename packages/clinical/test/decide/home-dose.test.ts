/**
 * A dose given at home (safety page, "The service around the unit": "home doses under the protocol's single-practitioner rule";
 * "no second check by another person" is no exception anybody can make). That one may go alone where another checked the pack
 * before they left: common practice, no source; the unit decides, and a sheet that says nothing allows it to nobody.
 */
import {
  type BodyOfKind,
  day,
  entryText,
  policies,
  readSheet,
  starterSheet,
  taskRows,
  teaching,
  teachingSheet,
} from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { DayUnit } from './a-day-unit.ts';

type Dose = BodyOfKind<'dose'>;
const there = 'there, before it ran';
const before = 'when it was prepared, before they left';
const dose = (more: Partial<Dose> = {}): Dose => ({ medicine: 'zoledronic acid 5 mg', setting: 'home', ...more });
const allowed = { ...teachingSheet, homeDoseByOne: 'where another checked it before they left' } as const;
const ready = (sheet = teachingSheet): DayUnit => new DayUnit(sheet).ready();
const written = (body: Dose, unit = ready()) =>
  unit.line('dana', 'dose', body).map(({ name, field }) => [name, field?.replace('line.body.', '')]);

describe('who checked it', () => {
  test('nobody named is refused, and says what counts as a check', () => {
    const [refusal] = ready().line('dana', 'dose', dose());
    expect(refusal).toMatchObject({ name: 'field-wrong', field: 'line.body.checkedBy' });
    expect(refusal?.remedy).toContain('a telephone call is no check');
  });
  test('named, but not when, is refused', () =>
    expect(written(dose({ checkedBy: 'imre' }))).toEqual([['field-wrong', 'checkedWhen']]));
  test('the one who gave it is not the one who checked it, whatever the protocol allows', () => {
    for (const sheet of [teachingSheet, allowed])
      for (const incident of [undefined, 'checked it twice myself'])
        expect(written(dose({ checkedBy: 'dana', checkedWhen: before, incident }), ready(sheet))).toEqual([
          ['checker-is-preparer', 'checkedBy'],
        ]);
  });
  test('two who went: written', () => {
    for (const sheet of [teachingSheet, allowed])
      expect(written(dose({ checkedBy: 'imre', checkedWhen: there }), ready(sheet))).toEqual([]);
  });
  test('whoever made an exception for this dose does not check it', () => {
    const unit = ready();
    unit.write('halina', 'prescriber-exception', {
      requirement: 'teeth and jaw',
      reason: 'seen last month',
      expiresOn: '2026-12-20',
    });
    expect(written(dose({ checkedBy: 'halina', checkedWhen: there }), unit)).toEqual([
      ['exception-author-may-not-give', undefined],
    ]);
  });
});

describe('alone', () => {
  test('not where the protocol does not say so; the starter and a sheet from before do not', () => {
    expect(written(dose({ checkedBy: 'imre', checkedWhen: before }))).toEqual([['not-alone-at-home', 'checkedWhen']]);
    expect(starterSheet.homeDoseByOne).toBe('not allowed');
    const { homeDoseByOne: _, ...older } = teachingSheet;
    const read = readSheet(older);
    expect('sheet' in read && [read.sheet.homeDoseByOne, read.added]).toEqual(['not allowed', []]);
  });
  test('where it does, with the check before they left; the entry keeps the rule and the version', () => {
    const unit = ready(allowed);
    expect(written(dose({ checkedBy: 'imre', checkedWhen: before }), unit)).toEqual([]);
    const fact = unit.newest('dose');
    expect([fact.author.staff, fact.body.checkedBy]).toEqual(['dana', 'imre']);
    expect(fact.body.homeRule).toEqual({ oneAlone: allowed.homeDoseByOne, protocolVersion: 'thornbeck-1' });
    expect(entryText(fact)).toContain(
      'checked by another when it was prepared, before they left (protocol thornbeck-1',
    );
  });
  test('a rule that is sent is not believed', () => {
    const unit = ready();
    const homeRule = { oneAlone: allowed.homeDoseByOne, protocolVersion: 'made up' };
    expect(written(dose({ checkedBy: 'imre', checkedWhen: before, homeRule }), unit)).toEqual([
      ['not-alone-at-home', 'checkedWhen'],
    ]);
    expect(written(dose({ checkedBy: 'imre', checkedWhen: there, homeRule }), unit)).toEqual([]);
    expect(unit.newest('dose').body.homeRule).toEqual({ oneAlone: 'not allowed', protocolVersion: 'thornbeck-1' });
  });
  test('it is a choice of the protocol editor, with both answers', () =>
    expect(policies.find(({ key }) => key === 'homeDoseByOne')).toMatchObject({
      title: 'one practitioner gives a dose at home alone',
      options: [{ value: 'not allowed' }, { value: 'where another checked it before they left' }],
    }));
});

describe('what was done all the same', () => {
  test('is written as an incident, counts as a dose, and the nurse in charge looks at it', () => {
    const unit = ready();
    expect(written(dose({ incident: 'her colleague fell ill; told Imre at once' }), unit)).toEqual([]);
    const names = taskRows(unit.patient(), teaching, day('2026-11-26')).map(({ columns }) => columns['task']);
    expect(names).toContain('look at the incident');
    expect(names).not.toContain('confirm the check at home');
  });
  test('a check that is only named is confirmed with whoever made it', () => {
    const unit = ready();
    unit.write('dana', 'dose', dose({ checkedBy: 'imre', checkedWhen: there }));
    const tasks = () => taskRows(unit.patient(), teaching, day('2026-11-26')).map(({ columns }) => columns['task']);
    expect(tasks()).toContain('confirm the check at home');
    const confirmation = { about: unit.newest('dose').id, finding: 'I was there and read the pack' };
    for (const who of ['dana', 'halina'] as const)
      expect(unit.line(who, 'looked-again', confirmation)).toEqual([
        expect.objectContaining({
          name: 'not-yours-to-do',
          field: 'line.body.about',
          remedy: expect.stringContaining('in their own name'),
        }),
      ]);
    expect(tasks()).toContain('confirm the check at home');
    unit.write('imre', 'looked-again', confirmation);
    expect(tasks()).not.toContain('confirm the check at home');
  });
  test('a correction cannot take the check away, nor turn a ward dose into one at home', () => {
    const unit = ready();
    unit.write('dana', 'dose', dose({ checkedBy: 'imre', checkedWhen: there }));
    const { id } = unit.newest('dose');
    const corrected = (body: Dose, amends: string) =>
      unit.refused('dana', {
        name: 'record',
        patient: 'p1',
        line: { kind: 'dose', body, effectiveAt: unit.today() },
        amends,
      });
    expect(corrected(dose({ batch: 'PA-2391' }), id)).toEqual(['field-wrong']);
    expect(corrected(dose({ batch: 'PA-2391', checkedBy: 'imre', checkedWhen: there }), id)).toEqual([]);
    const ward = ready();
    ward.write('dana', 'dose', dose({ setting: 'ward' }));
    const act = { name: 'record', patient: 'p1', amends: ward.newest('dose').id } as const;
    expect(ward.refused('dana', { ...act, line: { kind: 'dose', body: dose(), effectiveAt: ward.today() } })).toEqual([
      'field-wrong',
    ]);
  });
});

describe('what it is not asked of', () => {
  test.each<[string, Dose, string | undefined]>([
    ['a ward', dose({ setting: 'ward' }), undefined],
    ['another service', dose({ setting: 'elsewhere' }), undefined],
    ['what is taken daily', dose({ medicine: 'teriparatide' }), undefined],
    ['a day before the unit had a protocol', dose(), '2020-03-02'],
  ])('%s', (_, body, on) =>
    expect(
      ready()
        .line('dana', 'dose', body, on)
        .map(({ name }) => name),
    ).toEqual([]),
  );
  test('a name where nothing was given at home is asked about', () =>
    expect(written(dose({ setting: 'ward', checkedBy: 'imre' }))).toEqual([['field-wrong', 'checkedBy']]));
});

// The safety page says "home doses", not "drips": what is injected at home is read and checked there like the drip.
describe('an injection at home', () => {
  const denosumab = { medicine: 'denosumab 60 mg' } as const;
  const injection = (more: Partial<Dose> = {}) => dose({ ...denosumab, batch: 'DX-1', ...more });
  const withDenosumab = (more: object): typeof teachingSheet => ({
    ...teachingSheet,
    regimens: teachingSheet.regimens.map((one) => (one.medicine === denosumab.medicine ? { ...one, ...more } : one)),
  });
  const without = {
    ...teachingSheet,
    regimens: teachingSheet.regimens.filter(({ medicine }) => medicine !== denosumab.medicine),
  };

  test('is refused unchecked and alone like a drip, also where no regimen of the protocol is of it', () => {
    for (const sheet of [teachingSheet, without]) {
      expect(written(injection(), ready(sheet))).toEqual([['field-wrong', 'checkedBy']]);
      expect(written(injection({ checkedBy: 'imre', checkedWhen: before }), ready(sheet))).toEqual([
        ['not-alone-at-home', 'checkedWhen'],
      ]);
      expect(written(injection({ checkedBy: 'imre', checkedWhen: there }), ready(sheet))).toEqual([]);
      expect(written(injection({ incident: 'alone; told Imre' }), ready(sheet))).toEqual([]);
    }
  });
  test('where the regimen says that no other person checks it, nobody is named', () =>
    expect(written(injection(), ready(withDenosumab({ secondCheck: 'not asked for' })))).toEqual([]));
  test('what is taken daily at home nobody gives: no check is named', () => {
    const daily = dose({ medicine: 'teriparatide' });
    expect(written(daily)).toEqual([]);
    expect(written({ ...daily, checkedBy: 'imre', checkedWhen: there })).toEqual([['field-wrong', 'checkedBy']]);
  });
});
