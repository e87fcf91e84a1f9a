/**
 * How long somebody may wait before someone looks again is the unit's own number: each is changed by itself to a number nobody
 * would choose, and the day changes with it, and no other. The numbers are common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import {
  type NumberKey,
  type Protocol,
  day,
  entriesFromDrafts,
  parseLedger,
  plainDate,
  protocolFrom,
  recordOf,
  standingOf,
  taskRows,
  teaching,
  teachingSheet,
  usualPerson,
} from '@twelvemonth/clinical';

const referred = `
person  female, born 1941-06-02
1 Sep 2026  referral from "fracture clinic", reason "wrist fracture", unit thornbeck, tier routine
`;
const inCare = `${referred}3 Sep 2026  triage outcome accepted
`;
const given = `${inCare}14 Oct 2026  dose zoledronic acid 5 mg, this service
`;
const came = `${inCare}14 Oct 2026  arrived session s1, identifiers [full name, birth date]
`;
const putOff = `${came}14 Oct 2026  go-decision decision put off, reason code unwell, basis {on 14 Oct 2026, known seq 5, protocol version t, rule set 1, verdict not ready}
14 Oct 2026  left card given yes
`;
const ordered = `${inCare}4 Sep 2026  consent given spoken
5 Sep 2026  prescription zoledronic-acid-yearly from 5 Sep 2026 to 4 Sep 2027
`;
const onBreak = `${given}15 Oct 2026  course review planned break until 14 Oct 2028, triggers "a fracture", "five years"
`;

function recordFrom(text: string) {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return recordOf(usualPerson, entriesFromDrafts(read.drafts, { start: '2020-01-01T08:00:00.000Z' }));
}

/** The teaching protocol with one number of its own. */
function having(key: NumberKey, value: string): Protocol {
  const number = { value, source: 'a number nobody would choose', status: 'local decision' } as const;
  const made = protocolFrom({ ...teachingSheet, numbers: { ...teachingSheet.numbers, [key]: number } });
  if (!('protocol' in made)) throw new Error('has a gap');
  return made.protocol;
}

type Asked = readonly [key: NumberKey, ledger: string, askedOn: string, from: string, usually: string];

const standings: readonly Asked[] = [
  ['lookAgainReferralDays', referred, '2026-09-02', '2026-09-01', '2026-09-08'],
  [
    'lookAgainReturnedDays',
    `${referred}3 Sep 2026  triage outcome returned, reason "under 18"`,
    '2026-09-04',
    '2026-09-03',
    '2026-10-01',
  ],
  ['lookAgainWorkUpDays', inCare, '2026-09-04', '2026-09-03', '2026-10-01'],
  ['lookAgainPlaceDays', ordered, '2026-09-06', '2026-09-05', '2026-09-12'],
  ['lookAgainPutOffDays', putOff, '2026-10-15', '2026-10-14', '2026-10-21'],
  ['lookAgainOverdueDays', given, '2027-11-26', '2027-11-26', '2027-12-03'],
  ['lookAgainReviewDays', onBreak, '2028-10-14', '2028-10-14', '2028-11-11'],
  ['askAgainDoseDays', `${inCare}1 Oct 2026  said no to this dose, "no"`, '2026-10-02', '2026-10-01', '2026-12-24'],
  [
    'askAgainMedicineDays',
    `${inCare}1 Oct 2026  said no to this medicine, "no"`,
    '2026-10-02',
    '2026-10-01',
    '2026-10-29',
  ],
  [
    'askAgainContactDays',
    `${inCare}1 Oct 2026  said no to all contact, "no"`,
    '2026-10-02',
    '2026-10-01',
    '2027-10-01',
  ],
];

describe('the day by which someone looks again', () => {
  test.each(standings)('%s decides it', (key, ledger, askedOn, from, usually) => {
    const record = recordFrom(ledger);
    const lookedAt = (protocol: Protocol | undefined) => {
      const { on } = standingOf(record, protocol, day(askedOn));
      return on === undefined ? undefined : plainDate(on);
    };
    expect(lookedAt(teaching)).toBe(usually);
    expect(lookedAt(having(key, '0'))).toBe(from);
    const others = standings.flatMap(([other]) => (other === key ? [] : [lookedAt(having(other, '0'))]));
    expect(new Set(others)).toEqual(new Set([usually]));
  });

  test('without a protocol nobody has said how long it may wait: at once', () => {
    for (const [key, ledger, askedOn, from] of standings) {
      // Without a protocol nobody is known to be overdue.
      if (key === 'lookAgainOverdueDays') continue;
      const { on } = standingOf(recordFrom(ledger), undefined, day(askedOn));
      expect([key, on === undefined ? undefined : plainDate(on)]).toEqual([key, from]);
    }
  });

  test('a regimen may have its own', () => {
    const sheet = {
      ...teachingSheet,
      regimens: teachingSheet.regimens.map((regimen) =>
        regimen.id === 'zoledronic-acid-yearly'
          ? {
              ...regimen,
              numbers: {
                ...regimen.numbers,
                lookAgainPlaceDays: { value: '2', source: 'its own', status: 'local decision' as const },
              },
            }
          : regimen,
      ),
    };
    const made = protocolFrom(sheet);
    if (!('protocol' in made)) throw new Error('has a gap');
    expect(standingOf(recordFrom(ordered), made.protocol, day('2026-09-06')).on).toBe(day('2026-09-07'));
  });
});

describe('the day a task is due', () => {
  const first = `${came}14 Oct 2026  dose zoledronic acid 5 mg, this service
`;
  const tasks: readonly Asked[] = [
    ['lookAgainReferralDays', referred, 'decide on the referral', '2026-09-01', '2026-09-08'],
    ['aftercareCallDays', first, 'aftercare call', '2026-10-14', '2026-10-17'],
    ['letterDays', first, 'write the letter', '2026-10-14', '2026-10-15'],
  ];
  test.each(tasks)('%s decides it', (key, ledger, task, from, usually) => {
    const due = (protocol: Protocol | undefined) =>
      taskRows(recordFrom(ledger), protocol, day('2026-10-15')).flatMap(({ columns }) =>
        columns['task'] === task ? [columns['due_day']] : [],
      );
    expect(due(teaching)).toEqual([day(usually)]);
    expect(due(having(key, '0'))).toEqual([day(from)]);
    expect(due(undefined), 'without a protocol: at once').toEqual([day(from)]);
  });
});
