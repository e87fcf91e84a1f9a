/** Forms come from the kinds' own schemas: whatever a kind's example says can be shown in its form and comes out unchanged. */
import { type KindName, handWrittenKinds, kindNamed } from '@twelvemonth/clinical';
import { describe, expect, test } from 'vitest';
import { bodyFrom, valuesFrom } from '../src/kind-form/form-values.ts';
import { type Shape, shapeOf } from '../src/kind-form/shape.ts';
import { isCorrectable } from '../src/person/may-change.ts';
import { recordMenu } from '../src/person/record/record-menu.ts';

/** They have screens of their own: a checklist answers the protocol's questions, aftercare the script's, a drafted letter is composed from the notes. */
const withoutForm: ReadonlySet<KindName> = new Set([
  'checklist',
  'letter-drafted',
  'aftercare',
  'own-page',
  'page-sent',
  'reminders-plan',
  'told-ahead',
]);
const kinds = handWrittenKinds.filter((kind) => !withoutForm.has(kind));

const shapeFor = (kind: KindName): Shape => {
  const shape = shapeOf(kindNamed(kind).body);
  if (shape === undefined) throw new Error(`${kind} has no form`);
  return shape;
};

describe.each(kinds)('%s', (kind) => {
  const { example, body } = kindNamed(kind);
  test('opens with its example and gives the same body back', () => {
    const shape = shapeFor(kind);
    expect(bodyFrom(shape, valuesFrom(shape, example))).toEqual(example);
  });

  test('an empty form says nothing that was not said', () => {
    const made = bodyFrom(shapeFor(kind), {});
    expect(made).toEqual({});
    expect(body.safeParse(made).success).toBe(kind === 'well-since' || kind === 'contact');
  });
});

test('each answer of a kind with several answers shows its own fields only', () => {
  const shape = shapeFor('consent');
  if (shape.is !== 'kinds of answer') throw new Error('consent is one of several answers');
  expect(shape.variants.map(({ value, fields }) => [value, fields.map(({ key }) => key)])).toEqual([
    ['given', ['how']],
    ['best interest', ['basis', 'consulted']],
    ['not given', ['reason']],
  ]);
});

test('a value without its unit is sent without one, never with a guessed one', () => {
  const shape = shapeFor('weight');
  const typed = { quantity: { comparator: '', value: '56.2', unit: undefined }, method: 'measured' } as const;
  const made = bodyFrom(shape, typed);
  expect(made).toEqual({ quantity: { comparator: '', value: '56.2' }, method: 'measured' });
  expect(kindNamed('weight').body.safeParse(made).success).toBe(false);
});

test('what has no form can be neither chosen on the menu nor corrected by one', () => {
  expect(
    recordMenu.flatMap(({ choices }) => choices).filter((choice) => choice !== 'sample' && withoutForm.has(choice)),
  ).toEqual([]);
  expect(isCorrectable('letter-drafted')).toBe(false);
});

test('everything on the menu can be written by hand', () => {
  const choices = recordMenu.flatMap(({ choices }) => choices).filter((choice) => choice !== 'sample');
  expect(choices.filter((choice) => !handWrittenKinds.includes(choice))).toEqual([]);
  expect(new Set(choices).size).toBe(choices.length);
});
