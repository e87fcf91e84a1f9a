/** A result counts once a person has signed it (hazard 4), and a correction is a new value that wants a signature of its own (hazard 12). */
import { describe, expect, it } from 'vitest';
import { day, entriesFromDrafts, evidenceOf, parseLedger, recordOf, usualPerson } from '../src/index.ts';

function creatinine(text: string) {
  const parsed = parseLedger(`person  female, born 1941-06-02\n${text}`);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  const record = recordOf(usualPerson, entriesFromDrafts(parsed.drafts, { start: '2026-11-01T09:00:00.000Z' }));
  return evidenceOf(record, day('2026-11-25')).creatinine;
}

describe('a signature', () => {
  it('makes the result count', () => {
    expect(creatinine('20 Nov 2026  #a creatinine 88 umol/L')?.signed).toBe(false);
    expect(creatinine('20 Nov 2026  #a creatinine 88 umol/L\n21 Nov 2026  signed #a')?.signed).toBe(true);
  });
  it('on the first value does not cover its correction; one on the correction does', () => {
    const corrected =
      '20 Nov 2026  #a creatinine 88 umol/L\n21 Nov 2026  signed #a\n20 Nov 2026  #b creatinine 188 umol/L  corrects #a';
    expect(creatinine(corrected)?.signed).toBe(false);
    expect(creatinine(`${corrected}\n22 Nov 2026  signed #b`)?.signed).toBe(true);
  });
});
