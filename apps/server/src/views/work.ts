/** Small piles of work at a unit, each with its number: what waits for someone today. */
import {
  type Day,
  type Protocol,
  type TaskName,
  type SampleDue,
  calciumAfterDose,
  calciumAfterLoading,
  creatinineAfterDose,
  markersAfterDenosumab,
  parseDay,
  plainDate,
  taskNames,
  unknownCallsOf,
} from '@twelvemonth/clinical';
import type { TodayView } from '@twelvemonth/exchange';
import type { AtHand } from '../at-hand.ts';
import type { Person, Task } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { waitingIn } from '../register/waiting-rows.ts';
import { toBeAskedSince } from './aftercare.ts';
import { toOrderBy } from './stock.ts';
import { isListedAt } from './people-list.ts';
import { isFirstInLine, isRecalled } from './recall.ts';

/** Who is to be asked how they are stands in a pile from the first day on which somebody may ring, not only once it is late. */
export type PiledTask = Exclude<TaskName, 'aftercare call'>;
export const piledTasks = taskNames.filter((name): name is PiledTask => name !== 'aftercare call');

/**
 * Piles of work that the notes alone can tell, in the order in which they are shown; the screen that lists them, if one of its
 * own does; the screen of the person on which it is done, or the entry that does it.
 */
export const pilesByTask: Readonly<
  Record<PiledTask, { readonly what: string; readonly to?: string; readonly within?: string; readonly record?: string }>
> = {
  'sign results': { what: 'results to sign', record: 'results-signed' },
  'decide on the referral': { what: 'referrals to decide', to: '/people?standing=referral+received' },
  'clear the symptom': { what: 'symptoms to look at', record: 'symptom-cleared' },
  'look at a decision again': { what: 'decisions to look at again', record: 'looked-again' },
  'look at the incident': { what: 'incidents to look at', record: 'looked-again' },
  'look at what they told us': { what: 'told us before a visit: to look at', within: '/own-page' },
  'verify the prescription': { what: 'prescriptions for the pharmacist', to: '/pharmacy' },
  'answer the pharmacist': { what: 'questions of the pharmacist to a prescriber', to: '/pharmacy' },
  'change the refused prescription': { what: 'prescriptions the pharmacist refused', to: '/pharmacy' },
  'see the signature on paper': { what: 'second signatures on paper to see', record: 'looked-again' },
  'confirm the check at home': { what: 'checks of doses at home, to confirm by who made them', record: 'looked-again' },
  'see to what was put off': { what: 'put off: what comes next', record: 'looked-again' },
  'answer what was asked at the chair': { what: 'questions from the chair to a prescriber' },
  'did not come': { what: 'did not come: find out why' },
  'decide on the part dose': { what: 'part doses for a prescriber' },
  'decide on the thigh fracture': { what: 'fractures of the thigh for a prescriber' },
  'decide on the reaction': { what: 'reactions for a prescriber' },
  'write the letter': { what: 'letters to write' },
  'sign the letter': { what: 'letters to sign', to: '/letters' },
  'send the letter': { what: 'letters to send', to: '/letters' },
  'chase the letter': { what: 'letters without an answer', to: '/letters' },
  'look at the reminder': { what: 'messages that did not arrive' },
  'pass on the red flag': { what: 'red flags to pass on', to: '/aftercare' },
  'answer the red flag': { what: 'red flags from calls', to: '/calls' },
  'tell who was named': { what: 'red flags another answered: to be seen by who was named', record: 'looked-again' },
  'call back': { what: 'calls to make again' },
  'ask again': { what: 'people who wanted more time' },
  'release the place': { what: 'places of people who will not come' },
  'move or cancel what was booked': { what: 'transport, interpreter or hoist to move or cancel', within: '/bookings' },
  'arrange what goes with the place': { what: 'transport, interpreter or hoist to book', within: '/bookings' },
  'chase the transfer': { what: 'transfers not acknowledged', to: '/people?standing=transferred+out' },
};

export async function workOf(atHand: AtHand, everyone: readonly Person[], unit: UnitNow): Promise<TodayView['work']> {
  const here = everyone.filter(({ unitId }) => unitId === unit.unit.id);
  const tasks = here.flatMap((person) => person.tasks());
  const waiting = await waitingRowsSince(atHand, unit.unit.id);
  const counted = (what: string, of: readonly Person[], since: (person: Person) => Day): TodayView['work'][number] =>
    pile(what, '/recall', of.map(since));
  return [
    pile(
      'people not accounted for: nobody owns what happens next',
      '/people?standing=not+accounted+for',
      everyone
        .filter((person) => isListedAt(unit.unit.id, person) && person.standing.standing === 'not accounted for')
        .map(({ standing }) => standing.since),
    ),
    counted(
      'first in line',
      here.filter((person) => isFirstInLine(person) && person.place === undefined),
      ({ standing }) => standing.since,
    ),
    ...piledTasks.map((name) =>
      taskPile(
        name,
        tasks.filter((task) => task.name === name),
      ),
    ),
    pile(
      'to be asked how they are after the dose',
      '/aftercare',
      here.flatMap((person) => toBeAskedSince(person) ?? []),
    ),
    counted(
      'to recall',
      here.filter((person) => isRecalled(person) && person.place === undefined),
      ({ course, today }) => course.due ?? today,
    ),
    pile(
      'wait for a place',
      '/people?standing=waiting+for+a+place',
      here.filter(({ standing }) => standing.standing === 'waiting for a place').map(({ standing }) => standing.since),
    ),
    counted(
      'reviews',
      here.filter(({ standing }) => standing.standing === 'in review'),
      ({ standing }) => standing.since,
    ),
    ...samplePiles.map(({ what, dueFor }) =>
      pile(
        what,
        listOf(what),
        here.flatMap((person) => sampleOf(person, dueFor)?.by ?? []),
      ),
    ),
    // A promise with a date: someone asks whether the other treatment has begun, and closes or dates it anew.
    pile(
      'other treatments that should have begun',
      '/people?standing=moved+to+other+treatment',
      here.flatMap(({ standing: { standing, on }, today }) =>
        standing === 'moved to other treatment' && on !== undefined && on <= today ? [on] : [],
      ),
    ),
    pile('products to order', '/stock', await toOrderBy(atHand, unit)),
    pile('calls about somebody not found', '/calls', await unknownCallsSince(atHand, unit.unit.id)),
    pile('rows of a register that wait', '/import/waiting', waiting),
  ].filter(({ count }) => count > 0);
}

function taskPile(name: PiledTask, tasks: readonly Task[]): TodayView['work'][number] {
  const { what, to } = pilesByTask[name];
  return pile(
    what,
    to ?? listOf(what),
    tasks.map(({ due }) => due),
  );
}

/** The screen that lists a pile which has none of its own. */
const listOf = (what: string): string => `/work?what=${encodeURIComponent(what)}`;

type DueFor = (record: Person['record'], protocol: Protocol, today: Day) => SampleDue | undefined;

/** Samples that something given asks for: after a dose where the kidneys were low, not known or near the limit, after a loading. */
export const samplePiles: readonly { readonly what: string; readonly dueFor: DueFor }[] = [
  { what: 'calcium to look at after a dose', dueFor: calciumAfterDose },
  { what: 'creatinine to look at after a dose', dueFor: creatinineAfterDose },
  { what: 'calcium to look at after a loading', dueFor: calciumAfterLoading },
  { what: 'bone markers to look at after denosumab', dueFor: markersAfterDenosumab },
];

export const sampleOf = ({ record, unit, today }: Person, dueFor: DueFor): SampleDue | undefined =>
  unit?.protocol === undefined ? undefined : dueFor(record, unit.protocol, today);

const pile = (what: string, to: string, days: readonly Day[]): TodayView['work'][number] => ({
  what,
  count: days.length,
  to,
  ...(days.length === 0 ? {} : { oldest: plainDate(Math.min(...days) as Day) }),
});

async function waitingRowsSince({ notes }: AtHand, unit: string): Promise<Day[]> {
  return waitingIn(await notes.of('register', unit)).map(({ since }) => parseDay(since.slice(0, 10)) ?? (0 as Day));
}

const unknownCallsSince = async ({ notes }: AtHand, unit: string): Promise<Day[]> =>
  unknownCallsOf(await notes.of('unit', unit)).map(({ on }) => on);
