/**
 * A session opened, closed and handed over. Two registered people, one life supporter, a whole kit: from the unit's safety rules
 * (hazards 25, 35); common practice, no other source.
 */
import { type Act, type PlainDate, factsOf, namedNursesOf, sessionDayOf } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { DayUnit, onTheDay, startInfusion } from './a-day-unit.ts';

const session = 'thornbeck-2026-11-26';
type Opening = Extract<Act, { name: 'open session' }>['body'];

const competent = (
  unit: DayUnit,
  staff: string,
  role: 'nurse' | 'nurse in charge' | 'assistant',
  until = '2027-06-30',
) => {
  for (const what of ['medicines into a vein', 'life support'] as const)
    unit.expect('margit', {
      name: 'record competence',
      unit: 'thornbeck',
      body: { staff, role, what, until: until as PlainDate },
    });
};

/** Two nurses in date and twelve packs on the shelf, on the morning of the session. */
function morning(): DayUnit {
  const unit = onTheDay();
  competent(unit, 'imre', 'nurse in charge');
  competent(unit, 'dana', 'nurse');
  unit.expect('priya', {
    name: 'receive packs',
    body: {
      unit: 'thornbeck',
      batch: 'PA-2391',
      product: 'zoledronic acid 5 mg in 100 mL',
      expiresOn: '2028-04-30' as PlainDate,
      packs: 12,
    },
  });
  return unit.wait(1);
}
const opening = (more: Partial<Opening> = {}): Act => ({
  name: 'open session',
  session,
  unit: 'thornbeck',
  body: {
    present: [
      { staff: 'imre', role: 'nurse in charge' },
      { staff: 'dana', role: 'nurse' },
    ],
    secondCheckers: ['imre', 'dana'],
    kit: { checkedBy: 'dana', complete: true, expiresOn: '2027-03-31' as PlainDate },
    chairs: 6,
    counts: [{ batch: 'PA-2391', packs: 12 }],
    ...more,
  },
});
const closing = (packs: number, more: Partial<Extract<Act, { name: 'close session' }>['body']> = {}): Act => ({
  name: 'close session',
  session,
  body: { counts: [{ batch: 'PA-2391', packs }], handover: 'nothing left', to: 'imre', ...more },
});
const state = (unit: DayUnit): string => sessionDayOf(unit.record(`session/${session}`)).state;

describe('a session opens', () => {
  test('with two registered people in date, two checkers, a whole kit, chairs and counted packs', () => {
    const unit = morning();
    expect(unit.refused('imre', opening())).toEqual([]);
    expect(state(unit)).toBe('open');
  });

  test.each<[string, Partial<Opening>, string[]]>([
    [
      'one registered person',
      { present: [{ staff: 'dana', role: 'nurse' }] },
      ['too-few-registrants', 'no-second-checker'],
    ],
    [
      'the same one named twice',
      {
        present: [
          { staff: 'dana', role: 'nurse' },
          { staff: 'dana', role: 'nurse in charge' },
        ],
        secondCheckers: ['dana'],
      },
      ['too-few-registrants', 'no-second-checker'],
    ],
    ['one second checker', { secondCheckers: ['imre'] }, ['no-second-checker']],
    ['a checker who is not here', { secondCheckers: ['imre', 'halina'] }, ['no-second-checker']],
    [
      'a kit that is not whole',
      { kit: { checkedBy: 'dana', complete: false, expiresOn: '2027-03-31' as PlainDate } },
      ['kit-not-ready'],
    ],
    [
      'a kit past its date',
      { kit: { checkedBy: 'dana', complete: true, expiresOn: '2026-11-25' as PlainDate } },
      ['kit-not-ready'],
    ],
    ['more chairs than there are', { chairs: 7 }, ['field-wrong']],
    ['packs nobody received', { counts: [{ batch: 'PA-9999', packs: 3 }] }, ['unknown-batch']],
  ])('not with %s', (_, more, names) => {
    const unit = morning();
    expect(unit.refused('imre', opening(more))).toEqual(names);
    expect(state(unit)).toBe('not opened');
  });

  test('the kit’s last day still counts', () => {
    const kit = { checkedBy: 'dana', complete: true, expiresOn: '2026-11-26' as PlainDate };
    expect(morning().refused('imre', opening({ kit }))).toEqual([]);
  });

  test.each([
    ['2026-11-26', []],
    ['2026-11-25', ['too-few-registrants', 'no-second-checker']],
  ])('a competence counts until its day, %s', (until, names) => {
    const unit = morning();
    competent(unit, 'dana', 'nurse', until);
    expect(unit.refused('imre', opening())).toEqual(names);
  });

  test('an assistant is no registered person, whatever was shown', () => {
    const unit = morning();
    competent(unit, 'sunniva', 'assistant');
    const present = [
      { staff: 'imre', role: 'nurse in charge' as const },
      { staff: 'sunniva', role: 'assistant' as const },
    ];
    expect(unit.refused('imre', opening({ present, secondCheckers: ['imre', 'sunniva'] }))).toEqual([
      'too-few-registrants',
      'no-second-checker',
    ]);
  });

  test('a stopped batch is not counted for use', () => {
    const unit = morning();
    unit.expect('priya', { name: 'stop batch', body: { batch: 'PA-2391', why: 'quarantine', reason: 'dented' } });
    expect(unit.refused('imre', opening())).toEqual(['batch-stopped']);
    expect(unit.refused('imre', opening({ counts: [] }))).toEqual([]);
  });

  test('only on its day, only by a nurse, and anew when the staff changes', () => {
    const unit = morning();
    expect(unit.refused('bettina', opening())).toEqual(['not-yours-to-do']);
    expect(unit.refused('imre', { ...opening(), session: 'thornbeck-2026-12-01' } as Act)).toEqual(['session-past']);
    unit.expect('imre', opening());
    expect(unit.refused('imre', opening({ chairs: 4 }))).toEqual([]);
  });
});

describe('while it is open', () => {
  const alone: Partial<Opening> = { present: [{ staff: 'imre', role: 'nurse in charge' }], secondCheckers: ['imre'] };
  const usedKit: Partial<Opening> = {
    kit: { checkedBy: 'dana', complete: false, expiresOn: '2027-03-31' as PlainDate },
  };
  const confirmed = (unit: DayUnit, more: Partial<Opening>): Act => {
    const refusals = unit.do('imre', opening(more));
    return { ...opening(more), confirms: refusals.map(({ says }) => says) } as Act;
  };

  test.each<[string, Partial<Opening>, string[], string[]]>([
    [
      'one registered person is left',
      alone,
      ['is-it-right', 'is-it-right'],
      ['too-few-registrants', 'no-second-checker'],
    ],
    ['the kit was used', usedKit, ['is-it-right'], ['kit-not-ready']],
  ])('%s: asked about, written, and nothing is started until it is put right', (_, more, asked, held) => {
    const unit = morning();
    unit.expect('imre', opening());
    unit.go().prepared();
    unit.expect('imre', unit.check());
    expect(unit.refused('imre', opening(more))).toEqual(asked);
    expect(unit.refused('imre', confirmed(unit, more))).toEqual([]);
    expect(state(unit)).toBe('open');
    expect(unit.refused('imre', startInfusion)).toEqual(held);
    unit.expect('imre', opening());
    expect(unit.refused('imre', startInfusion)).toEqual([]);
  });

  test('a confirmed sentence opens no session that is not open, nor one that was closed', () => {
    const unit = morning();
    unit.expect('imre', opening());
    const act = confirmed(unit, alone);
    expect(morning().refused('imre', act)).toEqual(['too-few-registrants', 'no-second-checker']);
  });

  test('a checker who is not here is refused, whatever is confirmed', () => {
    const unit = morning();
    unit.expect('imre', opening());
    const stays = { ...alone, secondCheckers: ['imre', 'dana'] };
    expect(unit.refused('imre', confirmed(unit, stays))).toEqual(['no-second-checker']);
  });
});

describe('what somebody has shown', () => {
  // Practice page, 7: nobody checks their own work; common practice, no other source.
  test('is written by another than who showed it', () => {
    const recording = (staff: string): Act => ({
      name: 'record competence',
      unit: 'thornbeck',
      body: { staff, role: 'nurse', what: 'life support', until: '2027-06-30' as PlainDate },
    });
    const unit = onTheDay();
    const [refused] = unit.do('imre', recording('imre'));
    expect([refused?.name, refused?.field, refused?.says, refused?.remedy]).toEqual([
      'second-person-needed',
      'body.staff',
      'What you have shown is written down by somebody else.',
      'ask another nurse in charge or the service lead to record it',
    ]);
    expect(factsOf(unit.record('unit/thornbeck'), 'competence')).toEqual([]);
    expect(unit.refused('imre', recording('dana'))).toEqual([]);
    expect(unit.refused('margit', recording('imre'))).toEqual([]);
  });
});

describe('while competences are kept', () => {
  test('nothing runs before the session is open', () => {
    const unit = morning();
    unit.go().prepared();
    unit.expect('imre', unit.check());
    expect(unit.refused('dana', startInfusion)).toEqual(['session-not-open']);
    unit.expect('imre', opening());
    expect(unit.refused('dana', startInfusion)).toEqual([]);
  });

  test('only a named second checker checks', () => {
    const unit = morning();
    competent(unit, 'halina', 'nurse');
    unit.expect('imre', opening());
    unit.go().prepared();
    expect(unit.refused({ staff: 'priya', role: 'pharmacist' }, unit.check())).toEqual(['no-second-checker']);
    expect(unit.refused('imre', unit.check())).toEqual([]);
  });

  // Practice page, 7: "competence & registration in date at time of act"; common practice, no other source.
  describe('who prepares and who gives are people whom the opening names, in date that day', () => {
    const opened = (): DayUnit => {
      const unit = morning();
      unit.expect('imre', opening());
      return unit.go();
    };
    const stranger = { staff: 'quilla', role: 'nurse' } as const;
    test('a nurse whom it does not name prepares nothing', () => {
      const unit = opened();
      const [refused] = unit.line(stranger, 'preparation', unit.pack());
      expect([refused?.name, refused?.remedy]).toEqual([
        'not-in-the-opening',
        'the nurse in charge writes the opening anew with your name, or somebody named there does it',
      ]);
    });
    test('and starts nothing, until the opening is written anew with the name of one in date', () => {
      const unit = opened().prepared();
      unit.expect('imre', unit.check());
      expect(unit.refused(stranger, startInfusion)).toEqual(['not-in-the-opening']);
      const named = [
        { staff: 'imre', role: 'nurse in charge' as const },
        { staff: 'dana', role: 'nurse' as const },
        stranger,
      ];
      unit.expect('imre', opening({ present: named }));
      const [outOfDate] = unit.do(stranger, startInfusion);
      expect([outOfDate?.name, outOfDate?.says]).toEqual([
        'not-in-the-opening',
        'Your competence for medicines into a vein is not in date.',
      ]);
      competent(unit, stranger.staff, 'nurse', '2026-11-26');
      unit.expect(stranger, startInfusion);
    });
    test('a pause is anybody’s who stands there', () => {
      const unit = opened().prepared();
      unit.expect('imre', unit.check());
      unit.expect('dana', startInfusion);
      unit.expect(stranger, { name: 'pause infusion', patient: 'p1', reason: 'her arm swells', because: 'the site' });
    });
    test('what ran on paper is typed in by whoever stands there', () => {
      const unit = opened().prepared();
      unit.expect('imre', unit.check());
      unit.wait(60).expect(stranger, { ...startInfusion, happenedAt: '2026-11-26T09:30:00.000+00:00' });
    });
  });

  test('a unit that keeps none is as before', () => {
    const unit = onTheDay();
    unit.go().prepared();
    unit.expect('imre', unit.check());
    expect(unit.refused('dana', startInfusion)).toEqual([]);
  });
});

/** Somebody who had the dose, was seen off and whose letter is signed. */
function given(): DayUnit {
  const unit = morning();
  unit.expect('imre', opening());
  unit.running().wait(31);
  unit.expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
  return unit;
}
function home(unit: DayUnit): DayUnit {
  unit.write('dana', 'cannula-removed', { site: 'looks well' });
  unit.wait(30).write('dana', 'observed', { minutes: 30, well: true });
  unit.write('dana', 'left', { cardGiven: true });
  return unit;
}
const letter = (unit: DayUnit): void =>
  unit.write('dana', 'letter', { to: 'family doctor', about: 'dose given', version: '1', text: 'Dear Doctor' });

describe('a session closes', () => {
  test('when everybody has an outcome, letters are out, and the packs add up: 12 counted, 1 opened, 11 left', () => {
    const unit = home(given());
    letter(unit);
    expect(unit.refused('dana', closing(11))).toEqual([]);
    expect(state(unit)).toBe('closed, handover waits');
  });

  test.each<[string, (unit: DayUnit) => void, string[]]>([
    ['while somebody is still here', (unit) => letter(unit), ['no-outcome']],
    ['without the letter', (unit) => void home(unit), ['letter-missing']],
  ])('not %s', (_, before, names) => {
    const unit = given();
    before(unit);
    expect(unit.refused('dana', closing(11))).toEqual(names);
    expect(state(unit)).toBe('open');
  });

  test('not while somebody did not come and nothing says why', () => {
    const unit = morning();
    unit.expect('imre', opening());
    expect(unit.refused('dana', closing(12))).toEqual(['no-outcome']);
    unit.write('bettina', 'call', { route: 'telephone', about: 'place', reached: false });
    expect(unit.refused('dana', closing(12))).toEqual([]);
  });

  test('not while the packs do not add up and nobody says what is known', () => {
    const unit = home(given());
    letter(unit);
    expect(unit.refused('dana', closing(10))).toEqual(['does-not-add-up']);
    expect(unit.refused('dana', closing(0, { counts: [] }))).toEqual(['does-not-add-up']);
    const counts = [{ batch: 'PA-2391', packs: 10, note: 'one fell, glass in the bin' }];
    expect(unit.refused('dana', closing(0, { counts }))).toEqual([]);
  });

  test('not when it was never opened, not twice, and not handed over to oneself', () => {
    const unit = home(given());
    letter(unit);
    expect(unit.refused('imre', closing(11))).toEqual(['second-person-needed']);
    unit.expect('dana', closing(11));
    expect(unit.refused('dana', closing(11))).toEqual(['step-already-done']);
    const fresh = morning();
    fresh.write('bettina', 'call', { route: 'telephone', about: 'place', reached: false });
    expect(fresh.refused('dana', closing(12))).toEqual(['session-not-open']);
  });

  test('the handover is accepted by the person it is for, once', () => {
    const unit = home(given());
    letter(unit);
    const accept: Act = { name: 'accept handover', session };
    expect(unit.refused('imre', accept)).toEqual(['session-not-open']);
    unit.expect('dana', closing(11));
    expect(unit.refused('dana', accept)).toEqual(['second-person-needed']);
    expect(unit.refused('halina', accept)).toEqual(['not-yours-to-do']);
    expect(unit.refused('imre', accept)).toEqual([]);
    expect(state(unit)).toBe('closed');
    expect(unit.refused('imre', accept)).toEqual(['step-already-done']);
  });
});

describe('who looks after whom', () => {
  const naming = (nurse: string, patients: readonly string[] = ['p1']): Act => ({
    name: 'name nurse',
    session,
    patients,
    nurse,
  });
  const named = (unit: DayUnit) => namedNursesOf(unit.record(`session/${session}`)).get('p1');

  test('is named in an open session, and named anew in one act; each naming stays in the notes', () => {
    const unit = morning();
    unit.expect('imre', opening());
    unit.expect('imre', naming('dana'));
    expect(named(unit)).toEqual({ nurse: 'dana', isHere: true });
    unit.expect('imre', naming('imre'));
    expect(named(unit)).toEqual({ nurse: 'imre', isHere: true });
    expect(factsOf(unit.record(`session/${session}`), 'named-nurse').map(({ body }) => body.nurse)).toEqual([
      'dana',
      'imre',
    ]);
  });

  test.each<[string, string, readonly string[], string[]]>([
    ['somebody who is not here', 'halina', ['p1'], ['field-wrong']],
    ['for a person who is not on the list', 'dana', ['p1', 'p2'], ['not-booked-there']],
  ])('not %s', (_, nurse, patients, names) => {
    const unit = morning();
    unit.expect('imre', opening());
    expect(unit.refused('imre', naming(nurse, patients))).toEqual(names);
  });

  test('not before the session is open, and not by a clerk', () => {
    const unit = morning();
    expect(unit.refused('imre', naming('dana'))).toEqual(['session-not-open']);
    unit.expect('imre', opening());
    expect(unit.refused('bettina', naming('dana'))).toEqual(['not-yours-to-do']);
  });

  test('a nurse who has gone is told as gone once who is here is written anew', () => {
    const unit = morning();
    competent(unit, 'gwen', 'nurse');
    unit.expect('imre', opening());
    unit.expect('imre', naming('dana'));
    const present = [
      { staff: 'imre', role: 'nurse in charge' as const },
      { staff: 'gwen', role: 'nurse' as const },
    ];
    const kit = { checkedBy: 'gwen', complete: true, expiresOn: '2027-03-31' as PlainDate };
    unit.expect('imre', opening({ present, secondCheckers: ['imre', 'gwen'], kit }));
    expect(named(unit)).toEqual({ nurse: 'dana', isHere: false });
  });
});
