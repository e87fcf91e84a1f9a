/** Hypersensitivity to any bisphosphonate stops; never having asked is not "none" (docs/readiness.md R8). */
import { isBisphosphonate } from '../protocol/medicines.ts';
import type { Protocol } from '../protocol/protocol.ts';
import type { Evidence } from './evidence.ts';
import { type Judge, type Requirement, always, judgement, readyPath } from './requirement.ts';

function judge({ allergies, allergiesAssumed }: Evidence, { regimen }: Protocol): Judge {
  const inputs = allergies.map(({ on, id, body }) => ({
    label: 'allergy',
    text: body.answer === 'other' ? body.substance : body.answer,
    on,
    entry: id,
  }));
  const stops = allergies.find(({ body }) => body.answer === 'bisphosphonate');
  if (stops !== undefined && isBisphosphonate(regimen.medicine)) {
    return always(
      judgement('not ready', 'hypersensitivity to a bisphosphonate', () => ({
        says: 'A reaction to a bisphosphonate is recorded: not this medicine.',
        inputs,
      })),
      {
        is: 'blocked',
        by: {
          what: 'a prescriber: another medicine',
          who: 'prescriber',
          step: 'prescriber decides',
          settled: undefined,
        },
      },
    );
  }
  if (allergies.length === 0 && !allergiesAssumed) {
    return always(
      judgement('cannot say', 'allergies never asked', () => ({
        says: 'Nobody has recorded an answer about allergies.',
      })),
      { is: 'steps', needs: { ask: { what: 'allergies', why: 'allergies were never asked' } } },
    );
  }
  return always(
    judgement('ready', 'no hypersensitivity', () => ({
      says:
        stops === undefined
          ? 'No reaction to a bisphosphonate is recorded.'
          : `A reaction to a bisphosphonate is recorded; ${regimen.medicine} is none.`,
      inputs,
    })),
    readyPath,
  );
}

export const hypersensitivity: Requirement = {
  id: 'hypersensitivity',
  title: 'Hypersensitivity',
  clearedBy: 'the answer to the question; a prescriber if it is a bisphosphonate. No exception',
  exceptionPossible: false,
  judge,
};
