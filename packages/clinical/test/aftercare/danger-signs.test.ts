/**
 * Red flags after a dose. Checked against the table "Red flags after dose" of the clinical sheet, section 7 (each row's status
 * stands beside its rule), and "Call us" and "Emergency" of practice page 8, rows 9 and 10; the rest common practice, no source.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type RedFlagName,
  type Told,
  aftercareScript,
  dangerSignNames,
  dangerSigns,
  ifNobodyAnswers,
  redFlagNamed,
  redFlagNames,
  redFlagsIn,
  teaching,
  urgencies,
} from '@twelvemonth/clinical';

const names = (told: Partial<Told>): readonly RedFlagName[] =>
  redFlagsIn({ signs: [], ...told }, teaching.number).map(({ name }) => name);

describe('the rows of the table', () => {
  test.each([
    ['breathing difficulty, swelling, collapse', 'trouble breathing or swelling', 'now', /ambulance/],
    ['tingling, cramp', 'tingling or cramps', 'today', /calcium/],
    ['seizure', 'a fit or a faint', 'now', /ambulance/],
    ['little urine', 'little or no urine', 'today', /creatinine/],
    ['vomiting, dehydration', 'cannot keep fluids down', 'today', /creatinine/],
    ['painful red eye, light sensitivity, blurred vision', 'red or painful eye', 'today', /eye/],
    ['chest pain, stroke signs', 'chest pain or stroke signs', 'now', /ambulance/],
    ['new palpitations, irregular pulse', 'palpitations', 'today', /ECG/],
    ['jaw pain, loose tooth, non-healing socket, numb lip', 'jaw or tooth trouble', 'this week', /dentist/],
    ['thigh, groin or hip pain', 'thigh, hip or groin pain', 'today', /X-ray of both/],
    ['ear pain, discharge', 'ear pain or discharge', 'this week', /refer/],
    ['rigors', 'shaking chills', 'today', /medical review/],
  ] as const)('%s', (_, sign, urgency, who) => {
    const [flag] = redFlagsIn({ signs: [sign] }, teaching.number);
    expect([flag?.name, flag?.urgency]).toEqual([sign, urgency]);
    expect(flag?.who).toMatch(who);
  });

  test.each([
    // Over 72 h, or over 39 to 40 degrees: not the reaction to the drip.
    [{ feverDays: 3 }, []],
    [{ feverDays: 4 }, ['fever that is too long or too high']],
    [{ temperatureCelsius: 39 }, []],
    [{ temperatureCelsius: 39.1 }, ['fever that is too long or too high']],
    [{ drinks: 'less than usual' }, []],
    [{ drinks: 'hardly anything' }, ['hardly drinks']],
    [{ paracetamol: 'more than told' }, ['more paracetamol than told']],
    [{ feels: 'very unwell' }, ['very unwell']],
    [{ severeAches: true }, ['severe pain in bones, joints or muscles']],
  ] as const)('%o', (told, expected) => expect(names(told)).toEqual(expected));

  test('without a protocol any fever is looked at: nothing unknown counts as safe', () => {
    expect(redFlagsIn({ signs: [], feverDays: 0 }, undefined).map(({ name }) => name)).toEqual([
      'fever, and nobody has said how much is too much',
    ]);
    expect(redFlagsIn({ signs: [] }, undefined)).toEqual([]);
  });
});

describe('whatever was told', () => {
  const told = fc.record<Told>({
    signs: fc.uniqueArray(fc.constantFrom(...dangerSignNames)),
    feels: fc.constantFrom(undefined, 'rough', 'very unwell'),
    temperatureCelsius: fc.option(fc.double({ min: 34, max: 42, noNaN: true }), { nil: undefined }),
    feverDays: fc.option(fc.nat(9), { nil: undefined }),
    drinks: fc.constantFrom(undefined, 'as usual or more', 'hardly anything'),
    paracetamol: fc.constantFrom(undefined, 'none', 'more than told'),
    severeAches: fc.boolean(),
  });
  test('every sign told is a flag, once, the most urgent first; telling more never takes one away', () => {
    fc.assert(
      fc.property(told, fc.constantFrom(...dangerSignNames), (one, more) => {
        const flags = redFlagsIn(one, teaching.number);
        expect(flags.map(({ name }) => name)).toEqual(expect.arrayContaining([...one.signs]));
        expect(new Set(flags.map(({ name }) => name)).size).toBe(flags.length);
        const ranks = flags.map(({ urgency }) => urgencies.indexOf(urgency));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
        const withMore = redFlagsIn({ ...one, signs: [...new Set([...one.signs, more])] }, teaching.number);
        expect(withMore.map(({ name }) => name)).toEqual(expect.arrayContaining(flags.map(({ name }) => name)));
      }),
    );
  });
});

describe('each rule', () => {
  test.each(redFlagNames)('%s says who, by when, what to do now in plain words, and where it comes from', (name) => {
    const { who, doNow, source, urgency } = redFlagNamed(name);
    for (const said of [who, doNow, source]) expect(said.length).toBeGreaterThan(3);
    // Never "wait and see", and what is urgent now names an emergency.
    expect(doNow).not.toMatch(/wait until|no need/i);
    expect(urgency !== 'now' || /emergency/.test(doNow)).toBe(true);
    for (const sentence of doNow.split(/[.:!?]\s/)) expect(sentence.split(/\s+/).length).toBeLessThanOrEqual(20);
  });
});

test('nothing said to the person names one medicine: it may have been another', () => {
  const said = [...redFlagNames.map((name) => redFlagNamed(name).doNow), ...aftercareScript.map(({ asks }) => asks)];
  expect(said.filter((one) => /zoledron|denosumab|ibandron/i.test(one))).toEqual([]);
  expect(ifNobodyAnswers).toMatch(/emergency department/);
});

test('the script asks every danger sign, one a line, before the usual symptoms, and presets nothing', () => {
  const asked = aftercareScript.flatMap((question) => (question.id === 'sign' ? [question.sign] : []));
  expect(asked).toEqual(dangerSignNames);
  const ids = aftercareScript.map(({ id }) => id);
  expect(ids[0]).toBe('feels');
  expect(ids.lastIndexOf('sign')).toBeLessThan(ids.indexOf('symptom'));
  for (const { asks } of aftercareScript) expect(asks).toMatch(/\?$/);
  for (const sign of dangerSignNames) expect(dangerSigns[sign].asks.split(/\s+/).length).toBeLessThanOrEqual(20);
});
