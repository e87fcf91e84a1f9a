import { randomUUID } from 'node:crypto';
import type { PersonView, SessionView, TodayView, VisitView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startInfusion, packRead as pack } from './support/at-the-chair.ts';
import {
  type OwnServer,
  ownServer,
  password,
  people,
  problemOf,
  referralOf,
  sessionOn,
  setUp,
  workUp,
} from './support/own-server.ts';

let server: OwnServer;
beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
});
afterAll(async () => server.close());

const record = (patient: string, kind: string, body: unknown, effectiveAt = '2026-11-25') => ({
  name: 'record',
  patient,
  line: { kind, body, effectiveAt },
});

describe('from the referral to the place', () => {
  test('a person is registered, worked up and booked, and every screen tells it', async () => {
    await server.done('clerk', referralOf('p1'));
    expect((await server.read<PersonView>('/api/people/p1')).standing.standing).toBe('referral received');
    await workUp(server, 'p1');
    await server.done('clerk', sessionOn('s1', '2026-11-26'));
    const booked = await server.done('clerk', { name: 'book', patient: 'p1', session: 's1', place: 2 });
    expect(booked.says).toContain('booked');
    const person = await server.read<PersonView>('/api/people/p1');
    expect(person.standing.standing).toBe('booked');
    expect(person.readiness?.verdict).toBe('ready');
    expect(person.entries[0]).toMatchObject({ kind: 'place-booked', by: { name: people.clerk.name, role: 'clerk' } });
    const session = await server.read<SessionView>('/api/sessions/s1');
    expect(session.list[1]?.who?.patient).toBe('p1');
    expect(session.taken).toBe(1);
  });

  test('a booking check for a date names what stands against it', async () => {
    await server.done(
      'clerk',
      referralOf('p2', { family: 'Okonjo', given: 'Marit', born: '1939-02-11', number: '999 204 7721' }),
    );
    const check = await server.read<{ insideWindow: boolean; causes: { cause: string; acceptable: boolean }[] }>(
      '/api/people/p2/booking-check?session=s1',
    );
    expect(check.insideWindow).toBe(false);
    expect(check.causes.map(({ cause }) => cause)).toContain('kidney-function');
    expect(check.causes.every(({ acceptable }) => acceptable)).toBe(true);
    const asClerk = await server.read<{ causes: { acceptable: boolean }[] }>(
      '/api/people/p2/booking-check?session=s1',
      'clerk',
    );
    expect(asClerk.causes.some(({ acceptable }) => acceptable)).toBe(false);
  });
});

describe('an act that is refused', () => {
  test('says every reason by name, the first as the headline', async () => {
    const answer = await server.act('clerk', { name: 'book', patient: 'p2', session: 's1', place: 2 });
    expect(answer.statusCode).toBe(422);
    const problem = problemOf(answer);
    expect(problem.refusals?.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['place-taken', 'trouble-not-accepted']),
    );
    expect(problem.detail).toBe(problem.refusals?.[0]?.says);
  });

  test('names every wrong field where it stands in the form', async () => {
    const answer = await server.act('clerk', {
      name: 'register',
      patient: 'p3',
      identity: { family: '', given: 'A', born: '31.02.1944', number: '1' },
      referral: { from: '', reason: 'x', unit: 'thornbeck', tier: 'routine' },
      on: '2026-11-20',
    });
    expect(answer.statusCode).toBe(422);
    const fields = problemOf(answer).refusals?.map(({ field }) => field);
    expect(fields).toEqual(expect.arrayContaining(['identity.family', 'identity.born', 'referral.from']));
  });

  test('is 403 where the role may not do it, and nothing is written', async () => {
    const before = await server.read<PersonView>('/api/people/p1');
    const answer = await server.act(
      'auditor',
      record('p1', 'call', { route: 'telephone', about: 'recall', reached: true }),
    );
    expect(answer.statusCode).toBe(403);
    expect(problemOf(answer).refusals?.[0]?.name).toBe('not-yours-to-do');
    expect((await server.read<PersonView>('/api/people/p1')).seq).toBe(before.seq);
  });

  test('a role that the person does not hold is refused', async () => {
    const answer = await server.act(
      'nurse',
      record('p1', 'call', { route: 'telephone', about: 'recall', reached: true }),
      { role: 'prescriber' },
    );
    expect(answer.statusCode).toBe(403);
  });

  test('a second person of the same name and birth date is looked at first', async () => {
    const twin = referralOf('p4', { number: '999 204 7799' });
    const answer = await server.act('clerk', twin);
    expect(problemOf(answer).refusals?.[0]?.name).toBe('looks-like-someone-here');
    await server.done('clerk', { ...twin, notTheSameAs: ['p1'] });
    expect((await server.read<PersonView>('/api/people/p4')).lookAlikes.map(({ patient }) => patient)).toContain('p1');
  });
});

describe('an act sent again', () => {
  test('with the same content is recorded once and answered as the first time', async () => {
    const id = randomUUID();
    const call = record('p1', 'call', { route: 'telephone', about: 'place', reached: true, note: 'will come' });
    const first = await server.done('clerk', call, { id });
    const again = await server.done('clerk', call, { id });
    expect(again.outcome).toBe('already-recorded');
    expect(again.entries).toEqual(first.entries);
    expect(again.commit).toBe(first.commit);
  });

  test('with other content is refused, and says what the first wrote', async () => {
    const id = randomUUID();
    const first = await server.done(
      'clerk',
      record('p1', 'call', { route: 'telephone', about: 'place', reached: true }),
      { id },
    );
    const answer = await server.act(
      'clerk',
      record('p1', 'call', { route: 'telephone', about: 'place', reached: false }),
      { id },
    );
    expect(answer.statusCode).toBe(409);
    expect(problemOf(answer).type).toBe('/problems/same-id-other-content');
    // Whoever lost the first answer learns where it stands, and takes it for no news of somebody else.
    const wrote = first.entries.map(({ subject, seq }) => ({ subject, seq }));
    expect(answer.json<{ wrote: unknown }>().wrote).toEqual(wrote);
  });

  test('a decision made on notes that moved on shows what was missed', async () => {
    const { seq } = await server.read<PersonView>('/api/people/p4');
    await server.done(
      'nurse',
      record('p4', 'weight', { quantity: { comparator: '', value: '51.0', unit: 'kg' }, method: 'measured' }),
    );
    const answer = await server.act(
      'nurse',
      record('p4', 'weight', { quantity: { comparator: '', value: '61.0', unit: 'kg' }, method: 'measured' }),
      { seen: { 'patient/p4': seq } },
    );
    expect(answer.statusCode).toBe(409);
    expect(answer.json<{ missed: { text: string; by: string }[] }>().missed).toEqual([
      expect.objectContaining({ text: expect.stringContaining('51.0 kg'), by: people.nurse.name }),
    ]);
  });
});

describe('places', () => {
  test('a hundred people race for the last place and one gets it', async () => {
    await server.done('clerk', sessionOn('s-race', '2026-11-27', 1));
    const racers = Array.from({ length: 100 }, (_, index) => `racer-${index}`);
    for (const [index, patient] of racers.entries()) {
      // Nobody looks like anybody else here: a name, a day of birth and a number of their own.
      await server.done(
        'clerk',
        referralOf(patient, {
          family: `${'abcdefghij'[index % 10]}${'klmnopqrst'[Math.floor(index / 10)]}`.repeat(4),
          given: `${'uvwxyzabcd'[index % 10]}${'efghijklmn'[Math.floor(index / 10)]}`.repeat(3),
          born: `${1930 + (index % 20)}-0${1 + (index % 9)}-${10 + Math.floor(index / 10)}`,
          number: `999 300 ${1000 + index}`,
        }),
      );
      await server.done('nurse', record(patient, 'triage', { outcome: 'accepted' }, '2026-11-24'));
    }
    const accepts = async (patient: string) => {
      const { causes } = await server.read<{ causes: { cause: string }[] }>(
        `/api/people/${patient}/booking-check?session=s-race`,
      );
      return { causes: causes.map(({ cause }) => cause), reason: 'a race' };
    };
    const same = await accepts(racers[0] ?? '');
    const answers = await Promise.all(
      racers.map(async (patient) =>
        server.act('nurse', { name: 'book', patient, session: 's-race', place: 1, accepts: same }),
      ),
    );
    expect(answers.filter(({ statusCode }) => statusCode === 200)).toHaveLength(1);
    const refused = answers
      .filter(({ statusCode }) => statusCode === 422)
      .map((answer) => problemOf(answer).refusals?.[0]?.name);
    expect(refused).toHaveLength(99);
    expect(new Set(refused)).toEqual(new Set(['place-taken']));
    expect((await server.read<SessionView>('/api/sessions/s-race')).taken).toBe(1);
    expect(await server.atHand.store.verify()).toMatchObject({ ok: true });
  });
});

describe('the visit', () => {
  test('from arrival to the letter, with a second check by another person at the same screen', async () => {
    await server.done('clerk', {
      ...referralOf('v1', { family: 'Ferreira', given: 'Wanda', born: '1944-09-30', number: '999 204 7802' }),
    });
    await workUp(server, 'v1', '2026-11-23');
    await server.done('clerk', sessionOn('today', '2026-11-25'));
    await server.done('clerk', { name: 'book', patient: 'v1', session: 'today', place: 1 });
    const now = server.atHand.clock.local('Europe/London').moment;
    const step = (kind: string, body: unknown) => record('v1', kind, body, now);
    await server.done(
      'clerk',
      step('arrived', { session: 'today', identifiers: ['full name', 'birth date'], chair: 2 }),
    );
    await server.done(
      'nurse',
      step('weight', { quantity: { comparator: '', value: '64.0', unit: 'kg' }, method: 'measured' }),
    );
    await server.done(
      'nurse',
      step('observations', {
        pulsePerMinute: 72,
        systolicMmHg: 130,
        diastolicMmHg: 76,
        temperatureCelsius: 36.8,
        saturationPercent: 97,
        newIrregularPulse: false,
        when: 'before',
      }),
    );
    const asked = await server.read<VisitView>('/api/people/v1/visit');
    expect(asked.current).toBe('checklist');
    await server.done(
      'nurse',
      step('checklist', {
        answers: Object.fromEntries(
          asked.questions.map(({ id, holdsOn }) => [id, { answer: holdsOn === 'yes' ? 'no' : 'yes' }]),
        ),
      }),
    );
    expect((await server.read<VisitView>('/api/people/v1/visit')).go?.verdict).toBe('ready');
    const go = { name: 'decide', patient: 'v1', decision: 'go' };
    const unseen = await server.act('nurse', go);
    expect([unseen.statusCode, problemOf(unseen).type]).toEqual([428, '/problems/seen-not-said']);
    const { seq } = await server.read<VisitView>('/api/people/v1/visit');
    await server.done('nurse', go, { seen: { 'patient/v1': seq } });
    await server.done('nurse', step('cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true }));
    await server.done(
      'nurse',
      step('flush', { milliliters: 5, ranFreely: true, calciumInLine: false, when: 'before' }),
    );
    await server.done('nurse', step('preparation', pack));

    // The first reading is the preparer's alone until another person has made theirs.
    const preparer = await server.read<VisitView>('/api/people/v1/visit', 'nurse');
    for (const url of ['/api/people/v1/visit', '/api/people/v1', '/api/people/v1/notes']) {
      const answer = await server.ask(url, { as: 'checker' });
      expect([url, answer.statusCode, answer.body.includes('PA-2391')]).toEqual([url, 200, false]);
    }

    const preparation = preparer.preparation?.entry;
    const reading = {
      product: pack.product,
      batchLastFour: '2391',
      expiryMonth: '2028-04',
      minutes: 30,
      identifiers: ['full name', 'number'],
    };
    const alone = await server.act('nurse', { name: 'second check', patient: 'v1', preparation, reading });
    expect(problemOf(alone).refusals?.[0]?.name).toBe('checker-is-preparer');
    const wrong = await server.act(
      'nurse',
      { name: 'second check', patient: 'v1', preparation, reading },
      { signedBy: { username: people.checker.username, password: 'not it' } },
    );
    expect(wrong.statusCode).toBe(403);
    expect(problemOf(wrong).refusals?.[0]?.name).toBe('signature-not-proven');
    await server.done(
      'nurse',
      { name: 'second check', patient: 'v1', preparation, reading },
      { signedBy: { username: people.checker.username, password } },
    );
    const checked = await server.read<VisitView>('/api/people/v1/visit', 'nurse');
    expect(checked.check).toMatchObject({ agrees: true, by: people.checker.name });

    const { alongTheLine: _, ...silent } = startInfusion('v1');
    const refused = await server.act('nurse', silent);
    expect([refused.statusCode, problemOf(refused).refusals?.[0]]).toMatchObject([
      422,
      { field: 'alongTheLine', says: 'nobody says that they looked along the line' },
    ]);
    await server.done('nurse', startInfusion('v1'));
    const running = await server.read<TodayView>('/api/today?unit=thornbeck');
    expect(running.visits.find(({ patient }) => patient === 'v1')?.infusion?.paused).toBe(false);
    const early = await server.act('nurse', { name: 'finish infusion', patient: 'v1', milliliters: 100 });
    expect(problemOf(early).refusals?.[0]?.name).toBe('too-early-to-finish');
    const part = { name: 'finish infusion', patient: 'v1', milliliters: 40, stoppedBecause: 'pain at the site' };
    const rushed = await server.act('nurse', part);
    expect(problemOf(rushed).refusals?.[0]).toMatchObject({ name: 'ran-too-fast', field: 'incident' });
    await server.done('nurse', { ...part, incident: 'the clamp was open, told Chris Check' });
    const letter = await server.ask('/api/people/v1/letter', { as: 'nurse' });
    expect(letter.statusCode).toBe(200);
    expect(letter.headers['content-type']).toContain('text/html');
    expect(letter.body).toContain('only 40 mL was given');
  });
});
