/**
 * A small invented ward for the store's tests: patients, sessions with numbered places, and the rows kept beside them.
 * The kinds are the product's own; their rules are not what is tested here.
 */
import type { Draft, Entry, Instant, Subject } from '@twelvemonth/clinical';
import type { ActRequest, Decision, DerivedRow, Projection } from '../../src/index.ts';

export const nurse = { staff: 'nurse-adeyemi', role: 'nurse' } as const;
export const nine: Instant = '2026-11-25T09:00:00.000Z';

export const draft = (subject: Subject, kind: string, body: unknown, more: Partial<Draft> = {}): Draft => ({
  subject,
  kind,
  shape: 1,
  body,
  effectiveAt: '2026-11-25',
  zone: 'Europe/London',
  ...more,
});

/** An act that writes these drafts whatever it finds. */
export const writing = (id: string, drafts: readonly Draft[], more: Partial<ActRequest> = {}): ActRequest => ({
  id,
  content: JSON.stringify(drafts),
  by: nurse,
  at: nine,
  subjects: [...new Set(drafts.map((each) => each.subject))],
  decide: () => ({ drafts }),
  ...more,
});

export const weighing = (id: string, patient: string, kilograms = 56.2, more: Partial<ActRequest> = {}): ActRequest =>
  writing(id, [draft(`patient/${patient}`, 'weight', { kg: String(kilograms) })], more);

/** Books a place for a patient: an entry in the session's notes and its mirror in the patient's, refused if taken. */
export function booking(
  id: string,
  session: string,
  patient: string,
  place: number,
  more: Partial<ActRequest> = {},
): ActRequest {
  const sessionSubject: Subject = `session/${session}`;
  const patientSubject: Subject = `patient/${patient}`;
  return {
    id,
    content: JSON.stringify([session, patient, place]),
    by: nurse,
    at: nine,
    subjects: [patientSubject, sessionSubject],
    decide: (ledgers): Decision => {
      const taken = (ledgers.get(sessionSubject) ?? []).some(
        (entry) => entry.kind === 'session-place-taken' && placeOf(entry) === place,
      );
      if (taken) return { refusals: [{ name: 'place-taken', says: `Place ${place} is taken.` }] };
      return {
        drafts: [
          draft(sessionSubject, 'session-place-taken', { place, patient }),
          draft(patientSubject, 'place-booked', {
            session,
            unit: 'thornbeck',
            on: '2027-01-28',
            arriveAt: '10:40',
            place,
          }),
        ],
      };
    },
    ...more,
  };
}

const placeOf = (entry: Entry): unknown => (entry.body as { readonly place?: unknown }).place;

/** One row saying how many entries there are, one for each booked place, one for each session. */
export const wardRows: Projection = (subject, entries) => {
  if (subject.startsWith('session/')) {
    const taken = entries.filter((entry) => entry.kind === 'session-place-taken').length;
    return [{ table: 'session', key: '', columns: { unit: 'thornbeck', on_day: 20_000, taken } }];
  }
  if (!subject.startsWith('patient/')) return [];
  const named = entries.findLast((entry) => entry.kind === 'identity')?.body as
    | { readonly family?: string }
    | undefined;
  const rows: DerivedRow[] = [
    {
      table: 'standing',
      key: '',
      columns: { standing: 'booked', owner: 'clerk', on_day: entries.length, detail: null },
    },
    ...entries
      .filter((entry) => entry.kind === 'place-booked')
      .map((entry): DerivedRow => ({
        table: 'place',
        key: entry.id,
        columns: { session: 's1', place: Number(placeOf(entry)) },
      })),
  ];
  return named === undefined
    ? rows
    : [
        ...rows,
        {
          table: 'person',
          key: '',
          columns: { family: named.family ?? null, search: (named.family ?? '').toLowerCase() },
        },
      ];
};
