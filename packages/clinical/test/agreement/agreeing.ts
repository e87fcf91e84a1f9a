import { expect, test } from 'vitest';
import { describe as told, differencesOf } from '../oracle/agreement.ts';

const SLICE = 100;

/** Ledgers `first` to `last` are asked about on ten consecutive days, of the engine and of the checker. */
export function agreeOnLedgers(first: number, last: number): void {
  test.each(Array.from({ length: Math.ceil((last - first + 1) / SLICE) }, (_, slice) => first + slice * SLICE))(
    'a hundred ledgers from ledger %i on',
    (from) => {
      const differences = Array.from({ length: SLICE }, (_, index) => differencesOf(from + index)).flat();
      expect(differences.slice(0, 3).map(told).join('\n')).toBe('');
    },
  );
}
