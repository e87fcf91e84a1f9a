/** What a service has in hand before a course is reviewed: scans of one scanner, a height, what is taken at home. */
import { type BodyOfKind, type Day, addDays, factsOf } from '@twelvemonth/clinical';
import type { Life, Me } from './life.ts';

type Density = BodyOfKind<'bone-density'>;

/** Some weeks after the last planned dose; a quarter are reviewed without, and their sheet says what is missing. */
export function* looksBeforeReview(me: Me): Life {
  const { chance } = me;
  yield* me.officeDay(addDays(me.today, chance.between(20, 60)));
  if (!chance.isTrue(0.75)) return;
  const first = factsOf(me.record(), 'dose')[0]?.on ?? me.today;
  const nurse = me.by('nurse');
  const before = chance.between(560, 720);
  // Three scanners in the county: now and then the second scan was made on another one and cannot be compared.
  const scanner = me.person.unit === 'saltmere' ? 'Saltmere 1' : 'Thornbeck 1';
  const later = chance.isTrue(0.85) ? scanner : 'Marlowe General 2';
  yield* scan(me, hip(before, scanner), addDays(first, -chance.between(20, 90)));
  yield* scan(me, hip(before + chance.between(-55, 35), later), me.today);
  yield* me.writes(nurse, 'height', {
    quantity: { comparator: '', value: String(chance.between(148, 168)), unit: 'cm' },
    which: 'measured now',
  });
  yield* me.writes(nurse, 'adherence', {
    medicine: 'calcium and vitamin D',
    taken: chance.oneOf(['nearly all', 'nearly all', 'more than half', 'less than half']),
    source: 'told by the person',
  });
}

function* scan(me: Me, body: Density, on: Day): Life {
  yield* me.writes(me.by('nurse'), 'bone-density', body, on);
}

/** A total hip with the T-score a report would print beside it (the reference of NHANES III, `from memory`). */
function hip(thousandths: number, scanner: string): Density {
  return {
    site: 'total hip',
    side: 'left',
    scanner,
    density: { comparator: '', value: (thousandths / 1000).toFixed(3), unit: 'g/cm2' },
    tScore: ((thousandths - 942) / 122).toFixed(1),
  };
}
