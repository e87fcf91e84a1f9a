/**
 * Whether the unit shown writes American English: its thermometers read Fahrenheit then, a date in figures
 * begins with the month, and our sentences use its words.
 */
import { inAmerican } from '@twelvemonth/clinical';
import { createContext, use } from 'react';
import type { DateOrder } from './dates.ts';

/** Told by the frame, once for all that stands in it. */
export const WritesAmerican = createContext(false);
export const useWritesAmerican = (): boolean => use(WritesAmerican);

/** How dates are typed in figures alone at the unit. */
export const useDateOrder = (): DateOrder => (useWritesAmerican() ? 'month first' : 'day first');

/** Puts sentences of ours into the words of the unit: every text inside what it is given, for it holds none that a person typed. */
export function useUnitWords(): <Value>(value: Value) => Value {
  return useWritesAmerican() ? american : asItIs;
}

const asItIs = <Value>(value: Value): Value => value;

function american<Value>(value: Value): Value {
  if (typeof value === 'string') return inAmerican(value) as Value;
  if (Array.isArray(value)) return value.map(american) as Value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, american(each)])) as Value;
}
