/** The patient pack over the wire: a person's own dates, and what is not printed, with its reason. */
import type { PatientPackView, PersonView, WrittenLetterView } from '@twelvemonth/exchange';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OwnServer, ownServer, problemOf, referralOf, sessionOn, setUp, workUp } from './support/own-server.ts';

let server: OwnServer;
const line = (patient: string, kind: string, effectiveAt: string, body: object) => ({
  name: 'record',
  patient,
  line: { kind, body, effectiveAt },
});
const view = (patient: string, query = ''): Promise<PatientPackView> =>
  server.read<PatientPackView>(`/api/people/${patient}/patient-pack?${query}`);

beforeAll(async () => {
  server = await ownServer();
  await setUp(server);
  await server.done('clerk', referralOf('wilhelmina'));
  await workUp(server, 'wilhelmina');
  await server.done(
    'clerk',
    referralOf('ada', { given: 'Ada', family: 'Brindle', born: '1940-02-28', number: '999 204 7721' }),
  );
  await server.done('nurse', line('ada', 'triage', '2026-11-20', { outcome: 'accepted' }));
});
afterAll(() => server.close());

describe('paracetamol', () => {
  it('has no amount until somebody asked about the liver', async () => {
    const { noAmount, text } = await view('wilhelmina', 'parts=afterwards');
    expect(noAmount).toContain('nobody has asked about the liver');
    expect(text).not.toMatch(/500 mg/);
  });
  it('then goes by the measured weight and its table (NHS Telford 2018: from 50 kg 1 g four times, 4 g at most)', async () => {
    // 64.2 kg; no eGFR is known, so six hours between (the same policy's rule below 30).
    const { noAmount, text } = await view('wilhelmina', 'parts=afterwards&liver=fine');
    expect(noAmount).toBeUndefined();
    expect(text).toContain('1 or 2 tablets of paracetamol 500 mg, up to 4 times a day');
    expect(text).toContain('Leave 6 hours or more between. Never take more than 8 tablets in 24 hours.');
    expect(text).toContain('your weight of 64.2 kg');
  });
  it('and has none with liver trouble, without a weight, or with one only told', async () => {
    expect((await view('wilhelmina', 'parts=afterwards&liver=trouble')).noAmount).toContain('because of the liver');
    expect((await view('ada', 'parts=afterwards&liver=fine')).noAmount).toContain('no measured weight');
    const told = { quantity: { comparator: '', value: '47', unit: 'kg' }, method: 'reported' };
    await server.done('nurse', line('ada', 'weight', '2026-11-24', told));
    expect((await view('ada', 'parts=afterwards&liver=fine')).noAmount).toContain('no measured weight');
    // 45 kg: 500 mg to 1 g three times, 3 g at most.
    const measured = { quantity: { comparator: '', value: '45', unit: 'kg' }, method: 'measured' };
    await server.done('nurse', line('ada', 'weight', '2026-11-24', measured));
    expect((await view('ada', 'parts=afterwards&liver=fine')).text).toContain('up to 3 times a day');
    expect((await view('ada', 'parts=afterwards&liver=fine')).text).toContain('more than 6 tablets in 24 hours');
  });
});

describe('what is printed', () => {
  it('before a dose there is no sheet for next year, and it says why', async () => {
    const { parts, leftOut } = await view('wilhelmina');
    expect(parts).toEqual(['getting ready', 'the day', 'afterwards']);
    expect(leftOut).toEqual([{ part: 'next year', because: expect.stringContaining('no date') }]);
    const alone = await server.ask('/api/people/wilhelmina/patient-pack/document?parts=next%20year', { as: 'nurse' });
    expect(alone.statusCode).toBe(409);
    expect(problemOf(alone).detail).toContain('no date');
  });
  it('after a dose: due a year later, who calls from when, the day to worry', async () => {
    const dose = { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-2391' };
    await server.done('nurse', line('wilhelmina', 'dose', '2026-11-25', dose));
    const { text, parts } = await view('wilhelmina');
    expect(parts).toContain('next year');
    expect(text).toContain('Your next drip is due from: Thursday 25 November 2027');
    expect(text).toMatch(/We will ring or write to you from \w+ \d+ \w+ 2027\./);
    expect(text).toMatch(/If you have not heard from us by \w+ \d+ \w+ 2027, ring/);
    expect(text).toContain('Batch: PA-2391');
    // The first dose has just been given: the sheet speaks to a first-timer.
    expect(text).toContain('32 of 100 people feel it');
  });
  it('nobody is sent for bloods that could count only after the place they hold', async () => {
    const cora = { given: 'Cora', family: 'Dunmore', born: '1938-05-01', number: '999 204 7748' };
    await server.done('clerk', { ...referralOf('cora', cora), on: '2026-07-20' });
    await workUp(server, 'cora', '2026-08-01');
    await server.done('clerk', line('cora', 'contact', '2026-11-25', { address: '1 Heron Street' }));
    await server.done('nurse', sessionOn('s1', '2026-12-03'));
    await server.done('clerk', { name: 'book', patient: 'cora', session: 's1', place: 1 });
    const low = { analyte: 'vitamin D', quantity: { comparator: '', value: '22', unit: 'nmol/L' } };
    const { entries } = await server.done('nurse', line('cora', 'result', '2026-11-20', low));
    const results = entries.map(({ id }) => id);
    await server.done('nurse', line('cora', 'results-signed', '2026-11-20', { results }));
    const loading = { doses: 6, everyDays: 7, unitsPerDose: 50000, startOn: '2026-11-24' };
    await server.done('nurse', line('cora', 'vitamin-d-loading', '2026-11-24', loading));
    const { text } = await view('cora', 'parts=getting%20ready');
    expect(text).toContain('Thursday 3 December 2026');
    const invitation = await server.read<WrittenLetterView>(
      '/api/people/cora/written-letter?to=patient&about=invitation',
    );
    // Six doses, one a week from 24 November: the last on 29 December, after the place.
    expect(text).toContain('Ask us when to finish your vitamin D course.');
    expect(text).not.toContain('Finish your vitamin D course by');
    for (const said of [text, invitation.text]) expect(said).not.toMatch(/blood test[^.]* between|Have it between/);
    const { nextSteps } = (await server.read<PersonView>('/api/people/cora')).readiness ?? {};
    expect(nextSteps?.find(({ kind }) => kind === 'draw')).toMatchObject({
      effectFrom: expect.stringMatching(/^20(?:26-12-[123]|27-)/),
    });
  });
  it('from the recall on it is about the dose ahead: nobody who comes again is told of a first time', async () => {
    const edna = { given: 'Edna', family: 'Farrow', born: '1941-05-01', number: '999 204 7756' };
    await server.done('clerk', { ...referralOf('edna', edna), on: '2025-07-20' });
    await workUp(server, 'edna', '2025-11-01');
    const dose = { medicine: 'zoledronic acid 5 mg', setting: 'this service', batch: 'PA-1111' };
    await server.done('nurse', line('edna', 'dose', '2025-11-20', dose));
    const { text, parts, leftOut } = await view('edna');
    expect(parts).toEqual(['getting ready', 'the day', 'afterwards']);
    expect(leftOut.map(({ part }) => part)).toEqual(['next year']);
    expect(text).not.toMatch(/first time|32 of 100/);
    expect(text).toContain('much less common now than after a first drip');
  });
  it('on a planned break nobody is told to get ready, nor sent for bloods', async () => {
    const pause = {
      outcome: 'planned break',
      reviewOn: '2028-11-20',
      triggers: 'a new fracture',
      reason: 'low risk now',
      capacity: 'other prescriber',
    };
    await server.done('prescriber', line('edna', 'course-review', '2026-11-24', pause));
    const { parts, leftOut } = await view('edna');
    expect(parts).not.toContain('getting ready');
    expect(leftOut).toContainEqual({ part: 'getting ready', because: expect.stringContaining('planned break') });
    const bloods = await server.ask('/api/people/edna/written-letter?to=patient&about=bloods%20needed', {
      as: 'nurse',
    });
    expect([bloods.statusCode, problemOf(bloods).detail]).toEqual([409, expect.stringContaining('no dose is planned')]);
  });
  it('medicines to ask about stand by name, and no pack says to leave one out', async () => {
    const tablet = { name: 'spironolactone 25 mg', sort: 'nephrotoxic' };
    await server.done('nurse', line('ada', 'medicine', '2026-10-01', tablet));
    const { text } = await view('ada', 'parts=getting%20ready');
    expect(text).toContain('Ask us about these before the day: spironolactone 25 mg.');
    expect(text).not.toMatch(/leave out|water tablet/i);
  });
  it('the document stands alone: no script, no address, its language said', async () => {
    const answer = await server.ask('/api/people/ada/patient-pack/document?size=large&language=en-US', { as: 'nurse' });
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
    expect(answer.body).toContain('<html lang="en-US">');
    expect(answer.body).toContain('font:18pt');
  });
  it('a question that is none is refused', async () => {
    for (const query of ['parts=everything', 'size=huge', 'liver=perhaps', 'language=xx'])
      expect((await server.ask(`/api/people/ada/patient-pack?${query}`, { as: 'nurse' })).statusCode).toBe(422);
    expect((await server.ask('/api/people/ada/patient-pack', { as: 'administrator' })).statusCode).toBe(403);
  });
  it('for another medicine there is none; for the dead none', async () => {
    await server.done(
      'prescriber',
      line('ada', 'prescription', '2026-11-25', {
        regimen: 'denosumab-60-six-monthly',
        validFrom: '2026-11-25',
        validUntil: '2027-11-24',
      }),
    );
    const other = await server.ask('/api/people/ada/patient-pack', { as: 'nurse' });
    expect([other.statusCode, problemOf(other).detail]).toEqual([409, expect.stringContaining('There is no pack for')]);
    await server.done('nurse', line('ada', 'died', '2026-11-25', { source: 'family doctor' }));
    expect(problemOf(await server.ask('/api/people/ada/patient-pack', { as: 'nurse' })).detail).toContain('has died');
  });
});
