/** What planning needs of a unit, field by field in plain words. How long an infusion runs and is watched is the protocol's. */
import type { PlanningSettings } from '@twelvemonth/clinical';
import { usualPlanning } from '@twelvemonth/planning';

type Step = keyof PlanningSettings['minutes'];
export type PlanningKey = Exclude<keyof PlanningSettings, 'minutes'> | `minutes.${Step}`;

type PlanningField = {
  readonly key: PlanningKey;
  readonly label: string;
  readonly unit: string;
  readonly help?: string;
};

export const planningGroups: readonly { readonly label: string; readonly fields: readonly PlanningField[] }[] = [
  {
    label: 'At the chairs',
    fields: [
      {
        key: 'nurses',
        label: 'Nurses at the chairs',
        unit: 'nurses',
        help: 'Through a usual session, without those who prepare and check.',
      },
      {
        key: 'watchedPerNurse',
        label: 'Running infusions one nurse keeps an eye on',
        unit: 'infusions',
      },
      {
        key: 'watchPlaces',
        label: 'Seats for the watch afterwards',
        unit: 'seats',
        help: 'Beside the chairs; 0 if people stay in the chair.',
      },
    ],
  },
  {
    label: 'The dose',
    fields: [
      { key: 'preparers', label: 'Who prepare at the same time', unit: 'people' },
      {
        key: 'secondCheckers',
        label: 'Second checkers',
        unit: 'people',
        help: 'Nobody checks what they prepared. With none, no infusion can be planned.',
      },
      { key: 'minutes.preparation', label: 'Preparing a dose', unit: 'minutes' },
      { key: 'minutes.secondCheck', label: 'Second check', unit: 'minutes' },
      {
        key: 'minutes.keeps',
        label: 'A prepared dose may stand for',
        unit: 'minutes',
        help: 'Your pharmacy’s rule.',
      },
    ],
  },
  {
    label: 'Minutes of each step',
    fields: [
      { key: 'minutes.observations', label: 'Arrival and observations', unit: 'minutes' },
      { key: 'minutes.checklist', label: 'Checklist', unit: 'minutes' },
      { key: 'minutes.cannula', label: 'Cannula and flush', unit: 'minutes' },
      { key: 'minutes.removal', label: 'Taking the cannula out', unit: 'minutes' },
      { key: 'minutes.leave', label: 'Aftercare words and leaving', unit: 'minutes' },
      { key: 'minutes.injection', label: 'Giving an injection', unit: 'minutes' },
    ],
  },
  {
    label: 'Ending on time',
    fields: [
      {
        key: 'onTimePercent',
        label: 'Rehearsals of a session that end by closing',
        unit: 'of 100, at least',
        help: 'Chooses among plans that are nearly as good; nobody waits much longer for it.',
      },
    ],
  },
  {
    label: 'Filling sessions',
    fields: [
      { key: 'mostFirstVisits', label: 'First visits in a session, at most', unit: 'people' },
      {
        key: 'reservedPercent',
        label: 'Kept for those first in line',
        unit: '% of the minutes',
        help: 'Nobody else is proposed for it.',
      },
      {
        key: 'noticeDays',
        label: 'Notice before a place',
        unit: 'days',
        help: 'Nobody is proposed for a place nearer than this, and nobody is moved from one.',
      },
    ],
  },
];

export type TypedPlanning = Readonly<Partial<Record<PlanningKey, number | undefined>>>;

const allKeys: readonly PlanningKey[] = planningGroups.flatMap(({ fields }) => fields.map(({ key }) => key));

export const typedFrom = (settings: PlanningSettings): TypedPlanning => {
  const { minutes, ...others } = settings;
  const steps = Object.entries(minutes).map(([step, value]) => [`minutes.${step}`, value]);
  return {
    onTimePercent: usualPlanning.onTimePercent,
    ...others,
    ...(Object.fromEntries(steps) as TypedPlanning),
  };
};

export const missingFrom = (typed: TypedPlanning): readonly PlanningKey[] =>
  allKeys.filter((key) => typed[key] === undefined);

/** Only where nothing is missing. */
export function settingsFrom(typed: TypedPlanning): PlanningSettings {
  const of = (key: PlanningKey): number => typed[key] ?? Number.NaN;
  return {
    nurses: of('nurses'),
    watchedPerNurse: of('watchedPerNurse'),
    watchPlaces: of('watchPlaces'),
    preparers: of('preparers'),
    secondCheckers: of('secondCheckers'),
    minutes: {
      observations: of('minutes.observations'),
      checklist: of('minutes.checklist'),
      cannula: of('minutes.cannula'),
      preparation: of('minutes.preparation'),
      secondCheck: of('minutes.secondCheck'),
      keeps: of('minutes.keeps'),
      removal: of('minutes.removal'),
      leave: of('minutes.leave'),
      injection: of('minutes.injection'),
    },
    mostFirstVisits: of('mostFirstVisits'),
    reservedPercent: of('reservedPercent'),
    noticeDays: of('noticeDays'),
    onTimePercent: of('onTimePercent'),
  };
}
