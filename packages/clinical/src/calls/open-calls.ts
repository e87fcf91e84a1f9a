/** Calls that still wait for somebody: a red flag nobody has answered, a promise to ring back, a name nobody has found. */
import { type Day, day } from '../calendar/day.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { flagsIn } from './asked-flags.ts';

export type OpenCall = {
  readonly call: Fact<'advice-call'>;
  readonly waitsFor: 'an answer' | 'a call back';
  readonly due: Day;
};

/** Answered by an entry about it; ringing back also by a later call in which somebody was reached. */
export function openCallsOf(record: SubjectRecord): readonly OpenCall[] {
  const answered = new Set(factsOf(record, 'advice-answered').map(({ body }) => body.about));
  return factsOf(record, 'advice-call').flatMap((call): OpenCall[] => {
    if (answered.has(call.id)) return [];
    if (flagsIn(call.body.redFlags).length > 0) return [{ call, waitsFor: 'an answer', due: call.on }];
    if (call.body.callBackOn === undefined) return [];
    const spokenSince =
      factsOf(record, 'call').some(({ seq, body }) => seq > call.seq && body.reached) ||
      factsOf(record, 'advice-call').some(({ seq }) => seq > call.seq);
    return spokenSince ? [] : [{ call, waitsFor: 'a call back', due: day(call.body.callBackOn) }];
  });
}

/** Of a unit: calls whose person nobody has found yet. */
export function unknownCallsOf(unit: SubjectRecord): readonly Fact<'unknown-call'>[] {
  const settled = new Set(factsOf(unit, 'unknown-call-settled').map(({ body }) => body.call));
  return factsOf(unit, 'unknown-call').filter(({ id }) => !settled.has(id));
}
