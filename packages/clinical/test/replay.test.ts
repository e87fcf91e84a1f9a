import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  type Entry,
  type PlainDate,
  type Proof,
  type ProtocolSheet,
  type Protocol,
  RULE_SET,
  type Subject,
  type WhatIf,
  contextsThen,
  day,
  nothingSummed,
  protocolFrom,
  replay,
  ruleSets,
  rulesSince,
  summedWith,
  teachingSheet,
  whatIf,
} from '@twelvemonth/clinical';
import { DayUnit, onTheDay } from './decide/a-day-unit.ts';
import { putOff } from './decide/put-off-act.ts';

type Changed = (entry: Entry) => Entry;
const same: Changed = (entry) => entry;
const ledgers = (unit: DayUnit, changed: Changed) => (of: Subject) => unit.ledgers.get(of)?.map(changed);
const proofs = (unit: DayUnit, changed: Changed = same): readonly Proof[] =>
  replay('patient/p1', ledgers(unit, changed), contextsThen());
const broken = (unit: DayUnit, changed: Changed = same): readonly Proof[] =>
  proofs(unit, changed).filter(({ holds }) => !holds);
const withBody =
  (kind: Entry['kind'], change: (body: Record<string, unknown>) => object): Changed =>
  (entry) =>
    entry.kind === kind ? { ...entry, body: change(entry.body as Record<string, unknown>) } : entry;
const basisWith = (fields: object): Changed =>
  withBody('go-decision', (body) => ({ ...body, basis: { ...(body['basis'] as object), ...fields } }));

describe('every signed decision is decided again', () => {
  test('a booking and a go hold, from what was known then', () => {
    const unit = onTheDay().go();
    expect(proofs(unit).map(({ kind, holds }) => [kind, holds])).toEqual([
      ['place-booked', true],
      ['go-decision', true],
    ]);
  });

  test('what is written, corrected or adopted afterwards changes nothing', () => {
    const unit = onTheDay().go();
    unit.wait(5).write('dana', 'illness', { what: 'vomiting', sort: 'illness' });
    unit.at('2026-11-27T09:00:00.000Z').adopt('thornbeck-2');
    expect(broken(unit)).toEqual([]);
  });

  test('a verdict that was never the rules’ is named as a defect', () => {
    const unit = onTheDay();
    unit.arrive().observed().asked('p1', { 'unwell-now': 'yes' });
    unit.expect('dana', putOff('unwell'));
    expect(broken(unit)).toEqual([]);
    expect(broken(unit, basisWith({ verdict: 'ready' }))).toEqual([
      expect.objectContaining({
        kind: 'go-decision',
        on: '2026-11-26',
        signed: 'ready under thornbeck-1',
        now: 'not ready under thornbeck-1',
        because: 'same rules, same protocol: a defect then or now',
      }),
    ]);
  });

  test('a decision signed under older rules says which change may explain it; under another protocol, which', () => {
    const unit = onTheDay().go();
    const [older] = broken(unit, basisWith({ verdict: 'cannot say', ruleSet: '1' }));
    expect(older?.because).toMatch(new RegExp(`^rules 1 then, ${RULE_SET} now: .*checklist`));
    const [other] = broken(unit, basisWith({ protocolVersion: 'thornbeck-9' }));
    expect(other?.because).toBe('protocol thornbeck-9 then, thornbeck-1 now');
  });

  test('a booking whose trouble nobody took on is named; one taken on by name holds', () => {
    const unit = new DayUnit().ready();
    const order = {
      regimen: 'zoledronic-acid-yearly',
      validFrom: '2026-12-20' as PlainDate,
      validUntil: '2027-12-20' as PlainDate,
    };
    const line = { kind: 'prescription', body: order, effectiveAt: unit.today() } as const;
    // That no dose can be given until then is asked about, and is what this is about.
    const confirms = unit.do('halina', { name: 'record', patient: 'p1', line }).map(({ says }) => says);
    unit.expect('halina', { name: 'record', patient: 'p1', line, confirms });
    unit.expect('dana', {
      name: 'book',
      patient: 'p1',
      session: 'thornbeck-2026-11-26',
      place: 1,
      accepts: { causes: ['prescription'], reason: 'the prescriber signs tomorrow' },
    });
    expect(broken(unit)).toEqual([]);
    const { accepted: _, ...bare } = unit.newest('place-booked').body;
    expect(
      broken(
        unit,
        withBody('place-booked', () => bare),
      ),
    ).toEqual([expect.objectContaining({ kind: 'place-booked', now: 'not taken on: prescription' })]);
  });

  test('an exception is a prescriber’s and lasts at least its day', () => {
    const unit = new DayUnit().ready();
    unit.write('halina', 'prescriber-exception', {
      requirement: 'vitamin D',
      reason: 'given in summer',
      expiresOn: '2026-12-10',
    });
    expect(proofs(unit).map(({ kind, holds }) => [kind, holds])).toEqual([['prescriber-exception', true]]);
    const byNurse: Changed = (entry) => ({ ...entry, author: { ...entry.author, role: 'nurse' } });
    expect(broken(unit, byNurse)[0]?.now).toBe('made by a nurse');
    const over = withBody('prescriber-exception', (body) => ({ ...body, expiresOn: '2026-01-01' }));
    expect(broken(unit, over)[0]?.now).toBe('over before it was made');
  });

  test('a body that cannot be read is named, never passed over', () => {
    const unit = onTheDay().go();
    expect(
      broken(
        unit,
        withBody('go-decision', () => ({})),
      )[0],
    ).toMatchObject({ now: 'cannot be read' });
  });
});

describe('the number of the rules', () => {
  test('ascends by one, each with the version that brought it and what it changes', () => {
    expect(ruleSets.map(({ number }) => number)).toEqual(ruleSets.map((_, index) => String(index + 1)));
    expect(RULE_SET).toBe(ruleSets.at(-1)?.number);
    expect(rulesSince(RULE_SET)).toEqual([]);
    expect(rulesSince('1').map(({ number }) => number)).toEqual(ruleSets.slice(1).map(({ number }) => number));
  });
  test('each stands in the changelog under the version that brought it, with what it changes', () => {
    const changelog = readFileSync(new URL('../../../CHANGELOG.md', import.meta.url), 'utf8');
    for (const { number } of ruleSets.slice(1)) expect(changelog).toContain(`rules ${number}`);
  });
});

describe('what if another sheet had been in force', () => {
  const draft = (
    fields: Partial<ProtocolSheet>,
    numbers: Partial<Record<keyof ProtocolSheet['numbers'], string>> = {},
  ): Protocol => {
    const decided = { ...teachingSheet.numbers };
    for (const [key, value] of Object.entries(numbers) as [keyof ProtocolSheet['numbers'], string][])
      decided[key] = { ...decided[key], value };
    const made = protocolFrom({ ...teachingSheet, ...fields, numbers: decided, version: 'draft' });
    if (!('protocol' in made)) throw new Error('has a gap');
    return made.protocol;
  };
  const asked = (unit: DayUnit, protocol: Protocol, from = '2026-11-01', until = '2026-11-30'): WhatIf =>
    whatIf('patient/p1', ledgers(unit, same), contextsThen(), {
      unit: 'thornbeck',
      draft: protocol,
      from: day(from),
      until: day(until),
    });

  test('the sheet that was in force changes nothing, and the decisions are counted', () => {
    expect(asked(onTheDay().go(), draft({}))).toEqual({ decisions: 1, others: [] });
  });

  test('a stricter limit puts a dose off; a failing value is no repeat, so there is no date', () => {
    const { others } = asked(onTheDay().go(), draft({}, { clearanceFloor: '70' }));
    expect(others).toEqual([
      expect.objectContaining({
        kind: 'put off',
        on: '2026-11-26',
        because: expect.stringMatching(/^not ready: /),
        delayDays: undefined,
      }),
    ]);
  });

  test('bloods that count for a shorter time are drawn again, and the dose waits for them', () => {
    // Sampled on 24 Nov, dose on 26 Nov: with one day they are out. Drawn again that day, usable the next.
    const found = asked(onTheDay().go(), draft({}, { bloodsValidDays: '1', resultDays: '1' }));
    expect(found.others).toEqual([expect.objectContaining({ kind: 'put off', bloodsAgain: true, delayDays: 1 })]);
    expect(summedWith(summedWith(nothingSummed, found), found)).toEqual({
      decisions: 2,
      putOff: 2,
      ready: 0,
      bloodsAgain: 2,
      withoutDate: 0,
      delayDays: 2,
      longestDelayDays: 1,
    });
  });

  test('bloods that are out before their result may be used leave no date at all, which is not a delay of nought', () => {
    const found = asked(onTheDay().go(), draft({}, { bloodsValidDays: '1' }));
    expect(found.others).toEqual([expect.objectContaining({ kind: 'put off', delayDays: undefined })]);
    expect(summedWith(nothingSummed, found)).toMatchObject({ withoutDate: 1, delayDays: 0 });
  });

  test('a dose put off for its bloods would have been ready under a looser sheet', () => {
    const unit = new DayUnit().ready().at('2027-01-26T09:00:00.000Z');
    unit.plan('thornbeck-2027-01-28', '2027-01-28');
    unit.expect('dana', {
      name: 'book',
      patient: 'p1',
      session: 'thornbeck-2027-01-28',
      place: 1,
      accepts: { causes: ['kidney-function', 'calcium', 'pregnancy'], reason: 'bloods on the day' },
    });
    unit.at('2027-01-28T09:00:00.000Z');
    unit.write('sunniva', 'arrived', {
      session: 'thornbeck-2027-01-28',
      identifiers: ['full name', 'birth date'],
      chair: 2,
    });
    unit.observed().asked();
    unit.expect('dana', putOff('bloods'));
    const found = asked(unit, draft({}, { bloodsValidDays: '90' }), '2027-01-01', '2027-01-31');
    expect(found).toEqual({ decisions: 1, others: [expect.objectContaining({ kind: 'ready', delayDays: 0 })] });
  });

  test('days outside the stretch, and another unit’s days, are not looked at', () => {
    const unit = onTheDay().go();
    expect(asked(unit, draft({}, { clearanceFloor: '70' }), '2026-11-27').decisions).toBe(0);
    expect(asked(unit, draft({}, { clearanceFloor: '70' }), '2026-11-01', '2026-11-25').decisions).toBe(0);
  });
});
