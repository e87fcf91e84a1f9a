/** What happens to a unit and not to a person: its description, its protocol, its sessions, a file that was brought in. */
import {
  type Act,
  type Author,
  type Day,
  addDays,
  addMonths,
  canonicalText,
  dayFromCivil,
  civilFromDay,
  plainDate,
} from '@twelvemonth/clinical';
import { ZONE, at } from './clock.ts';
import type { Life } from './life.ts';
import { sha256Hex } from './sha256.ts';
import { demoSheet } from './sheets.ts';
import { type UnitId, inRole, nursesAt } from './staff.ts';
import { arrivals, isUsualSessionDay, sessionId, settingsOf } from './units.ts';
import { type World, sessionIn } from './world.ts';

export const planSessionAct = (unit: UnitId, on: Day): Act => ({
  name: 'plan session',
  session: sessionId(unit, on),
  body: { unit, on: plainDate(on), zone: ZONE, arriveAt: arrivals(unit), opensAt: '08:30', closesAt: '17:00' },
});

const PLANNED_AHEAD_DAYS = 70;
const STORY_AHEAD_DAYS = 800;

export function* unitLife(unit: UnitId, world: World): Life {
  const lead = inRole('service lead', unit, 0);
  yield {
    at: at(world.begins, 9),
    act: { name: 'set unit', unit, body: settingsOf(unit, world.begins, addDays(world.today, STORY_AHEAD_DAYS)) },
    by: lead,
  };
  yield* adopts(unit, 1, addDays(world.begins, 14), world.begins);
  const second = addMonths(world.begins, 40);
  yield* adopts(unit, 2, second, addDays(second, -20));
  if (unit === 'thornbeck')
    yield* adopts(unit, 3, lastFirstOfSeptember(world.today), addDays(lastFirstOfSeptember(world.today), -20));
  yield* plansAhead(unit, world);
  yield* opensToday(unit, world);
}

const KIT_DAYS = 120;
const COMPETENCE_DAYS = 300;

/** From the evening before on the unit keeps competences: nothing runs before the session is open, here as anywhere. */
function* opensToday(unit: UnitId, world: World): Life {
  const { today } = world;
  const by = inRole('nurse in charge', unit, 0);
  const nurses = nursesAt(unit);
  const until = plainDate(addDays(today, COMPETENCE_DAYS));
  // Nobody writes down what they have shown themselves.
  for (const { staff } of nurses) {
    for (const what of ['medicines into a vein', 'life support'] as const)
      yield {
        at: at(addDays(today, -1), 18),
        act: { name: 'record competence', unit, body: { staff, role: 'nurse', what, until } },
        by: staff === by.staff ? inRole('nurse in charge', unit, 1) : by,
      };
  }
  if (!isUsualSessionDay(unit, today)) return;
  yield {
    at: at(today, 8, 10),
    act: {
      name: 'open session',
      session: sessionId(unit, today),
      unit,
      body: {
        present: nurses,
        secondCheckers: nurses.map(({ staff }) => staff),
        kit: { checkedBy: by.staff, complete: true, expiresOn: plainDate(addDays(today, KIT_DAYS)) },
        chairs: settingsOf(unit, today, today).chairs,
        counts: [],
      },
    },
    by,
  };
  yield { at: at(today, 8, 15) };
  const session = sessionId(unit, today);
  const listed = [...(sessionIn(world, session)?.taken.values() ?? [])];
  for (const [turn, { staff }] of nurses.entries()) {
    const patients = listed.filter((_, index) => index % nurses.length === turn);
    if (patients.length > 0)
      yield { at: at(today, 8, 16), act: { name: 'name nurse', session, patients, nurse: staff }, by };
  }
}

/** "In force since 1 September": the newest one at least a month ago. */
function lastFirstOfSeptember(today: Day): Day {
  const { year } = civilFromDay(today);
  const candidate = dayFromCivil(year, 9, 1);
  return candidate <= addDays(today, -30) ? candidate : dayFromCivil(year - 1, 9, 1);
}

function* adopts(unit: UnitId, version: number, from: Day, writtenOn: Day): Life {
  const { write, contentHash } = written(unit, version, from);
  yield { at: at(writtenOn, 11), act: write, by: inRole('nurse in charge', unit, 0) };
  const sign = (as: 'clinician' | 'pharmacist'): Act => ({
    name: 'sign protocol',
    unit,
    version: `${unit}-${version}`,
    contentHash,
    as,
    inForceFrom: plainDate(from),
  });
  yield { at: at(addDays(writtenOn, 3), 12), act: sign('clinician'), by: inRole('prescriber', unit, 0) };
  yield { at: at(addDays(writtenOn, 6), 14), act: sign('pharmacist'), by: inRole('pharmacist', unit, 0) };
}

function written(unit: UnitId, version: number, from: Day): { write: Act; contentHash: string } {
  const sheet = demoSheet(unit, version, from);
  const contentHash = `sha256:${sha256Hex(canonicalText(sheet))}`;
  return { write: { name: 'write protocol', unit, sheet, contentHash }, contentHash };
}

/** From ten weeks before the demo's day the lists of the coming ten weeks are planned, week by week; empty ones are called off. */
function* plansAhead(unit: UnitId, world: World): Life {
  const by = inRole('nurse in charge', unit, 0);
  const yesterday = addDays(world.today, -1);
  const from = addDays(yesterday, -PLANNED_AHEAD_DAYS);
  for (let week = from; week <= yesterday; week = addDays(week, 7)) {
    yield { at: at(week, 8) };
    for (let on = week; on < addDays(week, PLANNED_AHEAD_DAYS); on = addDays(on, 1)) {
      if (isUsualSessionDay(unit, on) && sessionIn(world, sessionId(unit, on)) === undefined)
        yield { at: at(week, 8, 5), act: planSessionAct(unit, on), by };
    }
    if (week + 7 <= yesterday) yield* callsOffEmpty(unit, week, by, world);
  }
  if (unit === 'thornbeck') yield* nextVersionWaits(unit, world);
}

function* callsOffEmpty(unit: UnitId, week: Day, by: Author, world: World): Life {
  for (let on = addDays(week, 1); on <= addDays(week, 7) && on < world.today; on = addDays(on, 1)) {
    if (!isUsualSessionDay(unit, on)) continue;
    yield { at: at(addDays(on, -1), 16) };
    const session = sessionId(unit, on);
    if ((sessionIn(world, session)?.taken.size ?? 1) === 0)
      yield {
        at: at(addDays(on, -1), 16, 5),
        act: { name: 'cancel session', session, reason: 'nobody on the list' },
        by,
      };
  }
}

/** A next version that a clinician has signed and a pharmacist has not. */
function* nextVersionWaits(unit: UnitId, world: World): Life {
  const from = addDays(world.today, 45);
  const { write, contentHash } = written(unit, 4, from);
  yield { at: at(addDays(world.today, -1), 8, 30), act: write, by: inRole('nurse in charge', unit, 0) };
  yield {
    at: at(addDays(world.today, -1), 8, 40),
    act: {
      name: 'sign protocol',
      unit,
      version: `${unit}-4`,
      contentHash,
      as: 'clinician',
      inForceFrom: plainDate(from),
    },
    by: inRole('prescriber', unit, 0),
  };
}
