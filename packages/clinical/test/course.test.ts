/** Counts of doses, due dates, reviews and recall: docs/readiness.md R6, R7 and worked cases 7 and 9; recall numbers of the teaching protocol. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type SubjectRecord,
  addMonths,
  courseOf,
  day,
  entriesFromDrafts,
  everyDay,
  givenDoseInWords,
  nextDoseInWords,
  parseLedger,
  plainDate,
  recordOf,
  shortDate,
  teaching,
  usableFrom,
  usualPerson,
} from '@twelvemonth/clinical';

function notes(text: string): SubjectRecord {
  const read = parseLedger(`person  female, born 1941-06-02\n${text}`);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2020-01-01T08:00:00.000Z' }));
}
const course = (text: string, date: string) => courseOf(notes(text), teaching, day(date));
const dose = (date: string, more = '') => `${date}  dose zoledronic acid 5 mg, this service${more}`;

describe('the three counts', () => {
  const restarted = `
${dose('14 Mar 2019')}
${dose('14 Mar 2020')}
${dose('14 Mar 2021')}
1 Apr 2021  course review planned break until 1 Apr 2024, triggers "a fracture", "three given"
1 Apr 2024  course review new course of 3 doses, "new wrist fracture"
${dose('10 May 2024')}
`;
  test('a restart opens a new course; the lifetime count stays', () => {
    expect(course(restarted, '2024-06-01')).toMatchObject({
      lifetime: 4,
      consecutive: 1,
      nextDoseNumber: 2,
      firstTimer: false,
    });
    expect(nextDoseInWords(course(restarted, '2024-06-01'))).toBe('dose 2 of 3');
  });
  test('before the break it was three of three, and a fourth would have been beyond the plan', () => {
    expect(course(restarted, '2021-03-20')).toMatchObject({
      lifetime: 3,
      consecutive: 3,
      review: { because: 'planned doses given' },
    });
    expect(nextDoseInWords(course(restarted, '2021-03-20'))).toBe('dose 4, beyond the 3 planned');
  });
  test('a dose that was given keeps its own number', () => {
    const { doses, ...rest } = course(restarted, '2021-03-20');
    expect(doses.map((one) => givenDoseInWords({ doses, ...rest }, one))).toEqual([
      'dose 1 of 3',
      'dose 2 of 3',
      'dose 3 of 3',
    ]);
  });
  test('denosumab, the 4 mg product and a withdrawn dose count for nothing', () => {
    const text = `
1 Jan 2024  dose denosumab 60 mg, elsewhere
1 Jan 2025  dose zoledronic acid 4 mg, ward
2 Jan 2026  #d3 dose zoledronic acid 5 mg, ward
3 Jan 2026  withdraw #d3, "another person's dose"`;
    expect(course(text, '2026-06-01')).toMatchObject({
      lifetime: 0,
      firstTimer: true,
      due: undefined,
      nextDoseNumber: 1,
    });
  });
  test('tablet years are exposure too', () => {
    const text =
      '1 Feb 2020  medicine name "alendronic acid 70 mg weekly", sort bisphosphonate tablet, stopped on 1 Feb 2022';
    expect(course(text, '2026-01-01').tabletDays).toBe(731);
    expect(course(text, '2021-02-01').tabletDays).toBe(366);
  });
});

describe('due', () => {
  test('the same day next year, counted from the dose itself', () => {
    expect(
      shortDate(course(`${dose('14 Mar 2024')}\n${dose('2 Apr 2025')}`, '2025-05-01').due ?? day('1970-01-01')),
    ).toBe('2 Apr 2026');
  });
  test('worked case 7: a dose on 29 February is due on 28 February', () => {
    expect(plainDate(course(dose('29 Feb 2024'), '2024-03-01').due ?? day('1970-01-01'))).toBe('2025-02-28');
  });
  test("a prescription's own interval outranks the regimen", () => {
    const text = `${dose('14 Mar 2026')}\n15 Mar 2026  prescription zoledronic-acid-yearly from 15 Mar 2026 to 14 Mar 2028, interval 18 months "five doses given"`;
    expect(plainDate(course(text, '2026-04-01').due ?? day('1970-01-01'))).toBe('2027-09-14');
  });
  test('worked case 9: after the planned doses in review, not due; the anniversary is still told', () => {
    const after = course(`${dose('1 Sep 2023')}\n${dose('1 Sep 2024')}\n${dose('1 Sep 2025')}`, '2026-11-25');
    expect(after).toMatchObject({
      due: undefined,
      recall: undefined,
      review: { because: 'planned doses given', says: '3 doses of 3 given: review before another' },
    });
    expect(plainDate(after.anniversary ?? day('1970-01-01'))).toBe('2026-09-01');
  });
  test('a review that says carry on makes it due again', () => {
    const text = `${dose('1 Sep 2023')}\n${dose('1 Sep 2024')}\n${dose('1 Sep 2025')}\n1 Oct 2025  course review carry on to 6 doses, "hip T -2.8"`;
    expect(course(text, '2026-01-01')).toMatchObject({
      planned: { count: 6, from: 'review' },
      review: undefined,
      due: day('2026-09-01'),
    });
  });
});

describe('on hold', () => {
  const given = `${dose('14 Mar 2024')}\n${dose('14 Mar 2025')}\n${dose('14 Mar 2026')}`;
  test.each([
    'course review planned break until 14 Mar 2029, triggers "a fracture", ok',
    'course review other treatment denosumab due 1 May 2027, ok',
  ])('%s: nothing is due and nobody is recalled', (line) => {
    expect(course(`${given}\n1 Apr 2026  ${line}`, '2027-01-20')).toMatchObject({
      due: undefined,
      recall: undefined,
      anniversary: day('2027-03-14'),
    });
  });
});

describe('part doses', () => {
  const part = '1 Sep 2026  #d1 dose zoledronic acid 5 mg, this service, part 60 mL';
  test('a prescriber has to say whether one counts', () => {
    expect(course(part, '2026-09-02')).toMatchObject({ lifetime: 0 });
    expect(course(part, '2026-09-02').undecidedPartDoses).toHaveLength(1);
  });
  test.each([
    ['counts', 1],
    ['does not count', 0],
  ])('decided: it %s', (says, lifetime) => {
    const decided = course(`${part}\n2 Sep 2026  decision part dose ${says} about #d1, "60 of 100 mL"`, '2026-09-03');
    expect(decided).toMatchObject({ lifetime, undecidedPartDoses: [], due: day('2027-09-01') });
  });
});

describe('review', () => {
  const one = dose('14 Mar 2025');
  test.each([
    ['2 Feb 2026  fracture hip', 'fracture on treatment'],
    ['2 Feb 2026  fracture spine', 'fracture on treatment'],
    ['2 Feb 2026  fracture thigh shaft', 'fracture on treatment'],
    ['1 Feb 2026  fracture ribs\n2 Feb 2026  fracture upper arm', 'fracture on treatment'],
    ['2 Feb 2026  symptom back pain', 'symptom on treatment'],
    ['2 Feb 2026  symptom height loss', 'symptom on treatment'],
    ['1 Feb 2026  fracture wrist\n2 Feb 2026  fracture shoulder', 'fracture on treatment'],
  ])('%s opens one (safety page: course)', (line, because) => {
    expect(course(`${one}\n${line}`, '2026-03-01').review?.because).toBe(because);
  });
  test.each([
    '2 Feb 2026  fracture wrist',
    '2 Feb 2026  fracture ribs',
    '1 Feb 2026  fracture ribs\n2 Feb 2026  fracture other, bone toe',
    '2 Feb 2024  fracture hip',
    '2 Feb 2026  symptom tingling or cramps',
  ])('%s opens none', (line) => {
    expect(course(`${one}\n${line}`, '2026-03-01').review).toBeUndefined();
  });
  test('a review on or after the event settles it; one before does not', () => {
    const fracture = `${one}\n2 Feb 2026  fracture hip`;
    expect(
      course(`${fracture}\n2 Feb 2026  course review carry on to 3 doses, "seen"`, '2026-03-01').review,
    ).toBeUndefined();
    expect(
      course(`${fracture}\n1 Feb 2026  course review carry on to 3 doses, "seen"`, '2026-03-01').review,
    ).toBeDefined();
  });
  test('a cleared symptom opens none', () => {
    expect(
      course(`${one}\n2 Feb 2026  #s1 symptom back pain\n9 Feb 2026  symptom cleared #s1 "X-ray clear"`, '2026-03-01')
        .review,
    ).toBeUndefined();
  });
});

describe('recall', () => {
  test('begins 70 days before the due date, with blood days that keep the sample in date', () => {
    const { recall, due } = course(dose('14 Mar 2026'), '2026-06-01');
    expect(plainDate(due ?? day('1970-01-01'))).toBe('2027-03-14');
    expect(plainDate(recall?.from ?? day('1970-01-01'))).toBe('2027-01-03');
    // Bloods valid 56 days from the sample, usable 3 days after it (teaching protocol).
    expect([recall?.bloods?.from, recall?.bloods?.until].map((on) => plainDate(on ?? day('1970-01-01')))).toEqual([
      '2027-01-17',
      '2027-03-11',
    ]);
  });
  test('whatever the dose day, a sample between those days counts on the due date', () => {
    fc.assert(
      fc.property(fc.integer({ min: 15_000, max: 25_000 }), (number) => {
        const given = number as ReturnType<typeof day>;
        const { recall, due } = courseOf(notes(dose(shortDate(given))), teaching, given);
        expect(due).toBe(addMonths(given, 12));
        if (due === undefined || recall?.bloods === undefined) throw new Error('no recall');
        expect(due - recall.bloods.from).toBeLessThanOrEqual(teaching.number.bloodsValidDays);
        expect(
          usableFrom(everyDay, recall.bloods.until, { days: teaching.number.resultDays, counted: 'calendar days' }),
        ).toBeLessThanOrEqual(due);
      }),
      { seed: 20_261_125, numRuns: 200 },
    );
  });
});
