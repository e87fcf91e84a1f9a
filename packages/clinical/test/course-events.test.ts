/**
 * What opens a review of the course at once, on treatment and during a planned break: docs/readiness.md R7, which follows the
 * safety page ("a new hip or spine fracture, a second fracture, new back pain or height loss on treatment opens a review now")
 * and, for a break, ASBMR 2016 (Adler, JBMR 31:16) and NOGG 2021 (`from memory`): a fracture, loss of density beyond the least
 * significant change, markers up, a steroid.
 */
import { describe, expect, test } from 'vitest';
import {
  type SubjectRecord,
  courseOf,
  day,
  entriesFromDrafts,
  everyDay,
  parseLedger,
  readiness,
  recordOf,
  standingOf,
  teaching,
  usualPerson,
  viewOf,
} from '@twelvemonth/clinical';

function notes(text: string): SubjectRecord {
  const read = parseLedger(`person  female, born 1941-06-02\n${text}`);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2019-01-01T08:00:00.000Z' }));
}
const dose = (date: string) => `${date}  dose zoledronic acid 5 mg, this service`;
const reviewOn = (text: string, date: string) => courseOf(notes(text), teaching, day(date)).review;

describe('on treatment', () => {
  const one = dose('14 Mar 2025');
  test('a new fracture seen only on a picture of the spine', () => {
    expect(reviewOn(`${one}\n2 Feb 2026  spine imaging MRI new fracture`, '2026-03-01')?.says).toBe(
      'new spine fracture on imaging on treatment, 2 Feb 2026',
    );
  });
  test.each(['no fracture', 'old fracture only', 'not conclusive'])('spine imaging: %s opens none', (found) =>
    expect(reviewOn(`${one}\n2 Feb 2026  spine imaging MRI ${found}`, '2026-03-01')).toBeUndefined(),
  );
  test.each([
    ['160 cm', '158 cm', '2.0 cm of height lost on treatment, 2 Feb 2026'],
    ['160 cm', '158.1 cm', undefined],
    // 63 in = 160.02 cm, 62.2 in = 157.988 cm: 2.032 cm (an inch is 2.54 cm by definition).
    ['63 in', '62.2 in', '2.0 cm of height lost on treatment, 2 Feb 2026'],
    // 62.3 in = 158.242 cm: 1.778 cm.
    ['63 in', '62.3 in', undefined],
  ])('measured %s before, %s now', (before, now, says) => {
    const text = `1 Mar 2025  height ${before} measured now\n${one}\n2 Feb 2026  height ${now} measured now`;
    expect(reviewOn(text, '2026-03-01')?.says).toBe(says);
  });
  test('a remembered height loses nothing, nor does one measured before treatment', () => {
    expect(
      reviewOn(`${one}\n1 Mar 2025  height 165 cm peak adult\n2 Feb 2026  height 158 cm measured now`, '2026-03-01'),
    ).toBeUndefined();
    expect(
      reviewOn(`1 Mar 2024  height 165 cm measured now\n1 Mar 2025  height 158 cm measured now\n${one}`, '2026-03-01'),
    ).toBeUndefined();
  });
  test('the verdict names the entry it rests on', () => {
    const record = notes(`${one}\n2 Feb 2026  #f fracture hip, treatment repaired`);
    const context = { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: everyDay };
    const view = viewOf(readiness(record, context, day('2026-03-01')), record, context);
    const { working } = view.requirements.find(({ id }) => id === 'course') ?? {};
    expect(working?.inputs).toContainEqual(
      expect.objectContaining({ label: 'what happened', entry: 'f', on: '2026-02-02' }),
    );
  });
  test('a review on or after the day settles it', () => {
    const text = `1 Mar 2025  height 160 cm measured now\n${one}\n2 Feb 2026  height 157 cm measured now\n3 Feb 2026  course review carry on to 3 doses, "seen, spine pictures clear"`;
    expect(reviewOn(text, '2026-03-01')).toBeUndefined();
  });
  const review = '3 Feb 2026  #r course review carry on to 3 doses, "seen"';
  test.each(['fracture hip', 'symptom back pain', 'spine imaging MRI new fracture'])(
    '%s dated before a review but written after it has been seen by nobody',
    (what) => {
      const told = `2 Feb 2026  #f ${what}`;
      expect(reviewOn(`${one}\n${told}\n${review}`, '2026-03-01')).toBeUndefined();
      expect(reviewOn(`${one}\n${review}\n${told}`, '2026-03-01')?.since).toBe(day('2026-02-02'));
      const reworded = `${one}\n${review}\n${told}\n3 Feb 2026  course review carry on to 3 doses, "seen, all of it" corrects #r`;
      expect(reviewOn(reworded, '2026-03-01')?.since, 'a review reworded is not a review').toBe(day('2026-02-02'));
      expect(
        reviewOn(`${one}\n${review}\n${told}\n4 Feb 2026  course review carry on to 3 doses, "looked"`, '2026-03-01'),
      ).toBeUndefined();
    },
  );
  test('a fracture corrected to the hip after the review has not been seen as one', () => {
    const text = `${one}\n2 Feb 2026  #f fracture other\n${review}\n2 Feb 2026  fracture hip corrects #f`;
    expect(reviewOn(text, '2026-03-01')?.because).toBe('fracture on treatment');
  });
  test('height lost is seen once both measurements were in the notes', () => {
    const tall = '1 Mar 2025  height 160 cm measured now';
    const small = '2 Feb 2026  height 157 cm measured now';
    expect(reviewOn(`${tall}\n${one}\n${small}\n${review}`, '2026-03-01')).toBeUndefined();
    expect(reviewOn(`${one}\n${small}\n${review}\n${tall}`, '2026-03-01')?.because).toBe('symptom on treatment');
  });
});

describe('during a planned break', () => {
  const paused = `
1 Feb 2020  bone density total hip 0.700 g/cm2, scanner "T1", side left, T -2.0
1 Feb 2020  bone density femoral neck 0.600 g/cm2, scanner "T1", side left
1 Feb 2020  bone density lumbar spine 0.850 g/cm2, scanner "T1", least change 0.0277 g/cm2
1 Feb 2020  #c1 CTX 200 ng/L
2 Feb 2020  signed #c1
${dose('14 Mar 2018')}
${dose('14 Mar 2019')}
${dose('14 Mar 2020')}
1 Apr 2021  course review planned break until 14 Mar 2023, triggers "a fracture", "three given", by another prescriber`;
  const during = (line: string, date = '2022-06-01') => reviewOn(`${paused}\n${line}`, date);
  test('nothing: no review until its end, then one', () => {
    expect(during('', '2023-03-13')).toBeUndefined();
    expect(during('', '2023-03-14')?.because).toBe('planned break over');
  });
  test.each([
    '2 Feb 2022  fracture wrist',
    '2 Feb 2022  fracture hip',
    '2 Feb 2022  symptom back pain',
    '2 Feb 2022  symptom height loss',
    '2 Feb 2022  spine imaging X-ray new fracture',
    '2 Feb 2022  medicine name prednisolone, sort steroid, prednisolone mg per day "7.5"',
    '2 Feb 2022  medicine name prednisolone, sort steroid',
    '2 Feb 2022  medicine name prednisolone, sort steroid, prednisolone mg per day "20", stopped on 9 Feb 2022',
    // ISCD 2019 least significant change of the total hip, 5.0 %: 0.700 x 0.05 = 0.035.
    '2 Feb 2022  bone density total hip 0.665 g/cm2, scanner "t1 ", side left',
    // Femoral neck 6.9 %: 0.600 x 0.069 = 0.0414.
    '2 Feb 2022  bone density femoral neck 0.5586 g/cm2, scanner "T1", side left',
    // The report's own least significant change, 0.0277 g/cm2 (2.77 x 0.010, ISCD glossary).
    '2 Feb 2022  bone density lumbar spine 0.8223 g/cm2, scanner "T1", least change 0.0277 g/cm2',
    // ESCEO 2009: 30 % is more than chance.
    '2 Feb 2022  #c2 CTX 260 ng/L\n3 Feb 2022  signed #c2',
    '2 Feb 2022  #c2 CTX 0.26 ug/L\n3 Feb 2022  signed #c2',
  ])('%s reopens it at once', (line) => {
    expect(during(line)).toMatchObject({ because: 'during the break', since: day('2022-02-02') });
    expect(
      standingOf(
        notes(
          `1 Jan 2018  referral from "a ward", reason "hip fracture", tier routine, unit thornbeck\n2 Jan 2018  triage outcome accepted\n${paused}\n${line}`,
        ),
        teaching,
        day('2022-06-01'),
      ),
    ).toMatchObject({ standing: 'in review', owner: 'prescriber', since: day('2022-02-02') });
  });
  test.each([
    // Before the first dose.
    '2 Feb 2018  fracture hip',
    '2 Feb 2022  fracture other',
    '2 Feb 2022  symptom jaw pain',
    '2 Feb 2022  #s1 symptom back pain\n9 Feb 2022  symptom cleared #s1 "muscular"',
    '2 Feb 2022  medicine name prednisolone, sort steroid, prednisolone mg per day "7.49"',
    '2 Feb 2022  bone density total hip 0.6651 g/cm2, scanner "T1", side left',
    '2 Feb 2022  bone density total hip 0.600 g/cm2, scanner "T2", side left',
    '2 Feb 2022  bone density total hip 0.600 g/cm2, scanner "T1", side right',
    '2 Feb 2022  bone density total hip <0.600 g/cm2, scanner "T1", side left',
    '2 Feb 2022  bone density total hip 0.800 g/cm2, scanner "T1", side left',
    '2 Feb 2022  bone density lumbar spine 0.8224 g/cm2, scanner "T1", least change 0.0277 g/cm2',
    '2 Feb 2022  #c2 CTX 259 ng/L\n3 Feb 2022  signed #c2',
    '2 Feb 2022  CTX 500 ng/L',
    '2 Feb 2022  #p1 P1NP 90 ug/L\n3 Feb 2022  signed #p1',
  ])('%s does not', (line) => expect(during(line)).toBeUndefined());
  test.each([
    'fracture wrist',
    'symptom back pain',
    'medicine name prednisolone, sort steroid, prednisolone mg per day "7.5"',
    'bone density total hip 0.665 g/cm2, scanner "T1", side left',
  ])('%s, dated before the review that began the break: seen by it only if it was in the notes', (what) => {
    expect(during(`2 Feb 2021  ${what}`)).toMatchObject({ because: 'during the break', since: day('2021-02-02') });
    const inTime = paused.replace('\n1 Apr 2021', `\n2 Feb 2021  ${what}\n1 Apr 2021`);
    expect(reviewOn(inTime, '2022-06-01')).toBeUndefined();
  });
  test('a review after it decides anew', () => {
    expect(
      during(
        '2 Feb 2022  fracture wrist\n5 Feb 2022  course review new course of 3 doses, "fracture", by a specialist',
      ),
    ).toBeUndefined();
  });
});
