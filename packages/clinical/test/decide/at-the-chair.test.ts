/** At the chair: who they are is asked once more, and one pair of hands does not try for ever. Hazards 24 and 32. */
import { type Act, type PlainDate, actSchema, day, entryText, kindNamed, visitOn } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { onTheDay, startInfusion, resumeInfusion } from './a-day-unit.ts';
import { putOff } from './put-off-act.ts';

type Start = Extract<Act, { name: 'start infusion' }>;
const start = (identifiers: Start['identifiers']): Start => ({ ...startInfusion, identifiers });

describe('two identifiers at the chair', () => {
  test('without them the medicine does not start; with them they stand in the record', () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    const [refusal] = unit.do('dana', start(undefined));
    expect(refusal).toMatchObject({ name: 'field-wrong', field: 'identifiers' });
    expect(unit.refused('dana', start(['full name', 'number']))).toEqual([]);
    expect(entryText(unit.newest('infusion-started'))).toContain('full name and number matched at the chair');
  });
});

describe('what is typed and cannot be', () => {
  // Two identifiers: the unit's safety rules, hazard 24.
  const twice = ['birth date', 'birth date'] as const;
  const says = 'one identifier asked twice is one: ask another';
  const fields = (refusals: ReturnType<ReturnType<typeof onTheDay>['do']>) =>
    refusals.filter(({ says: said }) => said.includes(says)).map(({ field }) => field);
  test('one identifier asked twice is not two: on arrival and at the preparation', () => {
    const unit = onTheDay();
    expect(
      fields(unit.line('sunniva', 'arrived', { session: 'thornbeck-2026-11-26', identifiers: twice, chair: 2 })),
    ).toEqual(['line.body.identifiers']);
    unit.go();
    expect(fields(unit.line('dana', 'preparation', unit.pack({ identifiers: twice })))).toEqual([
      'line.body.identifiers',
    ]);
  });
  test('nor where the checker and whoever starts it ask: the act is not read', () => {
    const unit = onTheDay().go().prepared();
    const check = unit.check({ identifiers: twice });
    for (const act of [check, start(twice)])
      expect(actSchema.safeParse(act).error?.issues.map(({ message }) => message)).toEqual([says]);
  });
  test('a chair the session was not opened with', () => {
    const unit = onTheDay();
    const arrived = (chair: number) =>
      unit.line('sunniva', 'arrived', { session: 'thornbeck-2026-11-26', identifiers: ['full name', 'number'], chair });
    for (const [staff, what] of [
      ['imre', 'medicines into a vein'],
      ['dana', 'medicines into a vein'],
      ['imre', 'life support'],
    ] as const)
      unit.expect('margit', {
        name: 'record competence',
        unit: 'thornbeck',
        body: { staff, role: 'nurse', what, until: '2027-06-30' as PlainDate },
      });
    unit.expect('imre', {
      name: 'open session',
      session: 'thornbeck-2026-11-26',
      unit: 'thornbeck',
      body: {
        present: [
          { staff: 'imre', role: 'nurse in charge' },
          { staff: 'dana', role: 'nurse' },
        ],
        secondCheckers: ['imre', 'dana'],
        kit: { checkedBy: 'dana', complete: true, expiresOn: '2027-03-31' as PlainDate },
        chairs: 4,
        counts: [],
      },
    });
    const [refused] = arrived(5);
    expect([refused?.name, refused?.field, refused?.says]).toEqual([
      'field-wrong',
      'line.body.chair',
      'the session was opened with 4 chairs',
    ]);
    expect(arrived(4)).toEqual([]);
  });
  test('a lower pressure that is not below the upper one', () => {
    const unit = onTheDay().arrive();
    const pressures = (systolicMmHg: number, diastolicMmHg: number) =>
      unit.line('sunniva', 'observations', { systolicMmHg, diastolicMmHg, when: 'before' });
    for (const [upper, lower] of [
      [76, 130],
      [100, 100],
    ] as const)
      expect(pressures(upper, lower).map(({ name, field }) => [name, field])).toEqual([
        ['field-wrong', 'line.body.diastolicMmHg'],
      ]);
    expect(pressures(100, 99)).toEqual([]);
  });
});

// EU product text of zoledronic acid 5 mg, 4.2: "via a vented infusion line", "at a constant infusion rate" (from memory); no air
// and a shut clamp: common practice, no source.
describe('looking along the line before it is connected', () => {
  const checked = () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    return unit;
  };
  const { alongTheLine, ...silent } = startInfusion;
  const notOnPaper = { ...startInfusion, alongTheLine: 'not written on the paper' } as const;
  const then = '2026-11-26T09:30:00.000+00:00';

  test('a start of which nobody says so is refused, at the chair and typed in later', () => {
    for (const more of [{}, { happenedAt: then }]) {
      const [refusal, ...others] = checked()
        .at('2026-11-26T11:00:00.000Z')
        .do('dana', { ...silent, ...more });
      expect(refusal).toMatchObject({
        name: 'field-wrong',
        field: 'alongTheLine',
        says: 'nobody says that they looked along the line',
      });
      expect(others.map(({ field }) => field).filter((field) => field === 'alongTheLine')).toEqual([]);
    }
  });
  test('said, it stands in the record', () => {
    const unit = checked();
    unit.expect('dana', startInfusion);
    expect(unit.newest('infusion-started').body.alongTheLine).toBe(alongTheLine);
    expect(entryText(unit.newest('infusion-started'))).toContain('along the line: vented set, no air, clamp shut');
  });
  // After a pause the line was shut, after a resite it was off: the same can be wrong with it as before the start.
  test('after a pause, and through another cannula, it runs again only where somebody looked once more', () => {
    const { alongTheLine: _, ...unsaid } = resumeInfusion;
    const unit = onTheDay().running().wait(5);
    const pause = { name: 'pause infusion', patient: 'p1' } as const;
    unit.expect('dana', { ...pause, reason: 'to the toilet' });
    expect(unit.do('dana', unsaid)).toEqual([expect.objectContaining({ name: 'field-wrong', field: 'alongTheLine' })]);
    unit.expect('dana', resumeInfusion);
    expect(entryText(unit.newest('infusion-resumed'))).toContain('along the line: vented set, no air, clamp shut');
    unit.expect('dana', { ...pause, reason: 'swelling', because: 'the site' });
    unit.write('dana', 'site-check', { looks: 'not well', seen: ['swelling'] });
    unit.write('dana', 'cannula-removed', { site: 'swollen' });
    unit.write('dana', 'cannula', { site: 'left forearm', gauge: '22', tries: 1, placed: true });
    unit.write('dana', 'flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
    expect(unit.do('dana', unsaid)).toEqual([expect.objectContaining({ name: 'field-wrong', field: 'alongTheLine' })]);
    unit.expect('dana', resumeInfusion);
  });
  test('no start of now is excused by paper', () =>
    expect(checked().do('dana', notOnPaper)[0]).toMatchObject({ name: 'field-wrong', field: 'alongTheLine' }));
  test('a sheet that is silent is typed in as silent, and the visit says so for as long as it is read', () => {
    const unit = checked().at('2026-11-26T11:00:00.000Z');
    unit.expect('dana', { ...notOnPaper, happenedAt: then });
    expect(entryText(unit.newest('infusion-started'))).toContain('along the line: not written on the paper');
    const says = () => visitOn(unit.patient(), day('2026-11-26'))?.steps.find(({ step }) => step === 'infusion')?.says;
    expect(says()).toBe('along the line: not written on the paper');
    unit.expect('dana', {
      name: 'finish infusion',
      patient: 'p1',
      milliliters: 100,
      happenedAt: '2026-11-26T10:05:00.000+00:00',
      timedBy: 'Dana, wall clock of the bay',
    });
    expect(says()).toBe('along the line: not written on the paper');
  });
  test('a start written before this was asked is read as it was written, and its infusion goes on', () => {
    const unit = checked();
    unit.expect('dana', startInfusion);
    const { id, body } = unit.newest('infusion-started');
    const { alongTheLine: _, ...before } = body;
    unit.ledgers.set(
      'patient/p1',
      unit
        .entries()
        .map((entry) =>
          entry.id === id ? { ...entry, body: kindNamed('infusion-started').body.parse(before) } : entry,
        ),
    );
    expect(entryText(unit.newest('infusion-started'))).toMatch(/matched at the chair$/);
    unit.wait(31).expect('dana', { name: 'finish infusion', patient: 'p1', milliliters: 100 });
    expect(unit.newest('dose').body.minutes).toBe(31);
  });
});

describe('failed tries at the cannula', () => {
  const tried = (placed: boolean, tries: number) => ({ site: 'right forearm', gauge: '22', tries, placed });

  // Two tries: protocol number, common practice, no source.
  test('after two by one operator another is asked, who may try', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', tried(false, 1));
    unit.write('dana', 'cannula', tried(false, 1));
    const [refusal] = unit.line('dana', 'cannula', tried(true, 1));
    expect(refusal).toMatchObject({ name: 'another-operator', field: 'line.body.tries' });
    expect(unit.line('imre', 'cannula', tried(true, 1))).toEqual([]);
  });

  test('one failed try is no reason', () => {
    const unit = onTheDay().go();
    unit.write('dana', 'cannula', tried(false, 1));
    expect(unit.line('dana', 'cannula', tried(true, 1))).toEqual([]);
  });
});

describe('interrupted between second check and start', () => {
  // Ten minutes: protocol number, common practice, no source.
  const checked = () => {
    const unit = onTheDay().go().prepared();
    unit.expect('imre', unit.check());
    return unit;
  };
  const anew = (packAgain: Start['packAgain']): Act => ({ ...start(['full name', 'number']), packAgain });
  const product = 'zoledronic acid 5 mg in 100 mL';

  test('within the minutes nothing more is asked', () =>
    expect(
      checked()
        .wait(10)
        .refused('dana', start(['full name', 'number'])),
    ).toEqual([]));
  test('after them the pack is read once more, and stands in the record', () => {
    const unit = checked().wait(11);
    expect(unit.do('dana', start(['full name', 'number']))[0]).toMatchObject({
      name: 'field-wrong',
      field: 'packAgain',
    });
    expect(unit.refused('dana', anew({ product, batchLastFour: '2391' }))).toEqual([]);
    expect(entryText(unit.newest('infusion-started'))).toContain('pack read once more');
  });
  describe('the clock cannot make it shorter', () => {
    test('put back, the machine still up: the minutes are those it was up', () => {
      const unit = checked().wait(11);
      // The wall clock is put back ten minutes; how long the machine is up goes on.
      unit.at(new Date(Date.parse(unit.now) - 10 * 60_000).toISOString());
      unit.bootedAt = new Date(Date.parse(unit.bootedAt) - 10 * 60_000).toISOString();
      expect(unit.do('dana', start(['full name', 'number']))[0]?.says).toContain('11 minutes went by');
    });
    test('put back over a restart: it cannot be measured, and is asked again', () => {
      const unit = checked().wait(11);
      unit.at(new Date(Date.parse(unit.now) - 30 * 60_000).toISOString());
      unit.boot = 'b2';
      unit.bootedAt = new Date(Date.parse(unit.now) - 60_000).toISOString();
      expect(unit.do('dana', start(['full name', 'number']))[0]?.says).toContain('cannot be measured');
    });
    test('put back over a restart by a little, so that it looks right: it is asked again all the same', () => {
      const unit = checked().wait(25);
      // Twenty-five minutes went by; the wall clock says five, and the machine has been up for one.
      unit.at(new Date(Date.parse(unit.now) - 20 * 60_000).toISOString());
      unit.boot = 'b2';
      unit.bootedAt = new Date(Date.parse(unit.now) - 60_000).toISOString();
      expect(unit.do('dana', start(['full name', 'number']))[0]?.says).toContain('cannot be measured');
      expect(unit.refused('dana', anew({ product, batchLastFour: '2391' }))).toEqual([]);
    });
  });
  test.each([
    ['another product', { product: 'zoledronic acid 4 mg in 100 mL', batchLastFour: '2391' }],
    ['another batch', { product, batchLastFour: '2392' }],
  ] as const)('%s than the one that was checked does not run', (_, packAgain) =>
    expect(checked().wait(11).refused('dana', anew(packAgain))).toEqual(['wrong-product']),
  );
});

// Hazard 89: a transport that waits is no reason to go unfit. Common practice, no source.
describe('how they go', () => {
  const unfit = () => {
    const unit = onTheDay().arrive();
    unit.expect('dana', putOff('unwell'));
    return unit;
  };
  test('who is not fit to go goes with a word about who took over, or what was said', () => {
    for (const leaves of ['taken over by others', 'against advice']) {
      const unit = unfit();
      const [refused] = unit.line('dana', 'left', { cardGiven: true, leaves });
      expect([refused?.name, refused?.field]).toEqual(['field-wrong', 'line.body.note']);
      unit.write('dana', 'left', { cardGiven: true, leaves, note: 'ward 4, Dr A. Penrose told' });
      expect(entryText(unit.newest('left'))).toBe(`left, ${leaves}, card given: ward 4, Dr A. Penrose told`);
    }
  });
  test('fit to go needs no more', () => {
    const unit = unfit();
    unit.write('dana', 'left', { cardGiven: true, leaves: 'fit to go' });
    expect(entryText(unit.newest('left'))).toBe('left, fit to go, card given');
  });
});
