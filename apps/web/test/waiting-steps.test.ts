/** What waits on a device counts at the visit as it will in the notes: a failed try is no cannula, a put-off ends what was to come. */
import { randomUUID } from 'node:crypto';
import type { VisitStep, VisitView } from '@twelvemonth/exchange';
import { dripSteps } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { withWaiting } from '../src/offline/waiting-steps.ts';
import type { WaitingAct } from '../src/offline/waiting.ts';

/** Somebody at the chair, whose first steps are done. */
const doneUntil = (last: VisitStep['step'], more: Partial<VisitView> = {}): VisitView => {
  const until = dripSteps.indexOf(last);
  const steps = dripSteps.map((step, index): VisitStep => ({
    step,
    state: index <= until ? 'done' : index === until + 1 ? 'waiting' : 'to come',
  }));
  return { patient: 'wilhelmina', steps, ...more } as VisitView;
};
const waits = (act: object, minute = 0): WaitingAct =>
  ({
    id: randomUUID(),
    act: { patient: 'wilhelmina', ...act },
    patient: 'wilhelmina',
    name: 'Wilhelmina',
    staff: 's1',
    staffName: 'Nora Nurse',
    wroteAt: `2026-11-25T09:${String(minute).padStart(2, '0')}:00.000Z`,
    deviceAt: '2026-11-25T09:00:00.000Z',
  }) as unknown as WaitingAct;
const line = (kind: string, body: object = {}): WaitingAct => waits({ name: 'record', line: { kind, body } });
const turnAfter = (data: VisitView, ...all: WaitingAct[]): string | undefined => withWaiting(data, all).current;

describe('what waits', () => {
  test('a step that was done has the next one its turn', () => {
    expect(turnAfter(doneUntil('decision'), line('cannula', { placed: true }))).toBe('flush');
  });
  test('a try that failed placed no cannula', () => {
    expect(turnAfter(doneUntil('decision'), line('cannula', { placed: false }))).toBe('cannula');
  });
  test('a flush that did not run freely, with calcium in the line, or after the medicine, is none', () => {
    const flushed = doneUntil('cannula');
    const body = { when: 'before', ranFreely: true, calciumInLine: false };
    expect(turnAfter(flushed, line('flush', body))).toBe('preparation');
    expect(turnAfter(flushed, line('flush', { ...body, ranFreely: false }))).toBe('flush');
    expect(turnAfter(flushed, line('flush', { ...body, calciumInLine: true }))).toBe('flush');
    expect(turnAfter(flushed, line('flush', { ...body, when: 'after' }))).toBe('flush');
    expect(turnAfter(flushed, line('flush', body), line('flush', { ...body, calciumInLine: true }))).toBe('flush');
  });
  test('another cannula is flushed anew, another pack is checked anew', () => {
    expect(turnAfter(doneUntil('flush'), line('cannula', { placed: true }))).toBe('flush');
    expect(turnAfter(doneUntil('second check'), line('preparation'))).toBe('second check');
  });
  test('observations during or after are not those before', () => {
    expect(turnAfter(doneUntil('arrive'), line('observations', { when: 'after' }))).toBe('observations');
    expect(turnAfter(doneUntil('arrive'), line('observations', { when: 'before' }))).toBe('checklist');
  });
  test('who was put off goes home: nothing of the treatment is to come, a cannula that lies is taken out', () => {
    const putOff = waits({ name: 'decide', decision: 'put off' });
    const early = withWaiting(doneUntil('checklist'), [putOff]);
    expect(early.steps.map(({ step }) => step)).toEqual(['arrive', 'observations', 'checklist', 'decision', 'leave']);
    expect(early.current).toBe('leave');
    expect(turnAfter(doneUntil('flush'), putOff)).toBe('removal');
    expect(turnAfter(doneUntil('checklist'), putOff, line('left'))).toBeUndefined();
  });
  test('where a prescriber is asked nothing goes on', () => {
    const asked = withWaiting(doneUntil('checklist'), [waits({ name: 'decide', decision: 'ask a prescriber' })]);
    expect(asked.current).toBe('decision');
    expect(asked.steps.find(({ step }) => step === 'decision')?.state).toBe('running');
  });
  test('a cannula that is out in a pause does not end the infusion', () => {
    const infusion = { paused: true } as NonNullable<VisitView['infusion']>;
    expect(turnAfter(doneUntil('second check', { infusion }), line('cannula-removed'))).toBe('infusion');
  });
  test('of another person it changes nothing', () => {
    const data = doneUntil('decision');
    expect(withWaiting({ ...data, patient: 'otto' }, [line('cannula', { placed: true })]).steps).toEqual(data.steps);
  });
});
