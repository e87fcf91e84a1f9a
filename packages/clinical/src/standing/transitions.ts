/**
 * What the entries of a ledger make of a person's standing, as one table: what is held, what happened -> what is held then.
 * A cell that is missing means that it may not happen from there: `decide` refuses it, and a ledger that has it all the same
 * stays where it was. What depends on the day (booked, here, waiting, overdue) is read off later, in standing.ts.
 */
import type { KindName } from '../kinds/index.ts';
import type { Fact } from '../record/patient-record.ts';

/** What the entries alone can say. `in care` becomes in work-up, waiting, booked, between doses ... on a given day. */
export const heldStandings = [
  'not accounted for',
  'referral received',
  'returned to referrer',
  'treated elsewhere',
  'in care',
  'put off',
  'in review',
  'on planned break',
  'moved to other treatment',
  'transferred out',
  'cannot be reached',
  'said no',
  'died',
  'closed',
] as const;
export type Held = (typeof heldStandings)[number];

export const standingEvents = [
  'referral',
  'accepted',
  'returned',
  'place booked',
  'put off',
  'dose here',
  'dose elsewhere',
  'other medicine here',
  'review: carry on',
  'review: new course',
  'review: planned break',
  'review: other treatment',
  'review: stop',
  'refusal',
  'cannot be reached',
  'transfer out',
  'transfer acknowledged',
  'closed',
  'reopened',
  'died',
] as const;
export type StandingEvent = (typeof standingEvents)[number];

const underCare = ['treated elsewhere', 'in care', 'put off', 'in review'] as const;
const withUs = [
  ...underCare,
  'referral received',
  'on planned break',
  'moved to other treatment',
  'cannot be reached',
  'said no',
] as const;

const from = (held: readonly Held[], to: Held): Partial<Record<Held, Held>> =>
  Object.fromEntries(held.map((one) => [one, to]));
const staying = (held: readonly Held[]): Partial<Record<Held, Held>> =>
  Object.fromEntries(held.map((one) => [one, one]));
const everywhereBut = (...left: readonly Held[]): readonly Held[] =>
  heldStandings.filter((held) => !left.includes(held));

export const transitions: Readonly<Record<StandingEvent, Partial<Record<Held, Held>>>> = {
  referral: {
    // Someone already under care here is not set back by another letter about them.
    ...staying(['in care', 'put off', 'in review', 'on planned break', 'referral received']),
    ...from(
      [
        'not accounted for',
        'returned to referrer',
        'treated elsewhere',
        'moved to other treatment',
        'transferred out',
        'cannot be reached',
        'said no',
        'closed',
      ],
      'referral received',
    ),
  },
  accepted: from(['referral received', 'returned to referrer'], 'in care'),
  returned: from(['referral received'], 'returned to referrer'),
  // A place is a promise for a day; what is held stays, and the day shows "booked".
  'place booked': staying(underCare),
  'put off': from(underCare, 'put off'),
  'dose here': {
    ...from(everywhereBut('died', 'closed', 'transferred out'), 'in care'),
    ...staying(['closed', 'transferred out', 'died']),
  },
  'dose elsewhere': {
    ...staying([
      'referral received',
      'returned to referrer',
      'moved to other treatment',
      'transferred out',
      'closed',
      'died',
      'treated elsewhere',
      'in review',
      'on planned break',
    ]),
    ...from(['in care', 'put off', 'cannot be reached', 'said no'], 'in care'),
    ...from(['not accounted for'], 'treated elsewhere'),
  },
  // Another bone medicine given here brings someone into care as a dose of ours does; what a review decided stays.
  'other medicine here': {
    ...staying([
      'in care',
      'in review',
      'on planned break',
      'moved to other treatment',
      'transferred out',
      'closed',
      'died',
    ]),
    ...from(
      [
        'not accounted for',
        'referral received',
        'returned to referrer',
        'treated elsewhere',
        'put off',
        'cannot be reached',
        'said no',
      ],
      'in care',
    ),
  },
  'review: carry on': from([...underCare, 'on planned break', 'moved to other treatment'], 'in care'),
  'review: new course': from([...underCare, 'on planned break', 'moved to other treatment'], 'in care'),
  'review: planned break': from([...underCare, 'on planned break'], 'on planned break'),
  'review: other treatment': from(
    [...underCare, 'referral received', 'on planned break', 'moved to other treatment', 'said no'],
    'moved to other treatment',
  ),
  'review: stop': from([...underCare, 'on planned break', 'moved to other treatment', 'said no'], 'in review'),
  refusal: from(withUs, 'said no'),
  'cannot be reached': from(withUs, 'cannot be reached'),
  'transfer out': from([...withUs, 'transferred out'], 'transferred out'),
  'transfer acknowledged': staying(['transferred out']),
  closed: from(everywhereBut('died', 'closed', 'not accounted for'), 'closed'),
  reopened: from(
    [
      'on planned break',
      'moved to other treatment',
      'transferred out',
      'cannot be reached',
      'said no',
      'closed',
      'returned to referrer',
      'treated elsewhere',
    ],
    'in care',
  ),
  died: from(everywhereBut('died'), 'died'),
};

type EventOf = { readonly [Kind in KindName]?: (fact: Fact<Kind>) => StandingEvent | undefined };

const events: EventOf = {
  referral: () => 'referral',
  refusal: () => 'refusal',
  closed: () => 'closed',
  reopened: () => 'reopened',
  died: () => 'died',
  triage: ({ body }) => body.outcome,
  'place-booked': () => 'place booked',
  'go-decision': ({ body }) => (body.decision === 'put off' ? 'put off' : undefined),
  dose: doseEvent,
  'course-review': ({ body }) => `review: ${body.outcome}`,
  'cannot-be-reached': () => 'cannot be reached',
  'transfer-out': () => 'transfer out',
  'transfer-acknowledged': () => 'transfer acknowledged',
};

/** What an entry means for the standing; undefined: nothing. */
export const eventOf = (fact: Fact): StandingEvent | undefined =>
  (events[fact.kind] as ((fact: Fact) => StandingEvent | undefined) | undefined)?.(fact);

/**
 * Another bone medicine moves a standing only where this service gave it: an injection elsewhere years ago does not bring
 * someone into care. The oncology strength is never this service's.
 */
function doseEvent({ body: { medicine, setting } }: Fact<'dose'>): StandingEvent | undefined {
  const isHere = setting === 'this service' || setting === 'home';
  if (medicine === 'zoledronic acid 5 mg') return isHere ? 'dose here' : 'dose elsewhere';
  return isHere && medicine !== 'zoledronic acid 4 mg' ? 'other medicine here' : undefined;
}

export const mayHappenFrom = (held: Held, event: StandingEvent): boolean => transitions[event][held] !== undefined;
