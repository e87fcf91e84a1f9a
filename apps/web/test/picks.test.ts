/** What a decision may be about is offered where it is written: nothing that only a prescriber settles is out of reach. */
import { decidedAboutKinds } from '@twelvemonth/clinical';
import type { PersonView } from '@twelvemonth/exchange';
import { expect, test } from 'vitest';
import { picksFor } from '../src/person/record/picks.ts';

test("a prescriber's decision offers a result, a weight, a dose, a condition, a reaction, a fracture and observations, and nothing else", () => {
  const kinds = ['result', 'weight', 'dose', 'condition', 'reaction', 'fracture', 'observations', 'call', 'consent'];
  const entries = kinds.map((kind) => ({ id: kind, kind, on: '2026-11-20', text: kind }));
  const { about } = picksFor('prescriber-decision', { entries } as unknown as PersonView, [], undefined);
  expect(about?.map(({ value }) => value).toSorted()).toEqual([...decidedAboutKinds].toSorted());
  expect(about?.map(({ value }) => value)).toContain('fracture');
});
