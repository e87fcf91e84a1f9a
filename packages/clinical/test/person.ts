/**
 * A person's ledger in a line a fact, for tests. Everything the worked cases of docs/readiness.md call "clear and recorded" is
 * in `clear`, so that a case states only what it is about.
 */
import {
  type BodyOfKind,
  type Day,
  type Entry,
  type KindName,
  type SubjectRecord,
  type Uuid,
  day,
  kindNamed,
  recordOf,
} from '@twelvemonth/clinical';

export type Line = {
  readonly on: string;
  readonly kind: KindName;
  readonly body: unknown;
  readonly id?: Uuid;
  readonly amends?: Uuid;
};

export const at = <Kind extends KindName>(on: string, kind: Kind, body: BodyOfKind<Kind>, id?: Uuid): Line => ({
  on,
  kind,
  body,
  ...(id === undefined ? {} : { id }),
});

const person = 'patient/p1';

export function ledgerOf(lines: readonly Line[]): Entry[] {
  return lines.map(({ on, kind, body, id, amends }, index) => ({
    subject: person,
    kind,
    shape: kindNamed(kind).shape,
    body: kindNamed(kind).body.parse(body),
    effectiveAt: on,
    zone: 'Europe/London',
    id: id ?? `e${index + 1}`,
    act: `a${index + 1}`,
    seq: index + 1,
    recordedAt: `${on}T09:00:00.000Z`,
    author: { staff: 'rn-1', role: 'nurse' },
    previousHash: '',
    hash: '',
    ...(amends === undefined ? {} : { amends }),
  }));
}

export const personOf = (lines: readonly Line[]): SubjectRecord => recordOf(person, ledgerOf(lines));

let labels = 0;
/** A signed laboratory value: "79 umol/L", "<20 nmol/L". */
export function bloods(
  on: string,
  values: Partial<Record<BodyOfKind<'result'>['analyte'], string>>,
  signedOn: string | null = on,
): Line[] {
  const lines: Line[] = [];
  for (const [analyte, text] of Object.entries(values)) {
    const match = /^([<>]=?)?([\d.]+) (\S+)$/.exec(text);
    if (match === null) throw new Error(`not a value: ${text}`);
    labels += 1;
    const id = `result-${labels}`;
    lines.push({
      on,
      kind: 'result',
      id,
      body: { analyte, quantity: { comparator: match[1] ?? '', value: match[2], unit: match[3] } },
    });
    if (signedOn !== null) lines.push(at(signedOn, 'results-signed', { results: [id] }));
  }
  return lines;
}

export const weighed = (on: string, kg: string, method: 'measured' | 'reported' | 'estimated' = 'measured'): Line =>
  at(on, 'weight', { quantity: { comparator: '', value: kg, unit: 'kg' }, method });

export const born = (birth: string, sex: 'female' | 'male' = 'female'): Line =>
  at('2020-01-01', 'identity', {
    family: 'Arkwright-Poe',
    given: 'Wilhelmina',
    born: birth,
    sex,
    number: '999 204 7713',
  });

/** Allergies, pregnancy, consent, teeth, secondary causes and a prescription: recorded and clear. */
export const clear: readonly Line[] = [
  at('2026-01-05', 'allergy', { answer: 'none known' }),
  at('2026-01-05', 'pregnancy', { answer: 'does not apply', reason: 'told us: long past the menopause' }),
  at('2026-01-05', 'consent', { decision: 'given', how: 'spoken' }),
  at('2026-01-05', 'dental', { answer: 'nothing pending' }),
  at('2026-01-05', 'secondary-causes', { answer: 'none found' }),
  at('2026-01-05', 'prescription', {
    regimen: 'zoledronic-acid-yearly',
    validFrom: '2026-01-01' as never,
    validUntil: '2028-12-31' as never,
  }),
];

export const doseGiven = (on: string, id?: Uuid): Line =>
  at(on, 'dose', { medicine: 'zoledronic acid 5 mg', setting: 'this service' }, id);

/** Wednesday 25 November 2026: the day the worked cases are asked on. */
export const asked: Day = day('2026-11-25');
