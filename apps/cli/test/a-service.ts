/** A small service on disk, written act by act as the server writes it: one unit, an adopted protocol, two people. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Act,
  type Author,
  type KindName,
  type PlainDate,
  type Refusal,
  type Role,
  day,
  decide,
  noFormulary,
  projection,
  protocolsInForce,
  readKindsOf,
  recordOf,
  subject,
  subjectsOf,
  teachingSheet,
  unitOf,
} from '@twelvemonth/clinical';
import { type Store, openSqliteStore } from '@twelvemonth/store';

const session = 'thornbeck-2026-11-26';
export const ready = { patient: 'p1', number: '999 204 7701' } as const;
export const waiting = { patient: 'p2', number: '999 204 7702' } as const;

export class Service {
  readonly store: Store;
  #acts = 0;
  now = '2026-11-24T09:00:00.000Z';

  private constructor(store: Store) {
    this.store = store;
  }

  /** `folder` is what is given as --data. */
  static async begin(folder: string, kind: 'own' | 'demo' = 'own', rows = projection): Promise<Service> {
    mkdirSync(join(folder, 'service'), { recursive: true });
    const path = join(folder, 'service', 'notes.db');
    const service = new Service(await openSqliteStore({ path, projection: rows }));
    await service.store.setSetting('kind', kind);
    return service;
  }

  async do(role: Role, act: Act): Promise<void> {
    this.#acts += 1;
    const unit = unitOf(recordOf('unit/thornbeck', await this.store.ledger('unit/thornbeck')));
    const protocols = protocolsInForce(recordOf('protocol/thornbeck', await this.store.ledger('protocol/thornbeck')));
    const by: Author = { staff: role.replaceAll(' ', '-'), role };
    const at = new Date(Date.parse(this.now) + this.#acts * 1000).toISOString();
    const outcome = await this.store.act<Refusal>({
      id: `00000000-0000-4000-8000-${String(this.#acts).padStart(12, '0')}`,
      content: JSON.stringify(act),
      by,
      at,
      subjects: subjectsOf(act),
      readKinds: readKindsOf(act),
      decide: (ledgers) =>
        decide(act, {
          ledgers,
          context: unit === undefined || protocols.length === 0 ? undefined : { protocols, calendar: unit.calendar },
          formulary: unit?.formulary ?? noFormulary,
          by,
          today: day(at.slice(0, 10)),
          moment: at.replace('Z', '+00:00'),
          zone: 'Europe/London',
          clock: { boot: 'b', uptimeMilliseconds: Date.parse(at), wall: at },
        }),
    });
    if (outcome.outcome !== 'recorded') throw new Error(`${act.name}: ${JSON.stringify(outcome)}`);
  }

  write(role: Role, patient: string, kind: KindName, body: unknown, on = this.now.slice(0, 10)): Promise<void> {
    return this.do(role, { name: 'record', patient, line: { kind, body, effectiveAt: on } });
  }

  /** `more` over what the unit says of itself. */
  async unit(more: object = {}): Promise<this> {
    await this.do('service lead', {
      name: 'set unit',
      unit: 'thornbeck',
      body: {
        name: 'Thornbeck Day Unit',
        zone: 'Europe/London',
        chairs: 6,
        opensAt: '08:30',
        closesAt: '17:00',
        sessionWeekdays: [2, 4],
        bloodWeekdays: [1, 2, 3, 4, 5, 6, 7],
        closedDays: [],
        minutesBetweenArrivals: 20,
        telephone: '01632 960100',
        demo: false,
        ...more,
      },
    });
    return this;
  }

  async protocol(version = 'thornbeck-1'): Promise<this> {
    const sheet = { ...teachingSheet, version, teachingOnly: false };
    await this.do('prescriber', { name: 'write protocol', unit: 'thornbeck', sheet, contentHash: 'h' });
    for (const [role, as] of [
      ['prescriber', 'clinician'],
      ['pharmacist', 'pharmacist'],
    ] as const) {
      await this.do(role, {
        name: 'sign protocol',
        unit: 'thornbeck',
        version,
        contentHash: 'h',
        as,
        inForceFrom: this.now.slice(0, 10) as PlainDate,
      });
    }
    return this;
  }

  /** Referred, accepted, asked; with bloods of today and a prescription if `complete`. */
  async person(
    { patient, number }: { readonly patient: string; readonly number: string },
    complete: boolean,
  ): Promise<void> {
    const today = this.now.slice(0, 10) as PlainDate;
    await this.do('clerk', {
      name: 'register',
      patient,
      identity: { family: `Arkwright-${patient}`, given: 'Wilhelmina', born: '1941-06-02', sex: 'female', number },
      referral: { from: 'fracture liaison service', reason: 'wrist fracture', unit: 'thornbeck', tier: 'routine' },
      on: today,
    });
    await this.write('nurse', patient, 'triage', { outcome: 'accepted' });
    if (!complete) return;
    await this.write('nurse', patient, 'allergy', { answer: 'none known' });
    await this.write('nurse', patient, 'pregnancy', {
      answer: 'does not apply',
      reason: 'told us: thirty years past the menopause',
    });
    await this.write('nurse', patient, 'consent', { decision: 'given', how: 'spoken' });
    await this.write('nurse', patient, 'dental', { answer: 'nothing pending' });
    await this.write('nurse', patient, 'secondary-causes', { answer: 'none found' });
    for (const [analyte, value, unit] of [
      ['creatinine', '79', 'umol/L'],
      ['adjusted calcium', '2.29', 'mmol/L'],
      ['vitamin D', '68', 'nmol/L'],
    ] as const) {
      await this.write('nurse', patient, 'result', { analyte, quantity: { comparator: '', value, unit } });
    }
    const results = (await this.store.ledger(subject('patient', patient)))
      .filter(({ kind }) => kind === 'result')
      .map(({ id }) => id);
    await this.write('nurse', patient, 'results-signed', { results });
    await this.weigh(patient);
    await this.write('prescriber', patient, 'prescription', {
      regimen: 'zoledronic-acid-yearly',
      validFrom: today,
      validUntil: '2027-11-20',
    });
  }

  weigh(patient: string): Promise<void> {
    return this.write('assistant', patient, 'weight', {
      quantity: { comparator: '', value: '56.2', unit: 'kg' },
      method: 'measured',
    });
  }

  async book(patient: string, place: number): Promise<void> {
    await this.do('nurse', { name: 'book', patient, session, place });
  }

  async plan(): Promise<void> {
    await this.do('nurse in charge', {
      name: 'plan session',
      session,
      body: {
        unit: 'thornbeck',
        on: '2026-11-26' as PlainDate,
        zone: 'Europe/London',
        arriveAt: ['08:40', '09:00'],
        opensAt: '08:30',
        closesAt: '17:00',
      },
    });
  }

  /** Here, weighed, observed, asked, and decided: go. */
  async go(patient: string): Promise<void> {
    await this.write('assistant', patient, 'arrived', { session, identifiers: ['full name', 'birth date'], chair: 2 });
    await this.weigh(patient);
    await this.write('assistant', patient, 'observations', {
      pulsePerMinute: 72,
      systolicMmHg: 130,
      diastolicMmHg: 76,
      temperatureCelsius: 36.8,
      saturationPercent: 97,
      newIrregularPulse: false,
      when: 'before',
    });
    const answers = Object.fromEntries(
      teachingSheet.dayQuestions.map(({ id, holdsOn }) => [id, { answer: holdsOn === 'yes' ? 'no' : 'yes' }]),
    );
    await this.write('nurse', patient, 'checklist', { answers });
    await this.do('nurse', { name: 'decide', patient, decision: 'go' });
  }
}
