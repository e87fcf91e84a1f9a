import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Entry,
  type SubjectRecord,
  day,
  entriesFromDrafts,
  factWithId,
  factsOf,
  kindNames,
  latest,
  parseLedger,
  recordOf,
  nothingKept,
} from '@twelvemonth/clinical';
import { ledgers } from './notation-arbitraries.ts';

const start = '2026-03-01T08:00:00.000Z';

function entries(text: string): Entry[] {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return entriesFromDrafts(read.drafts, { start });
}
const record = (text: string, asOf = {}) => recordOf('patient/person', entries(text), asOf);
const weights = (of: SubjectRecord) => factsOf(of, 'weight').map((fact) => fact.body.quantity.value);
const says = (of: SubjectRecord) => of.problems.map((problem) => problem.says);

/** Facts as a reader sees them: what counts and in which order, without the sequence they arrived in. */
const seen = (of: SubjectRecord) => of.all.map((fact) => [fact.kind, fact.on, fact.at, fact.body]);

describe('corrections', () => {
  test('a correction stands in for what it corrects, and is found by the id of either', () => {
    const of = record('3 Mar 2026 #a weight 56.2 kg measured\n4 Mar 2026 #b weight 65.2 kg measured corrects #a');
    expect(weights(of)).toEqual(['65.2']);
    expect(latest(of, 'weight')?.first).toBe('a');
    expect(factWithId(of, 'a')).toBe(factWithId(of, 'b'));
    expect(of.problems).toEqual([]);
  });
  test('a correction of a correction counts once, as its last wording, under the first name', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 #b weight 57 kg measured corrects #a\n3 Mar 2026 #c weight 58 kg measured corrects #b',
    );
    expect(weights(of)).toEqual(['58']);
    expect(latest(of, 'weight')?.first).toBe('a');
  });
  test('two corrections of one entry: the later written wins', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 #b weight 57 kg measured corrects #a\n3 Mar 2026 #c weight 58 kg measured corrects #a',
    );
    expect(weights(of)).toEqual(['58']);
  });
  test('withdrawing a correction brings back nothing of what was found wrong before', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 #b weight 57 kg measured corrects #a\n4 Mar 2026 withdraw #b, "mistyped"',
    );
    expect(weights(of)).toEqual([]);
    expect(of.problems).toEqual([]);
  });
  test('nor its signature: the value before is written and signed again', () => {
    const text =
      '3 Mar 2026 #a creatinine 79 umol/L\n3 Mar 2026 signed #a\n4 Mar 2026 #b creatinine 90 umol/L corrects #a\n5 Mar 2026 withdraw #b, "of another sample"';
    expect(factsOf(record(text), 'result')).toEqual([]);
    expect(factsOf(record(`${text}\n3 Mar 2026 creatinine 79 umol/L`), 'result')).toHaveLength(1);
  });
  test('a withdrawal of a withdrawal brings nothing back, and says so', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n4 Mar 2026 #w withdraw #a, "mistyped"\n5 Mar 2026 withdraw #w, "it was right"',
    );
    expect(weights(of)).toEqual([]);
    expect(says(of)).toEqual(['withdraws a withdrawal: what that voided stays so until it is written again']);
  });
  test('withdrawing the middle of a chain voids all of it', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 #b weight 57 kg measured corrects #a\n3 Mar 2026 weight 58 kg measured corrects #b\n4 Mar 2026 withdraw #b, "x"',
    );
    expect(weights(of)).toEqual([]);
    expect(of.problems).toEqual([]);
  });
  test('withdrawing what was corrected takes the correction with it', () => {
    const of = record(
      '3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 weight 57 kg measured corrects #a\n4 Mar 2026 withdraw #a, "another person\'s"',
    );
    expect(weights(of)).toEqual([]);
    expect(of.problems).toEqual([]);
  });
  test('a correction of another kind is a problem and does not count', () => {
    const of = record('3 Mar 2026 #a weight 56.2 kg measured\n3 Mar 2026 #b height 160 cm peak adult corrects #a');
    expect(weights(of)).toEqual(['56.2']);
    expect(factsOf(of, 'height')).toEqual([]);
    expect(of.problems).toEqual([{ entry: 'b', seq: 2, says: 'corrects an entry of another kind' }]);
  });
  test('corrections that name each other, or themselves, are told and do not count twice', () => {
    const two = entries('3 Mar 2026 #a weight 56 kg measured\n3 Mar 2026 #b weight 57 kg measured corrects #a');
    const circle = two.map((entry) => (entry.id === 'a' ? { ...entry, amends: 'b' } : entry));
    expect(says(recordOf('patient/person', circle))).toContain('corrects an entry that is not in these notes');
    const itself = two.slice(0, 1).map((entry) => ({ ...entry, amends: 'a' }));
    expect(says(recordOf('patient/person', itself))).toEqual(['corrects an entry that is not in these notes']);
  });
  test('a withdrawal of an entry kept elsewhere is a problem, never a silence', () => {
    const [first] = entries('3 Mar 2026 #a left card given yes\n3 Mar 2026 withdraw #a, "x"').slice(1);
    const of = recordOf('patient/person', first === undefined ? [] : [first]);
    expect(says(of)).toEqual(['withdraws an entry that is not in these notes']);
  });
});

describe('as of', () => {
  const text = `3 Mar 2026 #a weight 56.2 kg measured written "2026-03-03T09:00:00.000Z"
5 Mar 2026 weight 57 kg measured corrects #a written "2026-03-05T09:00:00.000Z"
4 Mar 2026 creatinine 88 umol/L written "2026-03-06T09:00:00.000Z"`;
  test('what we knew that morning leaves out what was written later, also about earlier days', () => {
    expect(weights(record(text, { knownAt: '2026-03-04T23:59:59.999Z' }))).toEqual(['56.2']);
    expect(weights(record(text, { knownAt: '2026-03-05T09:00:00.000Z' }))).toEqual(['57']);
    expect(factsOf(record(text, { knownAt: '2026-03-05T23:00:00.000Z' }), 'result')).toEqual([]);
    expect(record(text, { knownAt: '2026-03-05T23:00:00.000Z' }).lastSeq).toBe(2);
    expect(record(text, { knownAt: '2026-03-01T00:00:00.000Z' }).lastSeq).toBe(0);
  });
  test('what was true by a day leaves out what was true later', () => {
    expect(factsOf(record(text, { on: day('2026-03-03') }), 'result')).toEqual([]);
    expect(factsOf(record(text, { on: day('2026-03-04') }), 'result')).toHaveLength(1);
  });
  test('reading as of the end is reading everything', () => {
    expect(record(text, { knownAt: '2030-01-01T00:00:00.000Z', on: day('2030-01-01') })).toEqual(record(text));
  });
});

describe('order', () => {
  test('days first, then the order of the same day, then the moment said, then the order of writing', () => {
    const of = record(`28 Jan 2027 dose zoledronic acid 5 mg, this service
28 Jan 2027 #r creatinine 88 umol/L
28 Jan 2027 10:51 left card given yes
28 Jan 2027 signed #r
28 Jan 2027 arrived session s1, identifiers [full name, number]
28 Jan 2027 weight 57 kg measured
28 Jan 2027 weight 56 kg measured
27 Jan 2027 died source "family doctor"
27 Jan 2027 person female, born 1941-06-02
28 Jan 2027 illness "cold"`);
    expect(of.all.map((fact) => fact.kind)).toEqual([
      'identity',
      'died',
      'illness',
      'weight',
      'weight',
      'result',
      'results-signed',
      'arrived',
      'dose',
      'left',
    ]);
    expect(weights(of)).toEqual(['57', '56']);
  });
  test('of one kind on one day the later moment comes last, whatever was written first', () => {
    const of = record(
      '28 Jan 2027 11:00 weight 57 kg measured\n28 Jan 2027 10:00 weight 56 kg measured\n28 Jan 2027 10:30 +01:00 weight 55 kg measured',
    );
    expect(weights(of)).toEqual(['55', '56', '57']);
  });

  test('order of arrival does not matter: facts of different kinds and days read the same however they were brought in', () => {
    fc.assert(
      fc.property(
        ledgers.chain((drafts) =>
          fc.tuple(
            fc.constant(drafts),
            fc.shuffledSubarray(
              drafts.map((_, index) => index),
              { minLength: drafts.length },
            ),
          ),
        ),
        ([drafts, order]) => {
          // Corrections name what was written before them, and of two entries of one kind and day the later written wins: both
          // are about the order of writing, so they are left out here.
          const plain = drafts.filter((draft) => draft.amends === undefined);
          const first = new Map(plain.map((draft) => [`${draft.kind} ${draft.effectiveAt.slice(0, 10)}`, draft]));
          const kept = plain.filter((draft) => first.get(`${draft.kind} ${draft.effectiveAt.slice(0, 10)}`) === draft);
          const shuffled = order.flatMap((index) => {
            const draft = drafts[index];
            return draft !== undefined && kept.includes(draft) ? [draft] : [];
          });
          const named = (list: typeof kept) =>
            list.map((draft) => ({
              ...draft,
              subject: 'patient/person' as const,
              id: draft.id ?? `d${kept.indexOf(draft)}`,
            }));
          const facts = (list: typeof kept) =>
            seen(recordOf('patient/person', entriesFromDrafts(named(list), { start }))).toSorted((a, b) =>
              JSON.stringify(a) < JSON.stringify(b) ? -1 : 1,
            );
          expect(facts(shuffled)).toEqual(facts(kept));
          const byKind = recordOf('patient/person', entriesFromDrafts(named(shuffled), { start }));
          for (const kind of kindNames) {
            const days = factsOf(byKind, kind).map((fact) => fact.on);
            expect(days).toEqual(days.toSorted((a, b) => a - b));
          }
        },
      ),
      { seed: 4, numRuns: 400 },
    );
  });
  test('facts come in order of day, and every fact of a kind list is in the whole list', () => {
    fc.assert(
      fc.property(ledgers, (drafts) => {
        const of = recordOf('patient/person', entriesFromDrafts(drafts, { start }));
        const days = of.all.map((fact) => fact.on);
        expect(days).toEqual(days.toSorted((a, b) => a - b));
        expect(kindNames.flatMap((kind) => factsOf(of, kind)).length).toBe(of.all.length);
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('what cannot be read becomes a problem with its place, and nothing is thrown', () => {
  test('a kind this version does not know', () => {
    const of = record('3 Mar 2026 raw "bone-scan" shape 1 "{}"\n3 Mar 2026 weight 57 kg measured');
    expect(of.problems).toEqual([{ entry: 'e1', seq: 1, says: 'a kind this version does not know: bone-scan' }]);
    expect(weights(of)).toEqual(['57']);
  });
  test('a shape newer than this version', () => {
    const of = record('3 Mar 2026 raw "weight" shape 2 "{}"');
    expect(of.problems).toHaveLength(1);
    expect(says(of)[0]).toContain('newer version');
    expect(of.all).toEqual([]);
  });
  test('a date that cannot be read', () => {
    expect(says(record('"31.02.2026" weight 57 kg measured'))).toEqual(['its date cannot be read: 31.02.2026']);
  });
  test('an empty ledger is an empty record', () => {
    expect(recordOf('patient/person', [])).toEqual({
      subject: 'patient/person',
      lastSeq: 0,
      facts: new Map(),
      all: [],
      problems: [],
      kept: nothingKept(),
    });
  });

  const junk = fc.record({
    kind: fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom('withdrawal', 'weight') },
      fc.constantFrom(...kindNames),
      fc.string({ maxLength: 12 }),
      fc.constantFrom('__proto__', 'constructor', 'toString'),
    ),
    shape: fc.oneof(fc.integer({ min: -2, max: 5 }), fc.double()),
    body: fc.oneof(
      fc.constantFrom(null, undefined, 3, 'text', [], { entry: 'j0' }, { entry: 7 }),
      fc.anything({ maxDepth: 2 }),
    ),
    effectiveAt: fc.oneof(
      fc.constantFrom('2026-03-03', '2026-03-03T10:00:00.000+00:00', '2026-02-30', ''),
      fc.string({ maxLength: 30 }),
    ),
    amends: fc.option(fc.constantFrom('j0', 'j1', 'j2', 'j3', 'elsewhere'), { nil: undefined, freq: 2 }),
  });
  test('any junk at all', () => {
    fc.assert(
      fc.property(fc.array(junk, { maxLength: 6 }), (list) => {
        const made = list.map(({ amends, ...rest }, index) => ({
          ...rest,
          ...(amends === undefined ? {} : { amends }),
          subject: 'patient/person' as const,
          zone: 'Europe/London',
          id: `j${index}`,
          act: 'a',
          seq: index + 1,
          recordedAt: start,
          author: { staff: 'nurse', role: 'nurse' as const },
          previousHash: '',
          hash: '',
        }));
        const of = recordOf('patient/person', made);
        expect(of.all.length).toBeLessThanOrEqual(made.length);
        // Nothing disappears in silence: what is not a fact is reported, corrected or withdrawn.
        const corrected = made.filter((entry) => 'amends' in entry).length;
        const withdrawn = made.filter((entry) => entry.kind === 'withdrawal').length;
        expect(of.all.length + of.problems.length + corrected + withdrawn).toBeGreaterThanOrEqual(made.length);
      }),
      { seed: 6, numRuns: 1500 },
    );
  });
});
