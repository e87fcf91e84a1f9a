/**
 * What is asked of each person before the next dose, and what is known of it since the recall began: still wanted, bloods,
 * teeth, weight, daily vitamin D, address, how they were after the last dose (practice page 1a row 22). An answer from before
 * the recall is shown with its day and asked again. It clears no requirement: the entries behind it do, or do not.
 */
import { type Day, shortDate } from '../calendar/day.ts';
import { entryText } from '../kinds-texts/entry-text.ts';
import type { KindName } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';

export const recallItems = [
  'still wanted',
  'bloods',
  'teeth',
  'weight',
  'vitamin D',
  'address',
  'after the last dose',
] as const;
export type RecallItem = (typeof recallItems)[number];

export type RecallAnswer = {
  readonly item: RecallItem;
  /** Answered since the recall began; answered so that somebody has to act; not asked yet. */
  readonly state: 'answered' | 'needs somebody' | 'to ask';
  readonly says: string;
};

export type RecallSpan = {
  /** The first day of the recall. */
  readonly from: Day;
  readonly bloods: { readonly from: Day; readonly until: Day } | undefined;
  readonly lastDose: Day | undefined;
  readonly today: Day;
};

export const recallChecklist = (record: SubjectRecord, span: RecallSpan): readonly RecallAnswer[] =>
  recallItems.flatMap((item) => {
    const asked = ask[item](record, span);
    return asked === undefined ? [] : [{ item, ...asked }];
  });

type Answer = Omit<RecallAnswer, 'item'>;

const upToToday = <Kind extends KindName>(record: SubjectRecord, kind: Kind, today: Day): readonly Fact<Kind>[] =>
  factsOf(record, kind).filter(({ on }) => on <= today);

const ask: Readonly<Record<RecallItem, (record: SubjectRecord, span: RecallSpan) => Answer | undefined>> = {
  'still wanted': (record, { from, today }) => {
    const talk = upToToday(record, 'recall-talk', today).findLast(
      ({ on, body }) => on >= from && body.wants !== undefined,
    );
    if (talk === undefined) return { state: 'to ask', says: 'not asked yet' };
    const { wants } = talk.body;
    return {
      state: wants === 'yes' ? 'answered' : 'needs somebody',
      says: `${wants === 'yes' ? 'wants it' : wants === 'no' ? 'does not want it' : 'not sure'} (${shortDate(talk.on)})`,
    };
  },
  bloods: askBloods,
  teeth: (record, span) =>
    newest(
      record,
      'dental',
      span,
      ({ answer }) => answer !== 'nothing pending' && answer !== 'seen: nothing left to heal',
    ),
  weight: (record, span) => newest(record, 'weight', span),
  'vitamin D': (record, span) => newest(record, 'vitamin-d-maintenance', span, ({ taken }) => !taken),
  address: (record, { from, today }) => {
    const talk = upToToday(record, 'recall-talk', today).findLast(
      ({ on, body }) => on >= from && body.address !== undefined,
    );
    const contact = upToToday(record, 'contact', today).at(-1);
    if (talk === undefined) return { state: 'to ask', says: contact?.body.address ?? 'no address in the notes' };
    const written = contact !== undefined && contact.on >= talk.on;
    return talk.body.address === 'right' || written
      ? { state: 'answered', says: `right (${shortDate(written ? (Math.max(contact.on, talk.on) as Day) : talk.on)})` }
      : { state: 'needs somebody', says: `changed (${shortDate(talk.on)}): write the new one` };
  },
  'after the last dose': (record, { lastDose, today }) => {
    if (lastDose === undefined) return undefined;
    const told = [...upToToday(record, 'aftercare', today), ...upToToday(record, 'reaction', today)].filter(
      ({ on, kind, body }) =>
        on >= lastDose && (kind !== 'aftercare' || ('outcome' in body && body.outcome === 'asked')),
    );
    const last = told.toSorted((a, b) => a.seq - b.seq).at(-1);
    return last === undefined
      ? { state: 'to ask', says: 'nobody has asked how they were' }
      : { state: 'answered', says: `${entryText(last)} (${shortDate(last.on)})` };
  },
};

/** The newest of a kind: it counts as asked from the first day of the recall on. */
function newest<Kind extends 'dental' | 'weight' | 'vitamin-d-maintenance'>(
  record: SubjectRecord,
  kind: Kind,
  { from, today }: RecallSpan,
  isTrouble: (body: Fact<Kind>['body']) => boolean = () => false,
): Answer {
  const last = upToToday(record, kind, today).at(-1);
  if (last === undefined) return { state: 'to ask', says: 'nothing in the notes' };
  const says = `${entryText(last)} (${shortDate(last.on)})`;
  if (last.on < from) return { state: 'to ask', says: `last: ${says}` };
  return { state: isTrouble(last.body) ? 'needs somebody' : 'answered', says };
}

/** Only a creatinine and a calcium drawn in the span that is in date on the due day answer it. */
function askBloods(record: SubjectRecord, { from, bloods, today }: RecallSpan): Answer {
  const since = bloods?.from ?? from;
  const drawn = (analytes: readonly string[]) =>
    upToToday(record, 'result', today).findLast(({ on, body }) => on >= since && analytes.includes(body.analyte));
  const [creatinine, calcium] = [drawn(['creatinine']), drawn(['calcium', 'adjusted calcium'])];
  if (creatinine !== undefined && calcium !== undefined)
    return { state: 'answered', says: `drawn on ${shortDate(Math.min(creatinine.on, calcium.on) as Day)}` };
  const talk = upToToday(record, 'recall-talk', today).findLast(
    ({ on, body }) => on >= from && body.bloods !== undefined,
  );
  const when =
    bloods === undefined
      ? ''
      : bloods.from === bloods.until
        ? `; on ${shortDate(bloods.from)}`
        : `; between ${shortDate(bloods.from)} and ${shortDate(bloods.until)}`;
  if (talk === undefined) return { state: 'to ask', says: `not agreed yet${when}` };
  return { state: 'needs somebody', says: `${talk.body.bloods ?? ''} (${shortDate(talk.on)}), no result yet${when}` };
}
