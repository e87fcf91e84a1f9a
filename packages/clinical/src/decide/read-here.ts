/** Acts are about notes that are read by themselves, and the notes read in them must be at hand. */
import { isSubjectOf, subjectId } from '../ledger/subject.ts';
import { readIn, readInThese } from '../record/same-person.ts';
import { patientSubject } from '../record/together.ts';
import type { Act } from './act.ts';
import { recordIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import { subjectsOf } from './subjects-of.ts';
import type { Surroundings } from './surroundings.ts';

export function checkReadHere(act: Act, now: Surroundings): readonly Refusal[] {
  return subjectsOf(act)
    .filter((of) => isSubjectOf('patient', of))
    .flatMap((of) => {
      // Reading apart is the one act that is about notes read in others.
      if (act.name === 'read apart' && subjectId(of) === act.other) return [];
      const record = recordIn(now, of);
      // Someone new is only compared with those others.
      if (act.name === 'register' && subjectId(of) !== act.patient) return [];
      const kept = readIn(record);
      if (kept !== undefined) {
        return [
          refusal('read-in-other-notes', 'These notes are read in other notes of the same person: write there.', {
            field: `patient/${kept}`,
            remedy: 'open the notes that are kept',
          }),
        ];
      }
      return readInThese(record).some((patient) => now.ledgers.get(patientSubject(patient)) === undefined)
        ? [
            refusal('notes-not-at-hand', 'Other notes of this person were joined to these a moment ago.', {
              remedy: 'read them, then decide again',
            }),
          ]
        : [];
    });
}
