/** A day from either format, told apart by the name each has for its beginning. */
import { readSharedDay } from './shared-format.ts';
import { type UnitDayRead, readUnitDay } from './unit-format.ts';

export function readAnyDay(json: unknown): UnitDayRead {
  const isShared = typeof json === 'object' && json !== null && 'dayStart' in json;
  if (!isShared) return readUnitDay(json);
  const read = readSharedDay(json);
  // The chain of the shared days and its minutes are part of their format.
  return read.ok ? { ...read, hasUsualMinutes: false } : read;
}
