/** What a family doctor must find in the letter; the list of contents is common practice, no source. */
import { day } from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { type FamilyDoctorFacts, familyDoctorLetter, letterHtml, letterText } from '../src/index.ts';

const givenFacts: FamilyDoctorFacts = {
  language: 'en-GB' as const,
  unit: { name: 'Thornbeck Day Unit', telephone: '01632 960100', demo: true },
  today: day('2027-01-28'),
  patient: { name: 'Wilhelmina Arkwright-Poe', born: '2 June 1941', number: '999 204 7713' },
  familyDoctor: 'Dr A. Penrose',
  signedBy: { name: 'Imre Sandoval', role: 'nurse in charge' },
  outcome: {
    kind: 'given',
    medicine: 'zoledronic acid 5 mg',
    injectedInto: undefined,
    on: day('2027-01-28'),
    doseNumber: 2,
    plannedDoses: 3,
    batch: 'PA-2391',
    expires: '30 Apr 2028',
    minutes: 30,
    partMilliliters: undefined,
    nextDue: day('2028-01-28'),
    bloodsBetween: { from: day('2027-12-06'), until: day('2028-01-25') },
    reviewNext: false,
  },
  reactions: [],
  protocolVersion: 'thornbeck-3',
};
const text = (facts: FamilyDoctorFacts): string => letterText(familyDoctorLetter(facts));

describe('the letter after a review of the course', () => {
  it('names the decision, who made it, why, what follows and what to tell us', () => {
    const letter = text({
      ...givenFacts,
      outcome: {
        kind: 'reviewed',
        on: day('2027-01-28'),
        decided: 'a planned break until 28 Jan 2030, sooner if: a fracture',
        decidedBy: 'Halina Voss, specialist',
        reason: 'three doses given, T -2.1',
        follows: ['No dose, and nobody is recalled, until the review on 28 Jan 2030.'],
      },
    });
    for (const wanted of [
      'on Thursday 28 January 2027',
      'Decision: a planned break until 28 Jan 2030, sooner if: a fracture',
      'Decided by: Halina Voss, specialist',
      'Reason: three doses given, T -2.1',
      'until the review on 28 Jan 2030.',
      'a new fracture, new back pain, lost height',
      'Thornbeck Day Unit, 01632 960100',
    ]) {
      expect(letter).toContain(wanted);
    }
    expect(letter).not.toMatch(/yearly infusion|holiday/);
  });
});

describe('the letter after a dose', () => {
  it('names dose, batch, next due date, who calls, and when bloods are needed', () => {
    const letter = text(givenFacts);
    for (const wanted of [
      'Dose: 2 of 3 planned',
      'Batch: PA-2391, expires 30 Apr 2028',
      'from Friday 28 January 2028',
      'between Mon 6 Dec 2027 and Tue 25 Jan 2028',
      'Thornbeck Day Unit, 01632 960100. You need not arrange',
    ]) {
      expect(letter).toContain(wanted);
    }
  });

  it('says what not to prescribe, to go on with calcium and vitamin D, and what to look out for', () => {
    const letter = text(givenFacts);
    expect(letter).toContain('do not prescribe another bone medicine (bisphosphonate, denosumab or other)');
    expect(letter).toContain('continue calcium and vitamin D');
    for (const sign of ['tingling', 'light-shy eye', 'thigh, hip or groin', 'socket']) expect(letter).toContain(sign);
  });

  it('promises no next date after the planned doses: a review comes first', () => {
    const letter = text({
      ...givenFacts,
      outcome: { ...givenFacts.outcome, kind: 'given', reviewNext: true } as FamilyDoctorFacts['outcome'],
    });
    expect(letter).toContain('a prescriber reviews the treatment before any further dose');
    expect(letter).not.toContain('Next dose due');
  });

  it('says of a part dose how much was given and that a prescriber decides', () => {
    const letter = text({
      ...givenFacts,
      outcome: { ...givenFacts.outcome, kind: 'given', partMilliliters: 40 } as FamilyDoctorFacts['outcome'],
    });
    expect(letter).toContain('only 40 mL was given');
    expect(letter).not.toContain('Next dose due');
  });

  it('never tells anyone to leave out a water tablet', () => {
    expect(text(givenFacts).toLowerCase()).not.toMatch(/water tablet|diuretic/);
  });
});

describe('the letter after an injection', () => {
  const injected = {
    ...givenFacts,
    outcome: {
      ...(givenFacts.outcome as Extract<FamilyDoctorFacts['outcome'], { kind: 'given' }>),
      medicine: 'denosumab 60 mg',
      injectedInto: 'left arm',
      plannedDoses: undefined,
      minutes: undefined,
    },
  };
  it('names what was given and how, never the drip', () => {
    const letter = text(injected);
    expect(letter).toContain('Your patient was given denosumab 60 mg on');
    expect(letter).toContain('Medicine: denosumab 60 mg, injected (left arm)');
    expect(letter).not.toMatch(/zoledronic|infusion|Running time|flu-like|\bof 0\b|undefined/);
  });
  // Safety page, "denosumab is a promise with a date".
  it('says that a late dose breaks spines, and only where it does', () => {
    expect(text(injected)).toMatch(/wears off when a dose is late.*Never stop it without a plan/);
    expect(text(givenFacts)).not.toMatch(/wears off/);
    expect(text({ ...injected, outcome: { ...injected.outcome, medicine: 'romosozumab 210 mg' } })).toMatch(/stroke/);
  });
});

describe('the letter after a put-off', () => {
  it('says why and what happens next', () => {
    const letter = text({
      ...givenFacts,
      outcome: {
        kind: 'put off',
        on: day('2027-01-28'),
        medicine: 'denosumab 60 mg',
        reason: 'bloods out of date',
        nextStep: 'bloods at the surgery, new place from 8 February',
      },
    });
    expect(letter).toContain('for denosumab 60 mg. It was not given.');
    expect(letter).toContain('Reason: bloods out of date');
    expect(letter).toContain('bloods at the surgery');
  });
});

describe('as a document', () => {
  it('has a language, a title and headings, loads nothing, and marks the demo', () => {
    const html = letterHtml(familyDoctorLetter(givenFacts));
    expect(html).toMatch(/^<!doctype html><html lang="en-GB">/);
    expect(html).toContain('<title>Letter to the family doctor, 28 Jan 2027</title>');
    expect(html).toContain('<h1>Wilhelmina Arkwright-Poe');
    expect(html).toContain('nobody here is real');
    expect(html).not.toMatch(/src=|href=|url\(/);
  });

  it('is written in American English where the unit writes so', () => {
    const text = letterText(familyDoctorLetter({ ...givenFacts, language: 'en-US' }));
    expect(text).toMatch(/given zoledronic acid 5 mg on \w+, \w+ \d+, \d{4}\./);
    expect(text).toMatch(/Sincerely/);
    expect(text).not.toMatch(/bloods|yours sincerely|light-shy| \d{1,2} (?:January|February|November|December) \d{4}/i);
  });

  it('writes names as text, never as markup', () => {
    const html = letterHtml(
      familyDoctorLetter({ ...givenFacts, patient: { ...givenFacts.patient, name: '<b>X</b>' } }),
    );
    expect(html).not.toContain('<b>X</b>');
  });
});
