/** A letter from draft to answer: what waits for whom, what chases, and what may not happen. */
import { describe, expect, test } from 'vitest';
import { type Fact, type LetterSheet, day, lettersOut, noContactWanted, taskRows } from '@twelvemonth/clinical';
import { DayUnit, type Person } from './decide/a-day-unit.ts';

const sheet: LetterSheet = {
  language: 'en-GB',
  version: 'letters-1',
  title: 'A letter',
  from: ['Thornbeck Day Unit'],
  to: ['Dana'],
  dated: 'Tuesday 24 November 2026',
  about: '',
  blocks: [{ kind: 'paragraph', text: 'We have a place for you.' }],
  closing: ['Yours sincerely'],
  foot: 'letters-1',
  demo: true,
};
const draft = { to: 'patient', about: 'invitation', sheet };
const letter = { ...draft, version: 'letters-1', text: 'We have a place for you.' };

const unit = (): DayUnit => new DayUnit().register();
const tried = (of: DayUnit, who: Person, kind: Fact['kind'], body: unknown): string[] =>
  of.line(who, kind, body).map(({ name }) => name);
const out = (of: DayUnit) => lettersOut(of.patient());
const tasks = (of: DayUnit): string[] =>
  taskRows(of.patient(), undefined, day(of.today()))
    .map(({ columns }) => String(columns['task']))
    .filter((name) => name.endsWith('the letter'));
const last = (of: DayUnit): string => of.patient().all.findLast(({ kind }) => kind.startsWith('letter'))?.id ?? '';

describe('from draft to post', () => {
  test('a clerk drafts, a nurse signs, a clerk sends: each waits for the next', () => {
    const here = unit();
    here.write('bettina', 'letter-drafted', draft);
    expect(out(here)).toMatchObject([{ waitsFor: 'signature', letter: undefined }]);
    expect(tasks(here)).toEqual(['sign the letter']);
    here.write('imre', 'letter', { ...letter, draft: last(here) });
    expect(out(here)).toMatchObject([{ waitsFor: 'sending' }]);
    expect(tasks(here)).toEqual(['send the letter']);
    here.write('bettina', 'letter-sent', { letter: last(here), by: 'post' });
    expect(out(here)).toMatchObject([{ waitsFor: undefined }]);
    expect(tasks(here)).toEqual([]);
  });
  test('a clerk does not sign', () => {
    const here = unit();
    expect(tried(here, 'bettina', 'letter', letter)).toContain('not-yours-to-do');
  });
  test('nothing is signed or sent twice', () => {
    const here = unit();
    here.write('bettina', 'letter-drafted', draft);
    const drafted = last(here);
    here.write('imre', 'letter', { ...letter, draft: drafted });
    expect(tried(here, 'imre', 'letter', { ...letter, draft: drafted })).toContain('step-already-done');
    const signed = last(here);
    here.write('bettina', 'letter-sent', { letter: signed, by: 'post' });
    expect(tried(here, 'bettina', 'letter-sent', { letter: signed, by: 'e-mail' })).toContain('step-already-done');
  });
  test('a letter that nobody wrote cannot be sent or answered', () => {
    const here = unit();
    for (const [kind, body] of [
      ['letter-sent', { letter: 'none', by: 'post' }],
      ['letter-answered', { outcome: 'answered', letter: 'none', words: 'yes' }],
    ] as const)
      expect(tried(here, 'bettina', kind, body)).toContain('no-such-entry');
  });
  test('a letter kept as text, as older ones are, went out as it was signed', () => {
    const here = unit();
    const { sheet: _sheet, ...text } = letter;
    here.write('imre', 'letter', text);
    expect(out(here)).toMatchObject([{ waitsFor: undefined }]);
  });
});

describe('an answer that does not come', () => {
  const request = { ...letter, to: 'dentist', about: 'request', chaseOn: '2026-12-08' };
  const sent = (): DayUnit => {
    const here = unit();
    here.write('imre', 'letter', request);
    here.write('bettina', 'letter-sent', { letter: last(here), by: 'post' });
    return here;
  };
  const signed = (of: DayUnit): string => out(of)[0]?.letter?.first ?? '';
  test('is chased on its day, again on the day then named, until it is there', () => {
    const here = sent();
    expect(out(here)).toMatchObject([{ waitsFor: 'answer' }]);
    expect(tasks(here)).toEqual(['chase the letter']);
    here.at('2026-12-08T09:00:00.000Z');
    const again = { outcome: 'asked again', letter: signed(here), chaseOn: '2026-12-15' };
    here.write('bettina', 'letter-answered', again);
    expect(out(here)).toMatchObject([{ waitsFor: 'answer' }]);
    here.write('bettina', 'letter-answered', { outcome: 'answered', letter: signed(here), words: 'teeth in order' });
    expect(out(here)).toMatchObject([{ waitsFor: undefined }]);
    expect(tasks(here)).toEqual([]);
  });
});

describe('who must not be written to', () => {
  test('a death stops every letter at once', () => {
    const here = unit();
    here.write('bettina', 'letter-drafted', draft);
    here.write('imre', 'died', { source: 'family doctor' });
    expect(tasks(here)).toEqual([]);
    expect(tried(here, 'imre', 'letter', { ...letter, draft: last(here) })).toContain('has-died');
  });
  test('a no to all contact written on the day of the dose, after it, is heard; one written before was overtaken by it', () => {
    const dose = ['dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service' }] as const;
    const no = ['refusal', { to: 'all contact', words: 'never again' }] as const;
    const isHeard = (...written: readonly (typeof dose | typeof no)[]): boolean => {
      const here = unit();
      here.write('imre', 'triage', { outcome: 'accepted' });
      for (const [kind, body] of written) here.write('imre', kind, body);
      return noContactWanted(here.patient(), day(here.today())) !== undefined;
    };
    expect(isHeard(dose, no)).toBe(true);
    expect(isHeard(no, dose)).toBe(false);
    expect(isHeard(dose)).toBe(false);
  });
  test('a no to all contact stops letters to the person, not to the family doctor', () => {
    const here = unit();
    here.write('imre', 'refusal', { to: 'all contact', words: 'leave me be' });
    expect(tried(here, 'imre', 'letter', letter)).toContain('no-contact-wanted');
    expect(tried(here, 'bettina', 'letter-drafted', draft)).toContain('no-contact-wanted');
    expect(tried(here, 'imre', 'letter', { ...letter, to: 'family doctor', about: 'no answer' })).toEqual([]);
  });
});
