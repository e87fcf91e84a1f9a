/**
 * What opens a review during a planned break: the engine against the checker that was written from docs/readiness.md R7 alone,
 * on random ledgers whose values lie at the edges.
 */
import { describe, expect, test } from 'vitest';
import {
  type Day,
  type Entry,
  courseOf,
  entriesFromDrafts,
  everyDay,
  parseLedger,
  recordOf,
  teaching,
  teachingSheet,
  usualPerson,
} from '@twelvemonth/clinical';
import { breakEvents } from './oracle/break-events.ts';
import { dateText, dayNumber } from './oracle/dates.ts';
import { diceOf } from './oracle/dice.ts';
import { countingFacts } from './oracle/facts.ts';
import { viewOf } from './oracle/view.ts';
import { worldOf } from './oracle/world.ts';

const began = dayNumber('2022-04-01');
const asked = dayNumber('2024-04-01');

/** Facts before and after the day the break began, that day itself among them. */
function ledger(seed: number): Entry[] {
  const dice = diceOf(seed);
  const lines: { on: number; text: string; late: number }[] = [];
  const put = (on: number, text: string, late = 0): void => void lines.push({ on, text, late });
  /** Days after which it was written down; mostly none. */
  const late = (): number => (dice.chance(0.3) ? dice.whole(1, 900) : 0);
  const sometime = (): number =>
    began + dice.oneOf([-1, 0, 1, dice.whole(-900, -2), dice.whole(2, 720), dice.whole(2, 720)]);
  let labels = 0;
  for (const back of [380, 745, 1110]) put(began - back, 'dose zoledronic acid 5 mg, this service');
  put(
    began,
    dice.chance(0.9)
      ? 'course review planned break until 1 Apr 2025, triggers fracture, ok'
      : 'course review carry on to 6 doses, ok',
  );
  for (let count = dice.whole(1, 4); count > 0; count -= 1) {
    const kind = dice.oneOf(['scan', 'scan', 'marker', 'marker', 'height', 'steroid', 'told']);
    if (kind === 'scan') {
      // Each is put beside another of the same site, so that most can be compared.
      const site = dice.oneOf(['total hip', 'femoral neck', 'lumbar spine']);
      const own = dice.chance(0.3) ? `, least change ${dice.oneOf(['0.03', '0.035', '<0.03'])} g/cm2` : '';
      const scanner = dice.oneOf(['T1', '"T1 "', 't1', 'T2']);
      put(began - dice.oneOf([0, dice.whole(0, 400)]), `bone density ${site} 0.700 g/cm2, scanner T1`);
      const value = dice.oneOf(['0.665', '0.6651', '0.6517', '0.6518', '0.6629', '0.6630', '0.670', '0.735', '<0.600']);
      put(began + dice.whole(-30, 700), `bone density ${site} ${value} g/cm2, scanner ${scanner}${own}`, late());
    }
    if (kind === 'marker') {
      const marker = dice.oneOf(['CTX', 'CTX', 'P1NP']);
      const unit = marker === 'CTX' ? dice.oneOf(['ng/L', 'pg/mL']) : dice.oneOf(['ug/L', 'ng/mL']);
      for (const [on, value] of [
        [began - dice.oneOf([0, dice.whole(0, 400)]), '200'],
        [began + dice.whole(-30, 700), dice.oneOf(['259', '260', '261', '199', '<400'])],
      ] as const) {
        labels += 1;
        const perLitre = marker === 'CTX' && dice.chance(0.3) && !value.startsWith('<');
        const after = late();
        put(on, `#m${labels} ${marker} ${perLitre ? `0.${value} ug/L` : `${value} ${unit}`}`, after);
        if (dice.chance(0.85)) put(on + dice.whole(0, 5), `signed #m${labels}`, after);
      }
    }
    if (kind === 'height') {
      put(began - dice.whole(0, 900), `height ${dice.oneOf(['160 cm', '63 in'])} measured now`, late());
      const now = dice.oneOf(['158 cm', '158.02 cm', '158.03 cm', '158.1 cm', '62.2 in', '<150 cm']);
      put(
        began + dice.whole(-30, 700),
        `height ${now} ${dice.oneOf(['measured now', 'measured now', 'peak adult'])}`,
        late(),
      );
    }
    if (kind === 'steroid') {
      const dose = dice.oneOf(['', ', prednisolone mg per day 7.5', ', prednisolone mg per day 7.49']);
      put(sometime(), `medicine name prednisolone, sort ${dice.oneOf(['steroid', 'steroid', 'other'])}${dose}`, late());
    }
    if (kind === 'told') {
      labels += 1;
      const on = sometime();
      const said = dice.oneOf([
        'fracture wrist',
        'fracture other',
        'fracture hip',
        'symptom back pain',
        'symptom jaw pain',
      ]);
      const after = late();
      put(on, `#t${labels} ${said}`, after);
      if (said.startsWith('symptom') && dice.chance(0.5)) put(on + 1, `symptom cleared #t${labels} "muscular"`, after);
    }
  }
  const text = lines
    .toSorted((a, b) => a.on + a.late - b.on - b.late)
    .map(({ on, text: says }) => `${dateText(on)}  ${says}`)
    .join('\n');
  const read = parseLedger(`person  female, born 1941-06-02\n${text}`);
  if (!read.ok) throw new Error(read.problems.map(({ line, says }) => `${line}: ${says}`).join('\n'));
  return entriesFromDrafts(read.drafts, { start: '2015-01-01T08:00:00.000Z' });
}

describe('engine and checker agree on what opens a review during a break', () => {
  test('2,000 random ledgers', () => {
    const world = worldOf(teachingSheet, everyDay);
    let opened = 0;
    let quiet = 0;
    for (let seed = 1; seed <= 2000; seed += 1) {
      const entries = ledger(seed);
      const facts = countingFacts(entries).filter(({ on }) => on <= asked);
      const [first] = breakEvents(viewOf(world, facts, asked));
      const { review } = courseOf(recordOf(usualPerson, entries), teaching, asked as Day);
      const since = review?.because === 'during the break' ? review.since : undefined;
      expect(since, `seed ${seed}`).toBe(first);
      if (first === undefined) quiet += 1;
      else opened += 1;
    }
    // Worth something only if both answers are common.
    expect(Math.min(opened, quiet)).toBeGreaterThan(400);
  });
});
