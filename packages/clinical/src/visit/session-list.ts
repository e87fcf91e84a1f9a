/** A session as its own notes tell it: when and where, its arrival times, whose each place is. They are the truth of a list. */
import { type Day, day } from '../calendar/day.ts';
import { subjectId } from '../ledger/subject.ts';
import { asWritten, newestWritten } from '../record/newest-written.ts';
import { type SubjectRecord, factsOf } from '../record/patient-record.ts';

export type SessionList = {
  readonly id: string;
  readonly unit: string;
  readonly on: Day;
  /** IANA time zone. */
  readonly zone: string;
  /** HH:MM */
  readonly opensAt: string;
  readonly closesAt: string;
  /** Place 1 arrives at the first of these, and so on. HH:MM. */
  readonly arriveAt: readonly string[];
  readonly cancelled: { readonly reason: string } | undefined;
  /** Patient id by place number. */
  readonly taken: ReadonlyMap<number, string>;
};

/** Undefined: no such session was ever planned. */
export function sessionOf(record: SubjectRecord): SessionList | undefined {
  const planned = newestWritten(record, 'session-planned');
  if (planned === undefined) return undefined;
  const cancelled = newestWritten(record, 'session-cancelled');
  const { unit, on, zone, opensAt, closesAt, arriveAt } = planned.body;
  return {
    id: subjectId(record.subject),
    unit,
    on: day(on),
    zone,
    opensAt,
    closesAt,
    arriveAt,
    cancelled: cancelled !== undefined && cancelled.seq > planned.seq ? { reason: cancelled.body.reason } : undefined,
    taken: takenPlaces(record),
  };
}

function takenPlaces(record: SubjectRecord): Map<number, string> {
  const moves = [...asWritten(record, 'session-place-taken'), ...factsOf(record, 'session-place-released')].toSorted(
    (a, b) => a.seq - b.seq,
  );
  const taken = new Map<number, string>();
  for (const { kind, body } of moves) {
    if (kind === 'session-place-taken') taken.set(body.place, body.patient);
    else taken.delete(body.place);
  }
  return taken;
}

export const placeOf = (session: SessionList, patient: string): number | undefined => {
  for (const [place, whose] of session.taken) if (whose === patient) return place;
  return undefined;
};
