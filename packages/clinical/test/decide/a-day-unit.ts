/** A small service to try acts on: one unit with an adopted protocol, one session, people by their role, a clock one can set. */
import {
  type Act,
  type Author,
  type ClockReading,
  type Entry,
  type Fact,
  type Ledgers,
  type PlainDate,
  type ProtocolSheet,
  type Refusal,
  type RefusalName,
  type Role,
  type Subject,
  type SubjectRecord,
  type Surroundings,
  carryOut,
  day,
  factsOf,
  lineLookedAlong,
  noFormulary,
  plainDate,
  protocolsInForce,
  recordOfLedgers,
  subject,
  teachingSheet,
  unitOf,
} from '@twelvemonth/clinical';

export const people = {
  imre: { staff: 'imre', role: 'nurse in charge' },
  dana: { staff: 'dana', role: 'nurse' },
  halina: { staff: 'halina', role: 'prescriber' },
  priya: { staff: 'priya', role: 'pharmacist' },
  bettina: { staff: 'bettina', role: 'clerk' },
  sunniva: { staff: 'sunniva', role: 'assistant' },
  margit: { staff: 'margit', role: 'service lead' },
  edwin: { staff: 'edwin', role: 'auditor' },
} as const satisfies Record<string, Author>;
export type Person = keyof typeof people;
export const as = (role: Role): Author => ({ staff: `someone-${role}`, role });

const MINUTE = 60_000;

export class DayUnit {
  readonly ledgers: Ledgers = new Map();
  /** UTC; the unit keeps the same time in winter. */
  now = '2026-11-24T09:00:00.000Z';
  boot = 'b1';
  bootedAt = '2026-11-01T00:00:00.000Z';
  lookAlikes: Surroundings['lookAlikes'];
  private acts = 0;

  constructor(sheet: ProtocolSheet = teachingSheet) {
    this.expect('margit', {
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
        demo: true,
      },
    });
    this.adopt('thornbeck-1', sheet);
    this.plan('thornbeck-2026-11-26', '2026-11-26');
    this.plan('thornbeck-2026-12-01', '2026-12-01');
  }

  adopt(version: string, of: ProtocolSheet = teachingSheet): void {
    const sheet = { ...of, version, teachingOnly: false };
    this.expect('halina', { name: 'write protocol', unit: 'thornbeck', sheet, contentHash: 'h' });
    for (const [who, side] of [
      ['halina', 'clinician'],
      ['priya', 'pharmacist'],
    ] as const) {
      this.expect(who, {
        name: 'sign protocol',
        unit: 'thornbeck',
        version,
        contentHash: 'h',
        as: side,
        inForceFrom: this.today(),
      });
    }
  }
  plan(session: string, on: string): void {
    this.expect('imre', {
      name: 'plan session',
      session,
      body: {
        unit: 'thornbeck',
        on: on as PlainDate,
        zone: 'Europe/London',
        arriveAt: ['08:40', '09:00', '09:20'],
        opensAt: '08:30',
        closesAt: '17:00',
      },
    });
  }

  today(): PlainDate {
    return this.now.slice(0, 10) as PlainDate;
  }
  at(moment: string): this {
    this.now = moment;
    return this;
  }
  wait(minutes: number): this {
    this.now = new Date(Date.parse(this.now) + minutes * MINUTE).toISOString();
    return this;
  }
  clock(): ClockReading {
    return { boot: this.boot, uptimeMilliseconds: Date.parse(this.now) - Date.parse(this.bootedAt), wall: this.now };
  }
  surroundings(by: Author): Surroundings {
    const unit = unitOf(this.record('unit/thornbeck'));
    const protocols = protocolsInForce(this.record('protocol/thornbeck'));
    return {
      ledgers: this.ledgers,
      context: unit === undefined || protocols.length === 0 ? undefined : { protocols, calendar: unit.calendar },
      formulary: unit?.formulary ?? noFormulary,
      directions: unit?.directions,
      by,
      today: day(this.today()),
      moment: this.now.replace('Z', '+00:00'),
      zone: 'Europe/London',
      clock: this.clock(),
      ...(this.lookAlikes === undefined ? {} : { lookAlikes: this.lookAlikes }),
    };
  }

  /** The refusals of an act; empty if it was written. */
  do(who: Person | Author, act: Act): readonly Refusal[] {
    this.acts += 1;
    const by = typeof who === 'string' ? people[who] : who;
    return carryOut(
      this.ledgers,
      { id: `00000000-0000-4000-8000-${String(this.acts).padStart(8, '0')}0000`, act, at: this.now },
      this.surroundings(by),
    );
  }
  /** Does it, or stops the test. */
  expect(who: Person | Author, act: Act): void {
    const refusals = this.do(who, act);
    if (refusals.length > 0)
      throw new Error(`${act.name}: ${refusals.map(({ name, says }) => `${name}: ${says}`).join('; ')}`);
  }
  refused(who: Person | Author, act: Act): RefusalName[] {
    const before = [...this.ledgers.values()].reduce((sum, entries) => sum + entries.length, 0);
    const names = this.do(who, act).map(({ name }) => name);
    const after = [...this.ledgers.values()].reduce((sum, entries) => sum + entries.length, 0);
    if (names.length > 0 && before !== after) throw new Error('refused and written all the same');
    return names;
  }

  record(of: Subject): SubjectRecord {
    return recordOfLedgers(of, (one) => this.ledgers.get(one));
  }
  patient(patient = 'p1'): SubjectRecord {
    return this.record(subject('patient', patient));
  }
  entries(of: Subject = 'patient/p1'): readonly Entry[] {
    return this.ledgers.get(of) ?? [];
  }
  newest<Kind extends Fact['kind']>(kind: Kind, patient = 'p1'): Fact<Kind> {
    const facts = factsOf(this.patient(patient), kind);
    const found = facts.toSorted((a, b) => a.seq - b.seq)[facts.length - 1];
    if (found === undefined) throw new Error(`no ${kind}`);
    return found;
  }

  line(
    who: Person | Author,
    kind: Fact['kind'],
    body: unknown,
    effectiveAt: string = this.today(),
    patient = 'p1',
  ): readonly Refusal[] {
    return this.do(who, { name: 'record', patient, line: { kind, body, effectiveAt } });
  }
  write(
    who: Person | Author,
    kind: Fact['kind'],
    body: unknown,
    effectiveAt: string = this.today(),
    patient = 'p1',
  ): void {
    const refusals = this.line(who, kind, body, effectiveAt, patient);
    if (refusals.length > 0)
      throw new Error(`${kind}: ${refusals.map(({ name, says }) => `${name}: ${says}`).join('; ')}`);
  }

  register(patient = 'p1', family = 'Arkwright-Poe', number = '999 204 7713'): this {
    this.expect('bettina', {
      name: 'register',
      patient,
      identity: { family, given: 'Wilhelmina', born: '1941-06-02', sex: 'female', number },
      referral: { from: 'fracture liaison service', reason: 'wrist fracture', unit: 'thornbeck', tier: 'routine' },
      on: this.today(),
    });
    return this;
  }
  /** Accepted, everything known and good, prescribed and consented to: ready from today. */
  ready(patient = 'p1'): this {
    this.register(patient, `Arkwright-${patient}`, `999 204 77${patient.slice(1).padStart(2, '0')}`);
    this.write('imre', 'triage', { outcome: 'accepted' }, this.today(), patient);
    this.write('dana', 'allergy', { answer: 'none known' }, this.today(), patient);
    this.write(
      'dana',
      'pregnancy',
      { answer: 'does not apply', reason: 'told us: thirty years past the menopause' },
      this.today(),
      patient,
    );
    this.write('dana', 'consent', { decision: 'given', how: 'spoken' }, this.today(), patient);
    this.write('dana', 'dental', { answer: 'nothing pending' }, this.today(), patient);
    this.write('dana', 'secondary-causes', { answer: 'none found' }, this.today(), patient);
    this.bloods(this.today(), patient);
    const until = plainDate((day(this.today()) + 364) as ReturnType<typeof day>);
    this.write(
      'halina',
      'prescription',
      { regimen: 'zoledronic-acid-yearly', validFrom: this.today(), validUntil: until },
      this.today(),
      patient,
    );
    return this;
  }
  bloods(on: string, patient = 'p1'): void {
    const result = (analyte: string, value: string, unit: string) =>
      this.write('dana', 'result', { analyte, quantity: { comparator: '', value, unit } }, on, patient);
    result('creatinine', '79', 'umol/L');
    result('adjusted calcium', '2.29', 'mmol/L');
    result('vitamin D', '68', 'nmol/L');
    const ids = factsOf(this.patient(patient), 'result').map(({ id }) => id);
    this.write('imre', 'results-signed', { results: ids }, this.today(), patient);
    this.write(
      'sunniva',
      'weight',
      { quantity: { comparator: '', value: '56.2', unit: 'kg' }, method: 'measured' },
      on,
      patient,
    );
  }
  booked(patient = 'p1', place = 1): this {
    this.ready(patient);
    this.expect('bettina', { name: 'book', patient, session: 'thornbeck-2026-11-26', place });
    return this;
  }

  arrive(patient = 'p1'): this {
    this.write(
      'sunniva',
      'arrived',
      { session: 'thornbeck-2026-11-26', identifiers: ['full name', 'birth date'], chair: 2 },
      this.today(),
      patient,
    );
    return this;
  }
  observed(patient = 'p1', more: Partial<Fact<'observations'>['body']> = {}): this {
    this.write(
      'sunniva',
      'weight',
      { quantity: { comparator: '', value: '56.0', unit: 'kg' }, method: 'measured' },
      this.today(),
      patient,
    );
    this.write(
      'sunniva',
      'observations',
      {
        pulsePerMinute: 72,
        systolicMmHg: 130,
        diastolicMmHg: 76,
        temperatureCelsius: 36.8,
        saturationPercent: 97,
        newIrregularPulse: false,
        when: 'before',
        ...more,
      },
      this.today(),
      patient,
    );
    return this;
  }
  asked(patient = 'p1', answers: Record<string, 'yes' | 'no'> = {}): this {
    const all = Object.fromEntries(
      [teachingSheet, ...teachingSheet.regimens]
        .flatMap(({ dayQuestions }) => dayQuestions)
        .map(({ id, holdsOn }) => [id, { answer: answers[id] ?? (holdsOn === 'yes' ? 'no' : 'yes') }]),
    );
    this.write('dana', 'checklist', { answers: all }, this.today(), patient);
    return this;
  }
  go(patient = 'p1'): this {
    this.arrive(patient).observed(patient).asked(patient);
    this.expect('dana', { name: 'decide', patient, decision: 'go' });
    return this;
  }
  pack(more: Partial<Fact<'preparation'>['body']> = {}): Fact<'preparation'>['body'] {
    return {
      product: 'zoledronic acid 5 mg in 100 mL',
      batch: 'PA-2391',
      expiresOn: '2028-04-30' as PlainDate,
      minutes: 30,
      identifiers: ['full name', 'birth date'],
      clearAndColourless: true,
      ...more,
    };
  }
  prepared(patient = 'p1', who: Person = 'dana', more: Partial<Fact<'preparation'>['body']> = {}): this {
    this.write(
      'dana',
      'cannula',
      { site: 'right forearm', gauge: '22', tries: 1, placed: true },
      this.today(),
      patient,
    );
    this.write(
      'dana',
      'flush',
      { milliliters: 10, ranFreely: true, calciumInLine: false, when: 'before' },
      this.today(),
      patient,
    );
    this.write(who, 'preparation', this.pack(more), this.today(), patient);
    return this;
  }
  reading(
    more: Partial<Extract<Act, { name: 'second check' }>['reading']> = {},
  ): Extract<Act, { name: 'second check' }>['reading'] {
    return {
      product: 'zoledronic acid 5 mg in 100 mL',
      batchLastFour: '2391',
      expiryMonth: '2028-04',
      minutes: 30,
      identifiers: ['full name', 'number'],
      ...more,
    };
  }
  check(more: Partial<Extract<Act, { name: 'second check' }>['reading']> = {}, patient = 'p1'): Act {
    return {
      name: 'second check',
      patient,
      preparation: this.newest('preparation', patient).id,
      reading: this.reading(more),
    };
  }
  running(patient = 'p1'): this {
    this.go(patient).prepared(patient);
    this.expect('imre', this.check({}, patient));
    this.expect('dana', { ...startInfusion, patient });
    return this;
  }
}

/** The medicine begins to run: who they are was asked at the chair, and the line was looked along. */
export const startInfusion = {
  name: 'start infusion',
  patient: 'p1',
  plannedMinutes: 30,
  identifiers: ['full name', 'birth date'],
  alongTheLine: lineLookedAlong,
} as const satisfies Act;

/** It runs again after a pause: the line was looked along once more. */
export const resumeInfusion = {
  name: 'resume infusion',
  patient: 'p1',
  alongTheLine: lineLookedAlong,
} as const satisfies Act;

/** On the day of the session, someone booked on it. */
export const onTheDay = (unit = new DayUnit()): DayUnit => unit.booked().at('2026-11-26T08:45:00.000Z');
