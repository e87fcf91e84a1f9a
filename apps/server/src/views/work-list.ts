/** One pile of a unit's work as a list: each with its owner and its day, and the screen where it is done. */
import { plainDate } from '@twelvemonth/clinical';
import type { WorkListView } from '@twelvemonth/exchange';
import type { Person } from '../register/people.ts';
import type { UnitNow } from '../register/units.ts';
import { fullName } from './person-words.ts';
import { piledTasks, pilesByTask, sampleOf, samplePiles } from './work.ts';

/** `what`: the pile by the words it has on Today. No such pile: an empty list. */
export function workListOf(everyone: readonly Person[], unit: UnitNow, what: string): WorkListView {
  const here = everyone.filter(({ unitId }) => unitId === unit.unit.id);
  const rows = [
    ...here.flatMap((person) => tasksOf(person, what)),
    ...here.flatMap((person) => sampleRowsOf(person, what)),
  ];
  return {
    what,
    unitName: unit.unit.name,
    today: plainDate(unit.today),
    rows: rows.toSorted((a, b) => (a.due === b.due ? 0 : a.due < b.due ? -1 : 1)),
  };
}

type Row = WorkListView['rows'][number];

function tasksOf(person: Person, what: string): Row[] {
  const name = piledTasks.find((one) => pilesByTask[one].what === what);
  if (name === undefined) return [];
  const { within = '', record } = pilesByTask[name];
  return person
    .tasks()
    .filter((task) => task.name === name)
    .map(({ says, owner, due, about }) => ({
      patient: person.patient,
      name: fullName(person),
      says,
      owner,
      due: plainDate(due),
      to: `/people/${person.patient}${within}${record === undefined ? '' : `?record=${record}&about=${about}`}`,
    }));
}

function sampleRowsOf(person: Person, what: string): Row[] {
  const pile = samplePiles.find((one) => one.what === what);
  const due = pile === undefined ? undefined : sampleOf(person, pile.dueFor);
  if (due === undefined) return [];
  const { patient } = person;
  return [
    {
      patient,
      name: fullName(person),
      says: due.says,
      owner: 'nurse',
      due: plainDate(due.by),
      to: `/people/${patient}`,
    },
  ];
}
