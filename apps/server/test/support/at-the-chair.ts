/** A person brought by the acts of the day to where a test begins. */
import type { VisitView } from '@twelvemonth/exchange';
import { type OwnServer, type Somebody, people, referralOf, sessionOn, workUp } from './own-server.ts';

const thisSession = 'thornbeck-2026-11-25';

/** A list of today, with as many places. */
export const planToday = (server: OwnServer, places = 4): Promise<unknown> =>
  server.done('clerk', sessionOn(thisSession, '2026-11-25', places));

type Who = { readonly given: string; readonly family: string; readonly born: string; readonly number: string };

export const wilhelmina: Who = {
  given: 'Wilhelmina',
  family: 'Arkwright-Poe',
  born: '1941-06-02',
  number: '999 204 7713',
};

export const otto: Who = { given: 'Otto', family: 'Lindqvist', born: '1942-09-30', number: '999 204 7802' };
export const odette: Who = { given: 'Odette', family: 'Marsh', born: '1950-01-03', number: '999 204 7714' };

/** Referred, worked up, with a place on today's list. */
export async function listToday(server: OwnServer, patient: string, place: number, who: Who): Promise<void> {
  await server.done('clerk', referralOf(patient, who));
  await workUp(server, patient);
  await server.done('clerk', { name: 'book', patient, session: thisSession, place });
}

/** One line at the moment it is written. */
export const lineNow = (server: OwnServer, patient: string, kind: string, body: unknown) => ({
  name: 'record',
  patient,
  line: { kind, body, effectiveAt: server.atHand.clock.local('Europe/London').moment },
});

/** From the door to the answered checklist. */
export async function readyToDecide(
  server: OwnServer,
  patient: string,
  chair = 1,
  signed: { signedBy?: unknown } = {},
): Promise<void> {
  const step = (kind: string, body: unknown): Promise<unknown> =>
    server.done('nurse', lineNow(server, patient, kind, body), signed);
  await step('arrived', { session: thisSession, identifiers: ['full name', 'birth date'], chair });
  await step('weight', { quantity: { comparator: '', value: '64.0', unit: 'kg' }, method: 'measured' });
  await step('observations', {
    pulsePerMinute: 72,
    systolicMmHg: 130,
    diastolicMmHg: 76,
    temperatureCelsius: 36.8,
    saturationPercent: 97,
    newIrregularPulse: false,
    when: 'before',
  });
  const { questions } = await server.read<VisitView>(`/api/people/${patient}/visit`);
  await step('checklist', {
    answers: Object.fromEntries(questions.map(({ id, holdsOn }) => [id, { answer: holdsOn === 'yes' ? 'no' : 'yes' }])),
  });
}

/** From the door to the decision to go. */
export async function decidedToGo(
  server: OwnServer,
  patient: string,
  chair = 1,
  signed: { signedBy?: unknown } = {},
): Promise<void> {
  await readyToDecide(server, patient, chair, signed);
  const { seq } = await server.read<VisitView>(`/api/people/${patient}/visit`);
  const seen = { [`patient/${patient}`]: seq };
  await server.done('nurse', { name: 'decide', patient, decision: 'go' }, { seen, ...signed });
}

/** Arrived already: put off at the chair, and gone home. */
export async function putOffAndGone(server: OwnServer, patient: string): Promise<void> {
  const { seq } = await server.read<{ seq: number }>(`/api/people/${patient}/visit`);
  const putOff = {
    name: 'decide',
    patient,
    decision: 'put off',
    reasonCode: 'changed their mind',
    couldHaveBeenSeen: 'only today',
    nextStep: 'ring on Friday, then another place',
    nextBy: '2026-12-04',
    nextOwner: 'nurse',
    tellsThePatient: 'told at the chair',
  };
  await server.done('nurse', putOff, { seen: { [`patient/${patient}`]: seq } });
  await server.done('nurse', lineNow(server, patient, 'left', { cardGiven: true }));
}

/** From the door to a flushed cannula: the next step is the preparation. `signed`: proven with each step. */
export async function readyToPrepare(
  server: OwnServer,
  patient: string,
  chair = 1,
  signed: { signedBy?: unknown } = {},
): Promise<void> {
  await decidedToGo(server, patient, chair, signed);
  const step = (kind: string, body: unknown): Promise<unknown> =>
    server.done('nurse', lineNow(server, patient, kind, body), signed);
  await step('cannula', { site: 'right forearm', gauge: '22', tries: 1, placed: true });
  await step('flush', { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' });
}

/** As the nurse reads it off the pack. */
export const packRead = {
  product: 'zoledronic acid 5 mg in 100 mL',
  batch: 'PA-2391',
  expiresOn: '2028-04-30',
  minutes: 30,
  identifiers: ['full name', 'number'],
  clearAndColourless: true,
} as const;

/** From the door to a pack that the nurse prepared and another checked. */
export async function packChecked(server: OwnServer, patient: string, chair = 1): Promise<void> {
  await readyToPrepare(server, patient, chair);
  await server.done('nurse', lineNow(server, patient, 'preparation', packRead));
  const { preparation } = await server.read<VisitView>(`/api/people/${patient}/visit`);
  await server.done('checker', {
    name: 'second check',
    patient,
    preparation: preparation?.entry,
    reading: {
      product: 'zoledronic acid 5 mg in 100 mL',
      batchLastFour: '2391',
      expiryMonth: '2028-04',
      minutes: 30,
      identifiers: ['full name', 'birth date'],
    },
  });
}

/** From the door to a running infusion. */
export async function infusionRuns(server: OwnServer, patient: string, chair = 1): Promise<void> {
  await packChecked(server, patient, chair);
  await server.done('nurse', startInfusion(patient));
}

/** The medicine begins to run: who they are was asked at the chair, and the line was looked along. */
export const startInfusion = (patient: string) => ({
  name: 'start infusion',
  patient,
  plannedMinutes: 30,
  identifiers: ['full name', 'birth date'],
  alongTheLine: 'vented set, no air, clamp shut',
});

/** Product numbers of the invented packs: examples of the GS1 General Specifications, or made by their check digit rule. */
export const packNumbers = {
  ours: '09506000134352',
  fourMilligrams: '09506000140445',
  stranger: '05012345678900',
} as const;

/** What a scanner reads off a pack; the separator between batch and serial as the control character it is. */
export const packCode = ({
  productNumber = packNumbers.ours,
  expiry = '280430',
  batch = 'PA-2391',
  serial = 'S1042',
}: {
  productNumber?: string;
  expiry?: string;
  batch?: string;
  serial?: string;
} = {}): string => `01${productNumber}17${expiry}10${batch}\u001D21${serial}`;

export const listPacks = (server: OwnServer): Promise<unknown> =>
  server.done('pharmacist', {
    name: 'set formulary',
    unit: 'thornbeck',
    body: {
      packs: [
        { productNumber: packNumbers.ours, product: 'zoledronic acid 5 mg in 100 mL' },
        { productNumber: packNumbers.fourMilligrams, product: 'zoledronic acid 4 mg in 100 mL' },
      ],
      packsCarrySerial: true,
    },
  });

/** Two registered people in date, a whole kit: the session of today is open. */
export async function openToday(server: OwnServer): Promise<void> {
  const staffOf = (somebody: Somebody): string => server.atHand.accounts.named(people[somebody].username)?.staff ?? '';
  const [nurse, checker] = [staffOf('nurse'), staffOf('checker')];
  for (const [staff, what] of [
    [nurse, 'medicines into a vein'],
    [nurse, 'life support'],
    [checker, 'medicines into a vein'],
  ])
    await server.done('lead', {
      name: 'record competence',
      unit: 'thornbeck',
      body: { staff, role: 'nurse', what, until: '2027-06-30' },
    });
  await server.done('nurse', {
    name: 'open session',
    session: thisSession,
    unit: 'thornbeck',
    body: {
      present: [
        { staff: nurse, role: 'nurse in charge' },
        { staff: checker, role: 'nurse' },
      ],
      secondCheckers: [nurse, checker],
      kit: { checkedBy: checker, complete: true, expiresOn: '2027-03-31' },
      chairs: 6,
      counts: [],
    },
  });
}
