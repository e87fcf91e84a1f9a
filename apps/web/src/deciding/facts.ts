/** The view as the server sends it, as the counselling package wants it. */
import { day } from '@twelvemonth/clinical';
import type { Baseline, PersonFacts } from '@twelvemonth/counselling';
import type { DecidingView } from '@twelvemonth/exchange';

const optionalDay = (date: string | undefined) => (date === undefined ? undefined : day(date));

export const personFacts = ({ person, today }: DecidingView): PersonFacts => ({
  today: day(today),
  sex: person.sex,
  ageYears: person.ageYears,
  newestFracture: optionalDay(person.newestFracture),
  hip: person.hip === undefined ? undefined : { on: day(person.hip.on), repaired: person.hip.repaired },
  onSteroid: person.onSteroid,
  hadBoneTablets: person.hadBoneTablets,
  dosesGiven: person.dosesGiven,
  dosesInARow: person.dosesInARow,
  firstDoseSinceHip: optionalDay(person.firstDoseSinceHip),
});

export const baselines = ({ risks }: DecidingView): readonly Baseline[] =>
  risks.map(({ of, percent, years, instrument, workedOutOn, lowPercent, highPercent, veryFrail }) => ({
    of,
    percent,
    years,
    instrument,
    workedOutOn: day(workedOutOn),
    range: lowPercent === undefined || highPercent === undefined ? undefined : { lowPercent, highPercent },
    veryFrail,
  }));
