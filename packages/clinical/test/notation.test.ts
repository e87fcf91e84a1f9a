import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type KindName,
  type NotedDraft,
  entriesFromDrafts,
  kindNamed,
  kindNames,
  parseLedger,
  printLedger,
} from '@twelvemonth/clinical';
import { draftsOf, ledgers, referring } from './notation-arbitraries.ts';

const start = '2026-03-03T08:00:00.000Z';

function parsed(text: string): readonly NotedDraft[] {
  const read = parseLedger(text);
  if (!read.ok)
    throw new Error(read.problems.map((problem) => `${problem.line}: ${problem.says}`).join('\n') + `\n${text}`);
  return read.drafts;
}
const problems = (text: string) => {
  const read = parseLedger(text);
  return read.ok ? [] : read.problems;
};
/** Puts a line before the draft for each entry it names. */
function withNamed(draft: NotedDraft): NotedDraft[] {
  const body = draft.body as Record<string, unknown>;
  const field = referring[draft.kind as KindName];
  const ids = field === undefined ? [] : ([body[field]].flat() as string[]);
  const about = kindNamed('left');
  const named = [...new Set(ids)].map((id) => ({
    subject: draft.subject,
    kind: 'left',
    shape: about.shape,
    body: about.example,
    effectiveAt: '2026-01-01',
    zone: draft.zone,
    id,
  }));
  const { id: _id, ...unnamed } = draft;
  return [...named, unnamed];
}

describe('a ledger as text', () => {
  test('the first page of notes reads as a nurse would write it', () => {
    const read = parseLedger(`
person  female, born 1941-06-02          ; nobody real
3 Mar 2026   weight 56.2 kg measured
3 Mar 2026   creatinine 88 umol/L signed
readiness for zoledronic acid on 10 Mar 2026 -> cannot say: vitamin D not known; possible from 13 Mar 2026, waiting for vitamin D result
`);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(read.drafts.map((draft) => [draft.kind, draft.effectiveAt])).toEqual([
      ['identity', '2000-01-01'],
      ['weight', '2026-03-03'],
      ['result', '2026-03-03'],
      ['results-signed', '2026-03-03'],
    ]);
    expect(read.drafts[1]?.body).toEqual({
      quantity: { comparator: '', value: '56.2', unit: 'kg' },
      method: 'measured',
    });
    expect(read.drafts[3]?.body).toEqual({ results: [read.drafts[2]?.id] });
    expect(read.questions).toEqual([
      {
        line: 5,
        asks: 'readiness',
        of: 'zoledronic acid',
        on: '2026-03-10',
        expected: 'cannot say: vitamin D not known; possible from 13 Mar 2026, waiting for vitamin D result',
      },
    ]);
  });

  test.each(kindNames)('%s: whatever its schema allows can be written and is read back the same', (kind: KindName) => {
    fc.assert(
      fc.property(draftsOf(kind), (draft) => {
        const drafts = withNamed(draft);
        expect(parsed(printLedger(drafts))).toEqual(drafts);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  test('whole ledgers with labels, corrections, authors and several subjects are read back the same', () => {
    fc.assert(
      fc.property(ledgers, (drafts) => {
        expect(parsed(printLedger(drafts))).toEqual(drafts);
      }),
      { seed: 2, numRuns: 600 },
    );
  });

  test('every example of a kind is one line of plain words', () => {
    for (const kind of kindNames) {
      const { shape, example } = kindNamed(kind);
      const draft = {
        subject: 'patient/person' as const,
        kind,
        shape,
        body: example,
        effectiveAt: '2026-03-03',
        zone: 'Europe/London',
      };
      const drafts = withNamed(draft);
      const text = printLedger(drafts);
      expect(text.trimEnd().split('\n')).toHaveLength(drafts.length);
      expect(text).not.toMatch(/ {2}raw /);
    }
  });

  test('a kind or a shape this version does not know is kept as it is stored', () => {
    const drafts: NotedDraft[] = [
      {
        subject: 'patient/person',
        kind: 'bone-scan',
        shape: 3,
        body: { t: -2.8, note: 'a "b"; c\n' },
        effectiveAt: '2026-03-03',
        zone: 'Europe/London',
      },
      {
        subject: 'patient/person',
        kind: 'weight',
        shape: 9,
        body: { stone: 8 },
        effectiveAt: '2026-03-03',
        zone: 'Europe/London',
      },
    ];
    expect(parsed(printLedger(drafts))).toEqual(drafts);
  });

  test('an entry that names another kept elsewhere is kept as it is stored, and nothing is lost', () => {
    const about = { subject: 'patient/person' as const, shape: 1, effectiveAt: '2026-03-03', zone: 'Europe/London' };
    const drafts: NotedDraft[] = [
      { ...about, kind: 'withdrawal', body: { entry: 'gone', reason: 'hers' } },
      { ...about, kind: 'weight', body: kindNamed('weight').example, amends: 'gone-too' },
      { ...about, kind: 'withdrawal', body: null },
    ];
    expect(parsed(printLedger(drafts))).toEqual(drafts);
  });

  test('written entries show a label only where another line names it, and a signature of the same day as one word', () => {
    const text = `3 Mar 2026   creatinine 88 umol/L signed
3 Mar 2026   #e3 adjusted calcium 2.29 mmol/L
4 Mar 2026   signed #e3
4 Mar 2026   adjusted calcium 2.31 mmol/L corrects #e3
`;
    expect(printLedger(entriesFromDrafts(parsed(text), { start }))).toBe(text);
  });

  test('long ids become short labels, the same wherever they occur', () => {
    const id = '0190a5a4-6f0c-7000-8000-0123456789ab';
    const entries = entriesFromDrafts(
      parsed('3 Mar 2026 #r creatinine 88 umol/L\n4 Mar 2026 signed #r\n5 Mar 2026 withdraw #r, "not hers"'),
      { start },
    ).map((entry) => JSON.parse(JSON.stringify(entry).replaceAll('"r"', `"${id}"`)) as typeof entry);
    expect(printLedger(entries)).toBe(
      '3 Mar 2026   #e1 creatinine 88 umol/L\n4 Mar 2026   signed #e1\n5 Mar 2026   withdraw #e1, "not hers"\n',
    );
  });

  test('times are wall times of the zone: winter and summer alike', () => {
    const drafts = parsed(
      '28 Jan 2027 10:51 left card given yes\n28 Jun 2027 10:51 left card given yes\n28 Jun 2027 10:51 -05:00 left card given yes',
    );
    expect(drafts.map((draft) => draft.effectiveAt)).toEqual([
      '2027-01-28T10:51:00.000+00:00',
      '2027-06-28T10:51:00.000+01:00',
      '2027-06-28T10:51:00.000-05:00',
    ]);
    expect(printLedger(drafts)).toContain('28 Jun 2027 10:51 left');
  });

  test('drafts become entries the same way every time: seq by subject, moments strictly increasing', () => {
    const drafts = parsed(
      '3 Mar 2026 left card given yes\nnotes of session/s1\n3 Mar 2026 session-cancelled reason snow\nnotes of patient/person\n3 Mar 2026 #x left card given yes by clerk ann',
    );
    const entries = entriesFromDrafts(drafts, { start });
    expect(entries.map(({ id, seq, recordedAt, author }) => [id, seq, recordedAt, author.staff])).toEqual([
      ['e1', 1, '2026-03-03T08:00:01.000Z', 'nurse'],
      ['e2', 1, '2026-03-03T08:00:02.000Z', 'nurse-in-charge'],
      ['x', 2, '2026-03-03T08:00:03.000Z', 'ann'],
    ]);
    expect(entriesFromDrafts(drafts, { start })).toEqual(entries);
  });
});

describe('mistakes are told all at once, each with its line and what to write instead', () => {
  const text = `3 Mar 2026 weight 56 stone measured
31 Feb 2026 weight 56 kg measured
3 Mar 2026 creatinin 88 umol/L
weight 56 kg measured
3 Mar 2026 #a weight 0.00001 kg measured
3 Mar 2026 #a consent given loudly
3 Mar 2026 signed #zz
3 Mar 2026 weight 56 kg measured, and happy
3 Mar 2026 allergy other "penicillin
readiness on Tuesday
notes of nobody`;

  test('one problem a line here, none lost, in order', () => {
    expect(problems(text).map((problem) => problem.line)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });
  test('they name the place and what was wanted', () => {
    const says = problems(text).map((problem) => problem.says);
    expect(says[0]).toBe(
      'cannot read "stone measured": wanted the unit of 56 as it was reported, which is never guessed: kg | lb',
    );
    expect(says[1]).toContain('31 Feb 2026 does not');
    expect(says[2]).toBe('no entry begins with "creatinin 88 umol/L"');
    expect(says[4]).toContain('a number with at most 4 decimals');
    expect(says[6]).toContain('#zz names no line');
    expect(says[7]).toContain('and happy');
  });
  test('every remedy that is a line can be read', () => {
    for (const problem of problems(text)) {
      if (!/^\d{1,2} \w{3} \d{4}/.test(problem.remedy)) continue;
      expect(
        problems(problem.remedy.replace(/#\w+, .*$/, '')).filter(({ says }) => !says.includes('names no line')),
      ).toEqual([]);
    }
  });
  test('a label given twice names both lines', () => {
    expect(problems('3 Mar 2026 #a left card given yes\n4 Mar 2026 #a left card given no')[0]?.says).toBe(
      '#a is already the label of line 1',
    );
  });
  test('junk never throws', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        fc.constantFrom('', '3 Mar 2026 ', '3 Mar 2026 weight ', 'readiness on ', '3 Mar 2026 checklist answers {'),
        (junk, before) => {
          const read = parseLedger(before + junk);
          expect(read.ok || read.problems.length > 0).toBe(true);
        },
      ),
      { seed: 3, numRuns: 500 },
    );
  });
});
