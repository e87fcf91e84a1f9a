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
  /** Place 1 arrives at the first of these, and so on: as whoever has the place was told. HH:MM. */
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
  const takings = takingsOf(record);
  return {
    id: subjectId(record.subject),
    unit,
    on: day(on),
    zone,
    opensAt,
    closesAt,
    arriveAt: arriveAt.map((time, index) => takings.get(index + 1)?.arriveAt ?? time),
    cancelled: cancelled !== undefined && cancelled.seq > planned.seq ? { reason: cancelled.body.reason } : undefined,
    taken: new Map([...takings].map(([place, { patient }]) => [place, patient])),
  };
}

/** The arrival times as the session was planned, whatever anybody was told since. HH:MM */
export const plannedTimesOf = (record: SubjectRecord): readonly string[] =>
  newestWritten(record, 'session-planned')?.body.arriveAt ?? [];

type Taking = { readonly patient: string; readonly arriveAt: string | undefined };

function takingsOf(record: SubjectRecord): Map<number, Taking> {
  const moves = [...asWritten(record, 'session-place-taken'), ...factsOf(record, 'session-place-released')].toSorted(
    (a, b) => a.seq - b.seq,
  );
  const taken = new Map<number, Taking>();
  for (const { kind, body } of moves) {
    if (kind === 'session-place-taken') taken.set(body.place, { patient: body.patient, arriveAt: body.arriveAt });
    else taken.delete(body.place);
  }
  return taken;
}

export const placeOf = (session: SessionList, patient: string): number | undefined => {
  for (const [place, whose] of session.taken) if (whose === patient) return place;
  return undefined;
};
