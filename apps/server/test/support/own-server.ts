/** A service of one's own in a temporary folder, with a unit, a protocol in force and people who work there. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { randomUUID } from 'node:crypto';
import type { Act, ProtocolSheet, Role } from '@twelvemonth/clinical';
import { demoSheet } from '@twelvemonth/clinical';
import type { ActAnswer, Problem } from '@twelvemonth/exchange';
import type { LightMyRequestResponse } from 'fastify';
import { type Log, buildApp } from '../../src/app.ts';
import type { AtHand } from '../../src/at-hand.ts';
import type { Tls } from '../../src/certificate.ts';
import { type Clock, systemClock } from '../../src/clock.ts';
import { eventStreams } from '../../src/events.ts';
import { openNotes } from '../../src/register/notes.ts';
import { openPeople } from '../../src/register/people.ts';
import { openUnits } from '../../src/register/units.ts';
import { openNotesStore } from '../../src/service-folder.ts';
import { openAccounts } from '../../src/sign-in/accounts.ts';
import { countedAttempts } from '../../src/sign-in/attempts.ts';
import { sharedSigning } from '../../src/sign-in/shared-signing.ts';
import { lookLog } from '../../src/sign-in/looks.ts';
import { hashOfPassword } from '../../src/sign-in/passwords.ts';

export const password = 'a password of tests';

/** One person a role, and a second nurse for the second check. */
export const people = {
  nurse: { username: 'nora.nurse', name: 'Nora Nurse', roles: ['nurse in charge', 'nurse'] },
  checker: { username: 'chris.check', name: 'Chris Check', roles: ['nurse'] },
  prescriber: { username: 'petra.press', name: 'Petra Press', roles: ['prescriber'] },
  pharmacist: { username: 'phil.farm', name: 'Phil Farm', roles: ['pharmacist'] },
  clerk: { username: 'clara.clerk', name: 'Clara Clerk', roles: ['clerk'] },
  assistant: { username: 'asa.assist', name: 'Asa Assist', roles: ['assistant'] },
  lead: { username: 'lena.lead', name: 'Lena Lead', roles: ['service lead'] },
  auditor: { username: 'aude.audit', name: 'Aude Audit', roles: ['auditor'] },
  administrator: { username: 'ada.admin', name: 'Ada Admin', roles: ['administrator'] },
} as const satisfies Record<string, { username: string; name: string; roles: readonly Role[] }>;
export type Somebody = keyof typeof people;

export type Ask = {
  readonly method?: 'GET' | 'POST';
  readonly as?: Somebody | undefined;
  readonly body?: unknown;
  readonly headers?: Record<string, string>;
};

export type OwnServer = Awaited<ReturnType<typeof ownServer>>;

/** Tests cause trouble on purpose: its lines are not for the terminal. */
const nowhere = { write: () => undefined };

/** `at` is the local moment at which the service's clock begins. */
export async function ownServer({
  at = '2026-11-25T09:00',
  staff = true,
  clock = systemClock({ at, zone: 'Europe/London', clock: undefined }),
  screens,
  folder = mkdtempSync(join(tmpdir(), 'twelvemonth-')),
  log = { level: 'warn', stream: nowhere },
  channels = {},
  ownPageAddress = () => undefined,
  returnedFolder,
  tls,
}: {
  at?: string;
  staff?: boolean;
  clock?: Clock;
  /** Folder of the built screens, where a browser is to see them. */
  screens?: string;
  /** Where its notes lie; a new one where nothing is said. Closing takes it away. */
  folder?: string;
  log?: Log;
  channels?: AtHand['channels'];
  ownPageAddress?: AtHand['ownPageAddress'];
  returnedFolder?: AtHand['returnedFolder'];
  /** Certificate and key, PEM, where it is to speak TLS. */
  tls?: Tls;
} = {}) {
  const store = await openNotesStore({ folder });
  const accounts = await openAccounts(store, { https: tls !== undefined, now: clock.now });
  if (staff) {
    const hash = await hashOfPassword(password);
    for (const person of Object.values(people)) await accounts.add(person, hash);
  }
  const notes = await openNotes(store);
  const units = openUnits(notes, clock);
  const everyone = openPeople(notes, units, clock);
  const events = eventStreams();
  store.onCommit(events.tell);
  const atHand: AtHand = {
    store,
    clock,
    accounts,
    attempts: countedAttempts(),
    looks: lookLog(accounts, clock.now),
    ...sharedSigning(accounts, clock.now),
    events,
    notes,
    units,
    people: everyone,
    channels,
    ownPageAddress,
    returnedFolder,
    demo: undefined,
    certificate: tls?.cert,
    version: 'test',
  };
  const app = await buildApp(atHand, {
    tls,
    behindProxy: false,
    onlyThisMachine: true,
    screens: screens ?? join(folder, 'screens'),
    log,
  });
  await app.ready();
  const cookies = new Map<string, string>();

  async function signedIn(somebody: Somebody): Promise<string> {
    const known = cookies.get(somebody);
    if (known !== undefined) return known;
    const answer = await app.inject({
      method: 'POST',
      url: '/api/sign-in',
      payload: { username: people[somebody].username, password },
    });
    const cookie = cookieOf(answer);
    cookies.set(somebody, cookie);
    return cookie;
  }

  async function ask(
    url: string,
    { method = 'GET', as, body, headers = {} }: Ask = {},
  ): Promise<LightMyRequestResponse> {
    const cookie = as === undefined ? {} : { cookie: await signedIn(as) };
    return app.inject({
      method,
      url,
      headers: { ...cookie, ...headers },
      ...(body === undefined ? {} : { payload: body as object }),
    });
  }

  async function act(
    as: Somebody,
    what: Act | Record<string, unknown>,
    more: {
      id?: string;
      seen?: Record<string, number>;
      role?: string;
      signedBy?: unknown;
      deviceAt?: string;
    } = {},
  ): Promise<LightMyRequestResponse> {
    return ask('/api/acts', { method: 'POST', as, body: { id: randomUUID(), ...more, act: what } });
  }

  /** An act that has to succeed. */
  async function done(
    as: Somebody,
    what: Act | Record<string, unknown>,
    more: Parameters<typeof act>[2] = {},
  ): Promise<ActAnswer> {
    const answer = await act(as, what, more);
    if (answer.statusCode !== 200)
      throw new Error(`${String(what.name)} as ${as}: ${answer.statusCode} ${answer.body}`);
    return answer.json<ActAnswer>();
  }

  return {
    app,
    atHand,
    folder,
    ask,
    act,
    done,
    read: async <Answer>(url: string, as: Somebody = 'nurse'): Promise<Answer> => {
      const answer = await ask(url, { as });
      if (answer.statusCode !== 200) throw new Error(`${url}: ${answer.statusCode} ${answer.body}`);
      return answer.json<Answer>();
    },
    forget: (somebody: Somebody) => cookies.delete(somebody),
    /** `keepsNotes`: they are opened again later. */
    close: async ({ keepsNotes = false }: { keepsNotes?: boolean } = {}) => {
      everyone.close();
      events.endAll();
      await app.close();
      notes.close();
      await store.close();
      if (!keepsNotes) rmSync(folder, { recursive: true, force: true });
    },
  };
}

export const cookieOf = (answer: LightMyRequestResponse): string => {
  const set = answer.headers['set-cookie'];
  return (Array.isArray(set) ? set : [set ?? '']).map((one) => one.split(';')[0]).join('; ');
};

export const problemOf = (answer: LightMyRequestResponse): Problem => {
  if (answer.headers['content-type']?.startsWith('application/problem+json') !== true)
    throw new Error(`not a problem: ${answer.statusCode} ${answer.body}`);
  return answer.json<Problem>();
};

export const thornbeck = {
  name: 'Thornbeck Day Unit',
  zone: 'Europe/London',
  chairs: 6,
  opensAt: '08:30',
  closesAt: '17:00',
  sessionWeekdays: [1, 2, 3, 4, 5],
  bloodWeekdays: [1, 2, 3, 4, 5],
  closedDays: [],
  minutesBetweenArrivals: 20,
  telephone: '01632 960100',
  demo: false,
};

/** Describes the unit and brings a protocol into force today, as two people would. */
export async function setUp(
  server: OwnServer,
  inForceFrom = '2026-11-25',
  more: Partial<ProtocolSheet> = {},
): Promise<void> {
  await server.done('lead', { name: 'set unit', unit: 'thornbeck', body: thornbeck });
  await server.done('prescriber', {
    name: 'write protocol',
    unit: 'thornbeck',
    sheet: { ...demoSheet('thornbeck-1'), ...more },
    contentHash: 'asked of the server',
  });
  const { versions } = await server.read<{ versions: { contentHash: string }[] }>('/api/protocols?unit=thornbeck');
  const contentHash = versions[0]?.contentHash;
  const signature = {
    name: 'sign protocol',
    unit: 'thornbeck',
    version: 'thornbeck-1',
    contentHash,
    inForceFrom,
  };
  await server.done('prescriber', { ...signature, as: 'clinician' });
  await server.done('pharmacist', { ...signature, as: 'pharmacist' });
}

export const referralOf = (
  patient: string,
  more: { given?: string; family?: string; born?: string; number?: string } = {},
) => ({
  name: 'register',
  patient,
  identity: {
    family: more.family ?? 'Arkwright-Poe',
    given: more.given ?? 'Wilhelmina',
    born: more.born ?? '1941-06-02',
    sex: 'female',
    number: more.number ?? '999 204 7713',
  },
  contact: { telephone: '07700 900123', familyDoctor: 'Dr A. Penrose, Thornbeck Surgery' },
  referral: {
    from: 'fracture liaison service',
    reason: 'wrist fracture, hip T -2.8',
    unit: 'thornbeck',
    tier: 'routine',
  },
  on: '2026-11-20',
});

/** Everything a first dose asks for, recorded and good: `day` is the date of the sample. */
export async function workUp(server: OwnServer, patient: string, day = '2026-11-24'): Promise<void> {
  await server.done('nurse', {
    name: 'record',
    patient,
    line: { kind: 'triage', body: { outcome: 'accepted' }, effectiveAt: day },
  });
  const results = await server.done('nurse', {
    name: 'record together',
    patient,
    lines: [
      {
        kind: 'result',
        body: { analyte: 'creatinine', quantity: { comparator: '', value: '70', unit: 'umol/L' } },
        effectiveAt: day,
      },
      {
        kind: 'result',
        body: { analyte: 'adjusted calcium', quantity: { comparator: '', value: '2.35', unit: 'mmol/L' } },
        effectiveAt: day,
      },
      {
        kind: 'result',
        body: { analyte: 'vitamin D', quantity: { comparator: '', value: '82', unit: 'nmol/L' } },
        effectiveAt: day,
      },
      {
        kind: 'weight',
        body: { quantity: { comparator: '', value: '64.2', unit: 'kg' }, method: 'measured' },
        effectiveAt: day,
      },
      { kind: 'allergy', body: { answer: 'none known' }, effectiveAt: day },
      {
        kind: 'pregnancy',
        body: { answer: 'does not apply', reason: 'past the menopause since 1993' },
        effectiveAt: day,
      },
      { kind: 'dental', body: { answer: 'nothing pending' }, effectiveAt: day },
      { kind: 'secondary-causes', body: { answer: 'none found' }, effectiveAt: day },
    ],
  });
  const ids = results.entries.filter(({ kind }) => kind === 'result').map(({ id }) => id);
  await server.done('nurse', {
    name: 'record',
    patient,
    line: { kind: 'results-signed', body: { results: ids }, effectiveAt: day },
  });
  await server.done('nurse', {
    name: 'record',
    patient,
    line: { kind: 'consent', body: { decision: 'given', how: 'spoken' }, effectiveAt: day },
  });
  await server.done('prescriber', {
    name: 'record',
    patient,
    line: {
      kind: 'prescription',
      body: { regimen: 'zoledronic-acid-yearly', validFrom: '2026-11-01', validUntil: '2027-10-31' },
      effectiveAt: day,
    },
  });
}

export const sessionOn = (session: string, on: string, places = 4) => ({
  name: 'plan session',
  session,
  body: {
    unit: 'thornbeck',
    on,
    zone: 'Europe/London',
    arriveAt: Array.from({ length: places }, (_, index) => `09:${String(index % 60).padStart(2, '0')}`),
    opensAt: '08:30',
    closesAt: '17:00',
  },
});
