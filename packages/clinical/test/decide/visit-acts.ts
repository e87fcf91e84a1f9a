/** Acts of a visit as the tests of its steps send them. */
import { type Act, day, visitOn } from '@twelvemonth/clinical';
import { type DayUnit, startInfusion } from './a-day-unit.ts';

export const decision = (
  which: 'go' | 'put off' | 'ask a prescriber',
  more: Partial<Extract<Act, { name: 'decide' }>> = {},
): Act => ({ name: 'decide', patient: 'p1', decision: which, ...more });
export const start = (plannedMinutes = 30): Act => ({ ...startInfusion, plannedMinutes });
export const finish = (more: Partial<Extract<Act, { name: 'finish infusion' }>> = {}): Act => ({
  name: 'finish infusion',
  patient: 'p1',
  milliliters: 100,
  ...more,
});
export const names = (refusals: readonly { name: string }[]): string[] => refusals.map(({ name }) => name);
export const steps = (unit: DayUnit): string =>
  (visitOn(unit.patient(), day(unit.today()))?.steps ?? []).map(({ step, state }) => `${step} ${state}`).join(', ');

export const withdraw = (entry: string): Act => ({ name: 'withdraw', patient: 'p1', entry, reason: 'misread' });
