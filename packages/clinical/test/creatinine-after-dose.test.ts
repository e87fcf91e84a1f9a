/**
 * Creatinine after a dose given near the clearance limit. MHRA Drug Safety Update April 2010: considered in people at risk (read);
 * one to two weeks after (from memory). The teaching protocol has 7 to 14 days, limit 35, band to 40 mL/min.
 */
import { describe, expect, test } from 'vitest';
import { type Fact, creatinineAfterDose, day, plainDate, standingOf, teaching } from '@twelvemonth/clinical';
import { withNumbers } from './judging.ts';
import { type Line, at, bloods, born, personOf, weighed } from './person.ts';

// Woman of 85, 60 kg: (140 - 85) x 60 x 1.04 / umol/L: 85 gives 40.4, 86 gives 39.9, 98 gives 35.02 mL/min.
const before = (umolPerL: string, on = '2026-10-01'): readonly Line[] => [
  born('1941-06-02'),
  weighed(on, '60'),
  ...bloods(on, { creatinine: `${umolPerL} umol/L` }),
];
const given = (
  medicine: Fact<'dose'>['body']['medicine'] = 'zoledronic acid 5 mg',
  setting: Fact<'dose'>['body']['setting'] = 'this service',
): Line => at('2026-10-12', 'dose', { medicine, setting });
const due = (lines: readonly Line[], on = '2026-10-20', protocol = teaching) => {
  const found = creatinineAfterDose(personOf(lines), protocol, day(on));
  return found === undefined ? undefined : plainDate(found.by);
};

describe('creatinine after a dose near the limit', () => {
  test('in the band: by the protocol’s 14 days', () => {
    expect(due([...before('86'), given()])).toBe('2026-10-26');
    expect(due([...before('98'), given()])).toBe('2026-10-26');
  });
  test('above the band, and known: none', () => {
    expect(due([...before('85'), given()])).toBeUndefined();
  });
  test('below the limit by one form, whoever gave it: the same', () => {
    expect(due([...before('99'), given()])).toBe('2026-10-26');
  });
  test('not known, as in an old register: nobody is chased for it; nothing is given here at a clearance not known', () => {
    expect(due([born('1941-06-02'), weighed('2026-10-01', '60'), given()])).toBeUndefined();
    expect(due([born('1941'), ...before('86').slice(1), given()])).toBeUndefined();
  });
  test('a signed one from the seventh day on ends it; an earlier or unsigned one does not', () => {
    const lines = [...before('86'), given()];
    const sampled = (on: string, signedOn: string | null = on) => bloods(on, { creatinine: '88 umol/L' }, signedOn);
    expect(due([...lines, ...sampled('2026-10-18')])).toBe('2026-10-26');
    expect(due([...lines, ...sampled('2026-10-19')])).toBeUndefined();
    expect(due([...lines, ...sampled('2026-10-19', null)])).toBe('2026-10-26');
  });
  test('past its day it is still asked for, and says so', () => {
    const says = (on: string) => creatinineAfterDose(personOf([...before('86'), given()]), teaching, day(on))?.says;
    expect(says('2026-10-26')).toBe(
      "creatinine after zoledronic acid 5 mg of 12 Oct 2026, near the kidneys' limit: sample from 19 Oct 2026 to 26 Oct 2026",
    );
    expect(says('2026-10-27')).toContain('its sample was due by 26 Oct 2026');
  });
  test('ibandronate by its own limit of 30, not denosumab, whose calcium is looked at, nor what is taken at home', () => {
    // 55 x 60 x 1.04 / 99 is 34.7: in the band from 30 to 35.
    expect(due([...before('99'), given('ibandronate 3 mg')])).toBe('2026-10-26');
    expect(due([...before('90'), given('ibandronate 3 mg')])).toBeUndefined();
    expect(due([...before('99'), given('denosumab 60 mg')])).toBeUndefined();
    expect(due([...before('99'), given('teriparatide')])).toBeUndefined();
  });
  test('not of a dose given elsewhere, not after a death', () => {
    expect(due([...before('86'), given('zoledronic acid 5 mg', 'elsewhere')])).toBeUndefined();
    expect(due([...before('86'), given(), at('2026-10-18', 'died', { source: 'family doctor' })])).toBeUndefined();
  });
  test('a unit that writes nought days asks for none', () => {
    const none = withNumbers({ creatinineAfterDoseByDays: '0' });
    expect(due([...before('86'), given()], '2026-10-20', none)).toBeUndefined();
  });
  test('it stands where the person stands, with its day', () => {
    const lines = [
      at('2026-09-01', 'referral', { from: 'a ward', reason: 'T -3.4', tier: 'routine', unit: 'thornbeck' }),
      at('2026-09-02', 'triage', { outcome: 'accepted' }),
      ...before('86'),
      given(),
    ];
    const standing = standingOf(personOf(lines), teaching, day('2026-10-20'));
    expect(standing.says).toContain('creatinine after zoledronic acid 5 mg of 12 Oct 2026');
    expect(standing.on).toBe(day('2026-10-26'));
  });
});
