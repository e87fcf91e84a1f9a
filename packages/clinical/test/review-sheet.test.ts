/**
 * What a review of the course gathers. Sources: treatment failure: IOF 2012, Diez-Perez, Osteoporos Int 23:2769 (two or more new
 * fragility fractures; one and a marker fallen by less than 25 % or a loss of 5 % at the spine or 4 % at the hip; both of these;
 * after a year of treatment: exact combination from memory). Least significant change: ISCD, 2.77 x precision error; per cent
 * from ISCD Official Positions 2019 (5.3, 5.0, 6.9, from memory); worked changes of density from the facts page (computed):
 * 0.642 to 0.612 g/cm2 = -4.673 %, 0.700 to 0.728 = +4.000 %, over 3.0 years 1.333 % a year. Carrying on: NOGG 2021.
 */
import { describe, expect, test } from 'vitest';
import {
  type ProtocolSheet,
  type ReviewChoice,
  type ReviewSheet,
  consequencesOf,
  day,
  entriesFromDrafts,
  parseLedger,
  protocolFrom,
  recordOf,
  reviewSheetOf,
  teaching,
  teachingSheet,
  usualPerson,
} from '@twelvemonth/clinical';

const born = 'person female, born 1952-06-02';
function recordOfText(text: string, person = born) {
  const read = parseLedger(`${person}\n${text}`);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2015-01-01T08:00:00.000Z' }));
}
const sheet = (text: string, on = '2026-06-01', person = born): ReviewSheet =>
  reviewSheetOf(recordOfText(text, person), teaching, day(on));
const dose = (date: string) => `${date}  dose zoledronic acid 5 mg, this service`;
const three = `${dose('14 Mar 2023')}\n${dose('14 Mar 2024')}\n${dose('26 Mar 2025')}`;
const lines = (of: ReviewSheet, title: string) =>
  of.sections.find((one) => one.title === title)?.lines.map(({ says }) => says) ?? [];

describe('doses and exposure', () => {
  test('how late each dose was, three counts, tablet years beside them', () => {
    const of = sheet(
      `1 Feb 2020  medicine name "alendronic acid", sort bisphosphonate tablet, stopped on 1 Feb 2022\n1 Jan 2022  dose zoledronic acid 4 mg, elsewhere\n${three}`,
    );
    expect(lines(of, 'Doses and exposure')).toEqual([
      'dose 1 on 14 Mar 2023',
      'dose 2 on 14 Mar 2024, not late',
      'dose 3 on 26 Mar 2025, 12 days late',
      '3 in this course, 3 in a row since the last planned break, 3 in all',
      '1 dose of zoledronic acid 4 mg, in the lifetime too',
      // 1 Feb 2020 to 1 Jan 2023 (tablets, then 12 months after the 4 mg product), 14 Mar 2023 to 14 Mar 2025, a year from
      // 26 Mar 2025: 1065 + 731 + 365 = 2161 days.
      'about 5.9 years with a bisphosphonate at work, 2.0 of them tablets; days that overlap count once',
    ]);
  });
  test('a part dose is told, and that a prescriber has still to say whether it counts', () => {
    const part = '13 Aug 2025  dose zoledronic acid 5 mg, this service, part 40 mL';
    expect(lines(sheet(part), 'Doses and exposure')).toEqual([
      'zoledronic acid 5 mg given on 13 Aug 2025, this service, part dose of 40 mL: whether it counts is for the prescriber',
    ]);
  });
  test('why it is asked for', () => {
    expect(sheet(three).needed?.because).toBe('planned doses given');
    expect(sheet(dose('14 Mar 2026')).needed).toBeUndefined();
  });
});

describe('bone density', () => {
  const hip = (on: string, value: string, more = '') =>
    `${on}  bone density total hip ${value} g/cm2, scanner "T1", side left${more}`;
  test('a change beyond the least significant one of the report', () => {
    // 0.642 - 0.612 = 0.030 >= 0.0277 = 2.77 x 0.010; three years less a day.
    const of = sheet(
      `${hip('1 Mar 2023', '0.642')}\n${three}\n${hip('1 Mar 2026', '0.612', ', T -2.8, least change 0.0277 g/cm2')}`,
    );
    expect(lines(of, 'Bone density')).toEqual([
      'total hip, left: 0.612 g/cm2, T -2.8 on 1 Mar 2026: -4.7 % since 1 Mar 2023 (-1.6 % a year), more than the least significant change of 0.0277 g/cm2',
    ]);
  });
  test('a change within it', () => {
    // 0.028 < 0.0332 = 2.77 x 0.012.
    const of = sheet(
      `${hip('1 Mar 2023', '0.700')}\n${three}\n${hip('1 Mar 2026', '0.728', ', least change 0.0332 g/cm2')}`,
    );
    expect(lines(of, 'Bone density')[0]).toMatch(
      /\+4\.0 % .* \(\+1\.3 % a year\), within the least significant change of 0\.0332 g\/cm2$/,
    );
  });
  test.each([
    ['0.665', 'more than'],
    ['0.6651', 'within'],
  ])('without a number of its own the protocol decides: 5.0 %% of 0.700 at %s', (value, says) => {
    const of = sheet(`${hip('1 Mar 2023', '0.700')}\n${three}\n${hip('1 Mar 2026', value)}`);
    expect(lines(of, 'Bone density')[0]).toContain(`${says} the least significant change`);
  });
  test('another scanner or another side is not compared', () => {
    const of = sheet(
      `1 Mar 2023  bone density total hip 0.642 g/cm2, scanner "T2", side left\n${three}\n${hip('1 Mar 2026', '0.612')}`,
    );
    expect(lines(of, 'Bone density')[0]).toContain('not comparable: another scanner or side before');
    expect(of.gaps.map(({ says }) => says)).toContain('No two scans that can be compared.');
  });
  test('the scan before treatment is the one compared with, not the first ever', () => {
    const of = sheet(
      `${hip('1 Mar 2018', '0.800')}\n${hip('1 Mar 2023', '0.700')}\n${three}\n${hip('1 Mar 2026', '0.700')}`,
    );
    expect(lines(of, 'Bone density')[0]).toContain('+0.0 % since 1 Mar 2023');
  });
});

describe('bone markers', () => {
  test.each([
    ['CTX 500 ng/L', 'CTX 0.219 ug/L', 'fallen by 56 %, more than chance'],
    ['CTX 500 ng/L', 'CTX 220 ng/L', 'fallen by 56 %, within chance'],
    ['P1NP 100 ug/L', 'P1NP 61 ng/mL', 'fallen by 39 %, more than chance'],
    ['P1NP 50 ug/L', 'P1NP 60 ug/L', 'risen by 20 %, within chance'],
  ])('%s before, %s now: %s (IOF-ECTS 2017: more than 56 and 38 per cent)', (before, now, says) => {
    const of = sheet(
      `1 Mar 2023  #a ${before}\n2 Mar 2023  signed #a\n${three}\n1 Mar 2026  #b ${now}\n2 Mar 2026  signed #b`,
    );
    expect(lines(of, 'Bone markers')[0]).toContain(says);
  });
  test('an unsigned value is not shown as one, and is asked for', () => {
    const of = sheet(`${three}\n1 Mar 2026  CTX 200 ng/L`);
    expect(lines(of, 'Bone markers')).toEqual([]);
    expect(of.gaps.map(({ kind }) => kind)).toContain('result');
  });
});

describe('treatment failure, IOF 2012', () => {
  const is = (text: string, on?: string) => sheet(`${three}\n${text}`, on).failure.is;
  const scans = (before: string, now: string) =>
    `1 Mar 2023  bone density total hip ${before} g/cm2, scanner "T1"\n1 Mar 2026  bone density total hip ${now} g/cm2, scanner "T1"\n1 Mar 2023  bone density lumbar spine 0.900 g/cm2, scanner "T1"\n1 Mar 2026  bone density lumbar spine 0.900 g/cm2, scanner "T1"`;
  const marker = (now: string) =>
    `1 Mar 2023  #m1 CTX 400 ng/L\n2 Mar 2023  signed #m1\n1 Mar 2026  #m2 CTX ${now} ng/L\n2 Mar 2026  signed #m2`;
  const good = `${scans('0.700', '0.700')}\n${marker('150')}`;
  test('two new fragility fractures', () =>
    expect(is('1 Apr 2024  fracture wrist\n1 Apr 2025  fracture shoulder')).toBe('met'));
  test('one, with markers suppressed and no loss', () =>
    expect(is(`${good}\n1 Apr 2025  fracture wrist`)).toBe('not met'));
  test('one, and a marker that fell by less than 25 per cent (301 of 400; 300 of 400 is 25)', () => {
    expect(is(`${scans('0.700', '0.700')}\n${marker('301')}\n1 Apr 2025  fracture wrist`)).toBe('met');
    expect(is(`${scans('0.700', '0.700')}\n${marker('300')}\n1 Apr 2025  fracture wrist`)).toBe('not met');
  });
  test('one, and 5 per cent lost at the hip (more than noise and than 4 per cent)', () => {
    expect(is(`${scans('0.700', '0.665')}\n${marker('150')}\n1 Apr 2025  fracture wrist`)).toBe('met');
    expect(is(`${scans('0.700', '0.666')}\n${marker('150')}\n1 Apr 2025  fracture wrist`)).toBe('not met');
  });
  test('no fracture: a marker not suppressed and a loss together, not one alone', () => {
    expect(is(`${scans('0.700', '0.665')}\n${marker('301')}`)).toBe('met');
    expect(is(`${scans('0.700', '0.665')}\n${marker('150')}`)).toBe('not met');
    expect(is(`${scans('0.700', '0.700')}\n${marker('301')}`)).toBe('not met');
  });
  test('what was never measured is not taken as good', () => {
    expect(is('1 Apr 2025  fracture wrist')).toBe('cannot say');
    expect(is(`${marker('150')}\n1 Apr 2025  fracture wrist`)).toBe('cannot say');
  });
  test('hands, feet and ankles do not count, but may be asked about', () => {
    expect(is(`${good}\n1 Apr 2024  fracture other\n1 Apr 2025  fracture other`)).toBe('cannot say');
    expect(is(`${good}\n1 Apr 2024  fracture wrist, day not known`)).toBe('not met');
  });
  test('fractures before the first dose are not failures of it', () =>
    expect(is(`${good}\n1 Apr 2021  fracture wrist\n1 Apr 2022  fracture hip`)).toBe('not met'));
  test('nothing has failed within the first year, nor where a dose was missed', () => {
    expect(sheet(`${dose('14 Mar 2026')}\n1 Apr 2026  fracture wrist\n1 May 2026  fracture hip`).failure.is).toBe(
      'not met',
    );
    expect(
      sheet(`${dose('14 Mar 2023')}\n${dose('14 Sep 2024')}\n1 Apr 2025  fracture wrist\n1 May 2025  fracture hip`)
        .failure.is,
    ).toBe('not met');
  });
  test('a fracture that only imaging tells of leaves it open, and is asked to be written', () => {
    const of = sheet(`${three}\n${good}\n1 Apr 2024  fracture wrist\n1 May 2026  spine imaging MRI new fracture`);
    expect(of.failure.is).toBe('cannot say');
    expect(of.gaps[0]).toMatchObject({ kind: 'fracture' });
  });
  test('each criterion names its entries and its source', () => {
    const { criteria } = sheet(`${three}\n1 Apr 2024  #f fracture wrist`).failure;
    expect(criteria.find(({ asks }) => asks.startsWith('2 or more'))?.entries).toHaveLength(1);
    for (const one of criteria) expect(one.source).toContain('IOF 2012');
  });
});

describe('carrying on, as the sheet lists it: NOGG 2021', () => {
  const of = (text: string, person = born) =>
    Object.fromEntries(sheet(`${three}\n${text}`, '2026-06-01', person).carryingOn.map(({ asks, is }) => [asks, is]));
  test('70 years: the day before the birthday not, on it yes; a birth year alone cannot say', () => {
    expect(of('', 'person female, born 1956-06-02')['70 years old or more']).toBe('not met');
    expect(of('', 'person female, born 1956-06-01')['70 years old or more']).toBe('met');
    expect(of('', 'person female, born 1950')['70 years old or more']).toBe('cannot say');
  });
  test.each([
    ['-2.5', 'met'],
    ['-2.4', 'not met'],
  ])('hip T %s', (score, is) =>
    expect(
      of(`1 Mar 2026  bone density femoral neck 0.6 g/cm2, scanner "T1", T ${score}`)['hip T-score of -2.5 or below'],
    ).toBe(is),
  );
  test('never scanned cannot be said', () => expect(of('')['hip T-score of -2.5 or below']).toBe('cannot say'));
  test.each([
    [', prednisolone mg per day "7.5"', 'met'],
    [', prednisolone mg per day "5"', 'not met'],
    ['', 'cannot say'],
  ])('a steroid%s', (more, is) =>
    expect(
      of(`1 Mar 2026  medicine name prednisolone, sort steroid${more}`)['on 7.5 mg of prednisolone a day or more'],
    ).toBe(is),
  );
  test('a spine fracture of long ago, and one on treatment', () => {
    expect(of('1 Mar 2015  fracture spine')).toMatchObject({
      'a hip or spine fracture at any time': 'met',
      'a fracture on treatment': 'not met',
    });
    expect(of('1 Apr 2024  fracture wrist')).toMatchObject({
      'a hip or spine fracture at any time': 'not met',
      'a fracture on treatment': 'met',
    });
  });
});

describe('what speaks for carrying on is the unit’s', () => {
  const under = (carryOn: ProtocolSheet['carryOn'], numbers: Partial<ProtocolSheet['numbers']> = {}) => {
    const made = protocolFrom({ ...teachingSheet, numbers: { ...teachingSheet.numbers, ...numbers }, carryOn });
    if (!('protocol' in made)) throw new Error('the sheet has an empty number');
    return reviewSheetOf(recordOfText(three), made.protocol, day('2026-06-01')).carryingOn;
  };
  const ours = { source: 'our course committee', status: 'local decision' } as const;
  test('only what it lists is asked, in its order, each with its own source', () => {
    expect(under([])).toEqual([]);
    expect(
      under([
        { id: 'steroid', ...ours },
        { id: 'hip or spine fracture', ...ours },
      ]).map(({ asks, source }) => [asks, source]),
    ).toEqual([
      ['on 7.5 mg of prednisolone a day or more', 'our course committee (local decision)'],
      ['a hip or spine fracture at any time', 'our course committee (local decision)'],
    ]);
  });
  test('its numbers are the sheet’s', () => {
    const seventyFive = { value: '75', ...ours };
    expect(under([{ id: 'age', ...ours }], { continueFromAge: seventyFive })[0]?.asks).toBe('75 years old or more');
  });
  // ASBMR 2016, Adler, JBMR 31:16: a high risk score, which no entry of the notes can weigh.
  test('what the notes cannot answer is asked of the prescriber, and never counts as met or not met', () => {
    expect(under([{ id: 'falls', asks: 'falls often', ...ours }])).toMatchObject([
      { asks: 'falls often', is: 'cannot say', says: expect.stringContaining('the prescriber') },
    ]);
  });
});

describe('what a decision would lead to', () => {
  const said = (choice: ReviewChoice, text = three) => consequencesOf(sheet(text).basis, choice).join(' ');
  test('carry on where the regimen recalls nobody (single dose for Paget’s disease) names no recall', () => {
    const { basis } = sheet(three);
    const says = consequencesOf({ ...basis, recallLeadDays: undefined }, { outcome: 'carry on', toDoses: 6 }).join(' ');
    expect(says).toContain('nobody is recalled under this regimen: it needs a date of its own');
    expect(says).not.toContain('the recall begins');
  });
  test('carry on', () => {
    expect(said({ outcome: 'carry on', toDoses: 6 })).toContain(
      'Dose 4 of 6 has been due since 26 Mar 2026; the recall begins now.',
    );
    expect(said({ outcome: 'carry on', toDoses: 3 })).toContain('the review stays open');
  });
  test('a booked place is not forgotten when no dose is to be given', () => {
    const booked = `${three}\n1 May 2026  place 2 on 4 Jun 2026 at 09:00, unit thornbeck, session thornbeck-2026-06-04`;
    for (const choice of [
      { outcome: 'planned break', reviewOn: day('2028-03-26') },
      { outcome: 'other treatment', to: 'denosumab', dueOn: day('2026-07-01') },
      { outcome: 'stop' },
    ] as const)
      expect(said(choice, booked)).toContain('A place is booked on 4 Jun 2026: it has to be given up.');
    expect(said({ outcome: 'carry on', toDoses: 6 }, booked)).not.toContain('given up');
    expect(said({ outcome: 'stop' })).not.toContain('given up');
  });
  test('a new course keeps the lifetime count', () =>
    expect(said({ outcome: 'new course', plannedDoses: 3 })).toContain('3 doses in all so far stay counted.'));
  test('a planned break: three years from the last infusion by default, five at the longest', () => {
    const { basis } = sheet(three);
    expect([basis.breakUntil, basis.breakLatest]).toEqual([day('2028-03-26'), day('2030-03-26')]);
    expect(said({ outcome: 'planned break', reviewOn: day('2028-03-26') })).toContain(
      'until the review on 26 Mar 2028',
    );
  });
  test("a regimen's own number stands in place of the protocol's", () => {
    const [regimen] = teachingSheet.regimens;
    if (regimen === undefined) throw new Error('the teaching sheet has no regimen');
    const sourced = { value: '3', source: 'for this test', status: 'local decision' as const };
    const made = protocolFrom({
      ...teachingSheet,
      regimens: [{ ...regimen, numbers: { maxConsecutiveDoses: sourced } }],
    });
    if (!('protocol' in made)) throw new Error('the sheet has an empty number');
    const record = recordOfText(three);
    expect(reviewSheetOf(record, made.protocol, day('2026-06-01')).basis).toMatchObject({
      needsSpecialist: true,
      maxConsecutive: 3,
    });
  });
  test('at six in a row a specialist, and the basis says so', () => {
    const six = ['2020', '2021', '2022'].map((year) => dose(`14 Mar ${year}`)).join('\n');
    expect(sheet(`${six}\n${three}`).basis).toMatchObject({ needsSpecialist: true, consecutive: 6 });
    expect(sheet(three).basis.needsSpecialist).toBe(false);
  });
});
