// A request to fill sessions from the notes: what a session has left for those for whom a place is looked for.
import {
  type SessionList,
  type Unit,
  addDays,
  day,
  entriesFromDrafts,
  noFormulary,
  parseLedger,
  recordOf,
  shortDate,
  subject,
  teaching,
} from '@twelvemonth/clinical';
import { describe, expect, it } from 'vitest';
import { fillRequestFromNotes, fillSessions, readFillRequest, usualPlanning } from '../src/index.ts';

const today = day('2026-11-25');

/** Referred, worked up and clear; the bloods hold until well after these sessions. */
const readyNow = `
person  female, born 1941-06-02
1 Oct 2026   referral from "fracture clinic", reason "wrist fracture", unit thornbeck, tier routine
2 Oct 2026   triage outcome accepted
5 Oct 2026   allergy answer none known
5 Oct 2026   pregnancy answer does not apply, reason "told us: long past the menopause"
5 Oct 2026   consent given spoken
5 Oct 2026   dental answer nothing pending
5 Oct 2026   secondary-causes answer none found
5 Oct 2026   prescription zoledronic-acid-yearly from 5 Oct 2026 to 31 Dec 2027
20 Nov 2026  weight 64.0 kg measured
20 Nov 2026  creatinine 70 umol/L signed
20 Nov 2026  adjusted calcium 2.35 mmol/L signed
20 Nov 2026  vitamin D 80 nmol/L signed
`;

function notes(patient: string, text: string) {
  const read = parseLedger(text);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  const of = subject('patient', patient);
  const drafts = read.drafts.map((draft) => ({ ...draft, subject: of }));
  return recordOf(of, entriesFromDrafts(drafts, { start: '2020-01-01T08:00:00.000Z' }));
}

const unit: Unit = {
  id: 'thornbeck',
  name: 'Thornbeck Day Unit',
  zone: 'Europe/London',
  chairs: 4,
  opensAt: '08:30',
  closesAt: '16:30',
  minutesBetweenArrivals: 20,
  telephone: '01632 960100',
  demo: true,
  planning: { ...usualPlanning, nurses: 1, noticeDays: 3 },
  calendar: { bloodWeekdays: [1, 2, 3, 4, 5], sessionWeekdays: [4], closedDays: [] },
  formulary: noFormulary,
  since: day('2020-01-01'),
};

const session = (on: number, taken: ReadonlyMap<number, string>): SessionList => ({
  id: `session-${on}`,
  unit: unit.id,
  on: addDays(today, on),
  zone: unit.zone,
  opensAt: unit.opensAt,
  closesAt: unit.closesAt,
  arriveAt: ['08:30', '08:50'],
  cancelled: undefined,
  taken,
});

const asked = (sessions: readonly SessionList[], noticeDays?: number, text = readyNow) => {
  const made = fillRequestFromNotes({
    unit,
    context: { protocols: [{ from: day('2020-01-01'), protocol: teaching }], calendar: unit.calendar },
    today,
    sessions,
    records: [notes('p1', text)],
    noticeDays,
  });
  if (!made.ok) throw new Error(made.says);
  return made;
};

describe('what a session has left', () => {
  it('is its places and minutes less those of people for whom none is looked for', () => {
    const free = asked([session(20, new Map())]).request.sessions[0]!;
    const held = asked([session(20, new Map([[1, 'of-another-unit']]))]).request.sessions[0]!;
    const first = asked([session(20, new Map())]).request.kinds.find(({ isFirst }) => isFirst);
    expect(free).toMatchObject({ mostVisits: 2, nurseMinutes: 480, mostFirstVisits: usualPlanning.mostFirstVisits });
    expect(held).toMatchObject({
      mostVisits: 1,
      nurseMinutes: 480 - first!.nurseMinutes,
      mostFirstVisits: usualPlanning.mostFirstVisits - 1,
    });
  });

  it('never offers a place that somebody else has', () => {
    const full = asked([session(20, new Map([[1, 'x1'], [2, 'x2']]))]); // oxfmt-ignore
    const read = readFillRequest(full.request);
    const answer = read.ok ? fillSessions(read.request) : undefined;
    expect(answer?.ok === true && answer.session).toEqual([null]);
  });
});

it('who is rung for a place that came free needs no days of notice', () => {
  const sessions = [session(1, new Map()), session(20, new Map())];
  // The unit's own: three days of notice.
  expect(asked(sessions).request.people[0]?.earliest.day).toBe('2026-11-28');
  expect(asked(sessions, 0).request.people[0]?.earliest.day).toBe('2026-11-25');
});

it('says all that the first possible day waits for, the root first: a loading that has ended is not yet the day', () => {
  const low = readyNow.replace('vitamin D 80 nmol/L', 'vitamin D 20 nmol/L');
  const { earliest } = asked([session(120, new Map())], undefined, low).request.people[0]!;
  const [, ends = '', usable = ''] =
    /^waiting for vitamin D loading to (.+), then calcium sample from .+ usable (.+)$/.exec(earliest.because) ?? [];
  expect(usable).toBe(shortDate(day(earliest.day)));
  expect(ends).not.toBe(usable);
});

it('groups for the report on fairness stand beside the request, in its order', () => {
  expect(asked([session(20, new Map())]).groupings).toEqual([
    { by: 'age', of: ['85 and older'] },
    { by: 'sex', of: ['female'] },
    { by: 'needs', of: ['no need recorded'] },
  ]);
});
