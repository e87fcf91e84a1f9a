/**
 * Body, kidneys and bone at a glance, and what stands beside the clearance in its working. Figures: clinical fact sheet 2a-ex,
 * 2a-ex2, 2b-ex, 2c-ex, 2d-ex, 2i, 2j (computed there), reference sheet 2.10; formulas have their sources in their own tests.
 */
import { describe, expect, test } from 'vitest';
import { bodyKidneysBone, day, teaching } from '@twelvemonth/clinical';
import { judged } from './kidney-person.ts';
import { type Line, asked, at, bloods, born, personOf, weighed } from './person.ts';

const tall = (cm: string, which: 'peak adult' | 'measured now' = 'peak adult', on = '2026-01-05'): Line =>
  at(on, 'height', { quantity: { comparator: '', value: cm, unit: 'cm' }, which });
const parts = (lines: readonly Line[], on = asked) => bodyKidneysBone(personOf(lines), teaching, on);
const part = (title: 'Body' | 'Kidneys' | 'Bone', lines: readonly Line[], on = asked) => {
  const found = parts(lines, on).find((one) => one.title === title);
  if (found === undefined) throw new Error(`no ${title}`);
  return found;
};
const figure = (title: 'Body' | 'Kidneys' | 'Bone', what: string, lines: readonly Line[]) =>
  part(title, lines).lines.find((line) => line.what === what)?.is;

/** Born on 2 Jan: so many years old in November 2026. */
const aged = (years: number, sex: 'female' | 'male' = 'female') => born(`${2026 - years}-01-02`, sex);

describe('body', () => {
  const bw1 = [aged(78), tall('160'), weighed('2026-11-20', '58')];
  test('BW1, BS1: index 22.66, surface 1.6055 by Mosteller and 1.5989 by Du Bois, ideal weight 52.38', () => {
    expect(figure('Body', 'body mass index', bw1)).toBe('22.7 kg/m2');
    expect(figure('Body', 'body surface', bw1)).toBe('1.61 m2');
    expect(part('Body', bw1).lines.find(({ what }) => what === 'body surface')?.of).toContain('by Du Bois 1.60 m2');
    expect(figure('Body', 'ideal weight', bw1)).toBe('52.4 kg');
  });
  test('no adjusted weight below the protocol’s share of the ideal one', () => {
    expect(figure('Body', 'adjusted weight', bw1)).toBeUndefined();
  });
  test('BW2: adjusted weight 66.71, index 39.54', () => {
    const bw2 = [aged(79), tall('155'), weighed('2026-11-20', '95')];
    expect(figure('Body', 'adjusted weight', bw2)).toBe('66.7 kg');
    expect(figure('Body', 'body mass index', bw2)).toBe('39.5 kg/m2');
  });
  test('BW6: at 148 cm no ideal weight is worked out, and it says why', () => {
    const bw6 = [aged(79), tall('148'), weighed('2026-11-20', '40')];
    expect(figure('Body', 'ideal weight', bw6)).toBe('not worked out');
  });
  // MHRA October 2019 (read): the clearance and not the eGFR below 18 and above 40.
  test.each([
    ['46', '17.97', true],
    ['46.2', '18.05', false],
    ['102.4', '40.00', false],
    ['103', '40.23', true],
  ])('%s kg at 160 cm, index %s: warned %s', (kg, _index, warned) => {
    const says = figure('Body', 'body mass index', [aged(79), tall('160'), weighed('2026-11-20', kg)]);
    expect(says?.includes('least sure')).toBe(warned);
  });
  test('the weight says its change on the one before; an old one says so', () => {
    const lines = [aged(79), weighed('2026-03-01', '50'), weighed('2026-06-01', '45')];
    const body = part('Body', lines);
    expect(body.lines[0]).toMatchObject({ what: 'weight', is: '45 kg' });
    expect(body.lines[0]?.of).toContain('-10.0 % on 50 kg of 1 Mar 2026');
    expect(body.cautions.join()).toContain('older than 90 days');
  });
  test('nothing known: it says what is missing and works nothing out', () => {
    expect(part('Body', [aged(79)])).toMatchObject({ lines: [], cautions: ['Never weighed.', expect.any(String)] });
  });
  test('pounds and inches are read as exactly as kilograms and centimetres', () => {
    const inches = at('2026-01-05', 'height', {
      quantity: { comparator: '', value: '60', unit: 'in' },
      which: 'peak adult',
    });
    const pounds = at('2026-11-20', 'weight', {
      quantity: { comparator: '', value: '99.2', unit: 'lb' },
      method: 'measured',
    });
    const lines = [aged(79), inches, pounds];
    // 1 lb = 0.45359237 kg: 44.996 kg, in which a dose is worked out; BW4 is 45 kg. 1 in = 2.54 cm.
    expect(figure('Body', 'weight', lines)).toBe('99.2 lb (45.0 kg)');
    expect(figure('Body', 'tallest adult height', lines)).toBe('60 in (152.4 cm)');
    expect(figure('Body', 'ideal weight', lines)).toBe('45.5 kg'); // BW4: 60 inches
    expect(figure('Body', 'body mass index', lines)).toBe('19.4 kg/m2'); // BW4: 19.38
  });
});

describe('kidneys', () => {
  // Reference sheet 2.10: eGFR 61.697 and clearance 34.513 in the same woman.
  test('84 y, 48 kg, creatinine 81: eGFR 61.7, clearance 34.51, not ready', () => {
    const lines = [aged(84), weighed('2026-11-20', '48'), ...bloods('2026-11-20', { creatinine: '81 umol/L' })];
    expect(figure('Kidneys', 'eGFR 2021 (never decides)', lines)).toBe('61.7 mL/min/1.73 m2');
    expect(figure('Kidneys', 'creatinine clearance, umol/L form', lines)).toMatch(/^34\.51 /);
    expect(judged(lines).verdict).toBe('not ready');
  });
  // Fact sheet, "why eGFR alone misleads": 84 y, 152 cm, 45 kg, 88 umol/L. 152 cm is below the ideal weight's shortest height.
  const misled = [
    aged(84),
    tall('152'),
    weighed('2026-11-20', '45'),
    ...bloods('2026-11-20', { creatinine: '88 umol/L' }),
  ];
  test('eGFR 55.9 and 52.0, for her own surface 44.5 and 41.4, and the clearance 29.8: below 35', () => {
    const says = Object.fromEntries(part('Kidneys', misled).lines.map(({ what, is }) => [what, is]));
    expect(says['eGFR 2021 (never decides)']).toBe('55.9 mL/min/1.73 m2');
    expect(says['eGFR 2009 (never decides)']).toBe('52.0 mL/min/1.73 m2');
    expect(says['eGFR 2021 for the own body surface (never decides)']).toBe('44.5 mL/min');
    expect(says['eGFR 2009 for the own body surface (never decides)']).toBe('41.4 mL/min');
    expect(says['creatinine clearance, umol/L form']).toBe('29.78 mL/min');
    expect(judged(misled).verdict).toBe('not ready');
  });
  // 35 x 88 / (56 x 1.04) = 52.88 kg; 45 x 56 x 1.04 / 35 = 74.88 umol/L. The mg/dL form lies above in women.
  test('the limit in her own terms: at least 52.9 kg, or a creatinine of at most 74', () => {
    expect(figure('Kidneys', 'least weight that passes with this creatinine', misled)).toBe('52.9 kg');
    expect(figure('Kidneys', 'highest creatinine that passes with this weight', misled)).toBe('74 umol/L');
  });
  test.each([
    ['52.8', 'not ready'],
    ['52.9', 'ready'],
  ])('and that is where the verdict turns: %s kg is %s', (kg, expected) => {
    const lines = [aged(84), weighed('2026-11-20', kg), ...bloods('2026-11-20', { creatinine: '88 umol/L' })];
    expect(judged(lines).verdict).toBe(expected);
  });
  test('reported in mg/dL the highest creatinine is said in it too, rounded down so that it passes', () => {
    const lines = [aged(84), weighed('2026-11-20', '45'), ...bloods('2026-11-20', { creatinine: '1.00 mg/dL' })];
    // 74 / 88.4 = 0.8371
    expect(figure('Kidneys', 'highest creatinine that passes with this weight', lines)).toBe('74 umol/L (0.83 mg/dL)');
    const with083 = [aged(84), weighed('2026-11-20', '45'), ...bloods('2026-11-20', { creatinine: '0.83 mg/dL' })];
    expect(judged(with083).verdict).toBe('ready');
  });
  test('weighed in pounds the least weight is said in them too, rounded up so that it passes', () => {
    const pounds = (value: string) =>
      at('2026-11-20', 'weight', { quantity: { comparator: '', value, unit: 'lb' }, method: 'measured' });
    const lines = (value: string) => [aged(84), pounds(value), ...bloods('2026-11-20', { creatinine: '88 umol/L' })];
    // 52.9 kg / 0.45359237 = 116.62 lb (international pound)
    expect(figure('Kidneys', 'least weight that passes with this creatinine', lines('99.2'))).toBe(
      '52.9 kg (116.7 lb)',
    );
    expect(judged(lines('116.7')).verdict).toBe('ready');
  });
  test('reported in mg/dL the change on the own creatinine is said in it too', () => {
    const lines = [
      aged(70),
      weighed('2026-11-20', '70'),
      ...bloods('2026-03-01', { creatinine: '0.80 mg/dL' }),
      ...bloods('2026-11-20', { creatinine: '1.00 mg/dL' }),
    ];
    // 0.2 x 88.4 = 17.68
    expect(figure('Kidneys', 'change on the lowest earlier creatinine', lines)).toBe(
      '+17.7 umol/L (+0.20 mg/dL), x1.25',
    );
  });
  // 2a-ex2: actual 52.41, adjusted 36.80, ideal 26.40 (umol/L form): both sides of 35, so all three stand there.
  test('three weights on two sides of the limit: all three clearances are shown, and it cannot be said', () => {
    const lines = [
      aged(79),
      tall('155'),
      weighed('2026-11-20', '95'),
      ...bloods('2026-11-20', { creatinine: '115 umol/L' }),
    ];
    expect(figure('Kidneys', 'creatinine clearance, umol/L form', lines)).toMatch(/^52\.41/);
    expect(figure('Kidneys', 'the same with adjusted weight', lines)).toMatch(/^36\.80/);
    expect(figure('Kidneys', 'the same with ideal weight', lines)).toMatch(/^26\.40/);
    expect(judged(lines).verdict).toBe('cannot say');
  });
  // Reference sheet 2.10: 67 y, 158 cm, 104 kg, creatinine 78.
  test('101.227 by actual, 70.024 by adjusted, 49.222 by ideal weight', () => {
    const lines = [
      aged(67),
      tall('158'),
      weighed('2026-11-20', '104'),
      ...bloods('2026-11-20', { creatinine: '78 umol/L' }),
    ];
    expect(figure('Kidneys', 'creatinine clearance, umol/L form', lines)).toMatch(/^101\.23/);
    expect(figure('Kidneys', 'the same with adjusted weight', lines)).toMatch(/^70\.02/);
    expect(figure('Kidneys', 'the same with ideal weight', lines)).toMatch(/^49\.22/);
  });
  test('the change on her own lowest creatinine, in umol/L and times', () => {
    const lines = [
      aged(70),
      weighed('2026-11-20', '70'),
      ...bloods('2026-03-01', { creatinine: '60 umol/L' }),
      ...bloods('2026-11-20', { creatinine: '78 umol/L' }),
    ];
    expect(figure('Kidneys', 'change on the lowest earlier creatinine', lines)).toBe('+18 umol/L, x1.30');
    expect(judged(lines).verdict).toBe('cannot say'); // x1.3: the teaching protocol's factor
  });
  test('a fall is told as a fall', () => {
    const lines = [
      aged(70),
      weighed('2026-11-20', '70'),
      ...bloods('2026-03-01', { creatinine: '80 umol/L' }),
      ...bloods('2026-11-20', { creatinine: '72.5 umol/L' }),
    ];
    expect(figure('Kidneys', 'change on the lowest earlier creatinine', lines)).toBe('-7.5 umol/L, x0.91');
  });
  test('the working of the requirement holds the same lines, and the body mass index', () => {
    const names = judged(misled)
      .working()
      .formulas.map(({ name }) => name);
    const lines = part('Kidneys', misled).lines.slice(1);
    expect(names).toEqual([...lines.map(({ what }) => what), 'body mass index, height peak adult']);
  });
  test('without sex, weight or a whole birth date it works nothing out and says what is missing', () => {
    const lines = [born('1941', 'female'), ...bloods('2026-11-20', { creatinine: '88 umol/L' })];
    const kidneys = part('Kidneys', lines);
    expect(kidneys.lines.map(({ what }) => what)).toEqual(['creatinine']);
    expect(kidneys.cautions[0]).toBe('Clearance cannot be said without a weight, a whole birth date.');
  });
  test('a creatinine counts 56 days here: on the next it says that it is older', () => {
    const lines = [aged(84), ...bloods('2026-09-30', { creatinine: '88 umol/L' })];
    const old = 'The creatinine is older than 56 days, as long as one counts here.';
    expect(part('Kidneys', lines, day('2026-11-25')).cautions).not.toContain(old);
    expect(part('Kidneys', lines, day('2026-11-26')).cautions).toContain(old);
  });
  test('an unsigned sample, and one taken while acutely ill, say so', () => {
    const unsigned = part('Kidneys', [aged(84), ...bloods('2026-11-20', { creatinine: '88 umol/L' }, null)]);
    expect(unsigned.lines[0]?.of).toContain('not signed yet');
  });
});

describe('bone', () => {
  const hip = (on: string, value: string, more: object = {}): Line =>
    at(on, 'bone-density', {
      site: 'total hip',
      side: 'left',
      scanner: 'Thornbeck 1',
      density: { comparator: '', value, unit: 'g/cm2' },
      ...more,
    });
  const dose = at('2023-06-01', 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service' });
  // 0.642 to 0.612 is -4.673 %, beyond 0.0277 g/cm2 (2.77 x 0.010).
  const both = [
    aged(79),
    hip('2023-03-01', '0.642', { tScore: '-2.5' }),
    dose,
    hip('2026-03-01', '0.612', {
      tScore: '-2.7',
      zScore: '-0.9',
      leastChange: { comparator: '', value: '0.0277', unit: 'g/cm2' },
    }),
  ];
  test('T and Z as printed, change, per year, and the least significant change it is measured with', () => {
    const line = part('Bone', both).lines[0];
    expect(line?.is).toBe('0.612 g/cm2, T -2.7, Z -0.9');
    expect(line?.of).toContain(
      '-4.7 % since 1 Mar 2023 (-1.6 % a year), more than the least significant change of 0.0277 g/cm2',
    );
  });
  test('the band of the printed T-score, and the T-score worked out only to see whether the report is plausible', () => {
    expect(figure('Bone', 'total hip, left: band of the printed T-score', both)).toBe('osteoporosis');
    // Looker 1998 (from memory): (0.612 - 0.942) / 0.122 = -2.705
    expect(figure('Bone', 'total hip, left: T-score worked out, to see whether the report is plausible', both)).toBe(
      '-2.70',
    );
  });
  test('without a least change on the report the protocol’s per cent of the site is named', () => {
    const line = part('Bone', [aged(79), hip('2023-03-01', '0.642'), dose, hip('2026-03-01', '0.612')]).lines[0];
    expect(line?.of).toContain('within the least significant change of 5.0 %');
  });
  test('another scanner is not compared', () => {
    const line = part('Bone', [
      aged(79),
      hip('2023-03-01', '0.642', { scanner: 'Elsewhere 2' }),
      dose,
      hip('2026-03-01', '0.612'),
    ]).lines[0];
    expect(line?.of).toContain('not comparable');
    expect(line?.put).toBeUndefined();
  });
  // IOF-ECTS 2017: P1NP by more than 38 %.
  test('a marker with its fall from before treatment', () => {
    const lines = [
      aged(79),
      ...bloods('2023-03-01', { P1NP: '60 ug/L' }),
      dose,
      ...bloods('2023-12-01', { P1NP: '20 ug/L' }),
    ];
    const line = part('Bone', lines).lines[0];
    expect(line).toMatchObject({ what: 'P1NP', is: '20 ug/L' });
    expect(line?.of).toContain('fallen by 67 %, more than chance');
  });
  test('never scanned, no marker: it says so', () => {
    expect(part('Bone', [aged(79)], day('2026-11-25')).cautions).toEqual([
      'Bone density never scanned.',
      'No signed CTX or P1NP.',
    ]);
  });
});
