/**
 * A fracture of the thigh shaft holds as a suspected atypical one (safety page: nobody makes an exception for it; site: ASBMR task
 * force 2013, doi 10.1002/jbmr.1998, from memory), and a bone nobody named may be that one. Teaching protocol.
 */
import { describe, expect, test } from 'vitest';
import {
  type BodyOfKind,
  addDays,
  evidenceOf,
  readiness,
  everyDay,
  requirements,
  teaching,
} from '@twelvemonth/clinical';
import { type Line, asked, at, born, clear, personOf } from './person.ts';

type Fracture = BodyOfKind<'fracture'>;
const broke = (body: Partial<Fracture> & Pick<Fracture, 'site'>, on = '2026-03-02', id = 'broken'): Line =>
  at(on, 'fracture', { dateKnown: true, ...body }, id);
const decided = (about = 'broken'): Line =>
  at('2026-04-01', 'prescriber-decision', {
    question: 'thigh fracture not atypical',
    about,
    reason: 'spiral, fell from a ladder; film seen with orthopaedics',
  });
const judge = (...lines: Line[]) => requirements.symptoms.judge(evidenceOf(personOf(lines), asked), teaching);
const verdict = (...lines: Line[]) => judge(...lines).on(asked).verdict;

describe('a fracture of the thigh', () => {
  test('of the shaft holds every date until a prescriber has decided about that entry', () => {
    const held = judge(broke({ site: 'thigh shaft' }));
    expect([asked, addDays(asked, 1000)].map((day) => held.on(day).verdict)).toEqual(['not ready', 'not ready']);
    expect(held.on(asked).cause).toBe('suspected atypical fracture of the thigh');
    expect(verdict(broke({ site: 'thigh shaft' }), decided())).toBe('ready');
    expect(verdict(broke({ site: 'thigh shaft' }), decided('another'))).toBe('not ready');
  });
  test('before any dose, years ago, or on a day nobody knows: it holds all the same', () => {
    expect(verdict(broke({ site: 'thigh shaft' }, '2001-01-01'))).toBe('not ready');
    expect(verdict(broke({ site: 'thigh shaft', dateKnown: false }))).toBe('not ready');
  });
  test('a second one needs a decision of its own', () =>
    expect(
      verdict(broke({ site: 'thigh shaft' }), decided(), broke({ site: 'thigh shaft' }, '2026-09-01', 'second')),
    ).toBe('not ready'));
  test.each([
    ['the bone', { bone: 'left femur' }],
    ['the bone', { bone: 'subtrochanteric' }],
    ['a note', { bone: 'leg', note: 'Femoral shaft, after a stumble' }],
    ['a note of an older entry', { note: 'thigh' }],
  ])('written as "other" but named in %s: the same (%o)', (_, body) =>
    expect(verdict(broke({ site: 'other', ...body }))).toBe('not ready'),
  );
  test('neither a clearing nor an exception passes it over', () =>
    expect(
      verdict(
        broke({ site: 'thigh shaft' }),
        at('2026-11-01', 'prescriber-exception', {
          requirement: 'teeth and jaw',
          reason: 'agreed',
          expiresOn: '2026-12-24' as never,
        }),
        at('2026-11-01', 'symptom-cleared', { entry: 'broken', finding: 'walks well' }),
      ),
    ).toBe('not ready'));
  test('a prescriber is named as the one who can settle it', () => {
    const record = personOf([...clear, born('1941-06-02'), broke({ site: 'thigh shaft' })]);
    const { noWindow } = readiness(record, { protocols: [{ from: 0, protocol: teaching }], calendar: everyDay }, asked);
    expect(noWindow?.needs.find(({ requirement }) => requirement === 'symptoms')?.who).toBe('prescriber');
  });
});

// Common practice, no source: unknown is never safe.
describe('another bone', () => {
  test('that nobody named: cannot say, until it is corrected', () => {
    expect(verdict(broke({ site: 'other' }))).toBe('cannot say');
    const corrected: Line = { ...broke({ site: 'other', bone: 'ankle' }, '2026-03-02', 'right'), amends: 'broken' };
    expect(verdict(broke({ site: 'other' }), corrected)).toBe('ready');
  });
  test.each<Fracture['site']>(['hip', 'spine', 'ribs', 'upper arm', 'wrist', 'shoulder', 'pelvis'])(
    '%s is no suspected atypical fracture',
    (site) => expect(verdict(broke({ site }))).toBe('ready'),
  );
});
