/**
 * A register of invented people, thirty entries each, made from a seed: the same people every time. Their values lie around the
 * limits of a protocol, so that moving a number moves some of them: about as many kinds of trouble as a unit's register has.
 */
import type { Entry, KindName } from '../packages/clinical/src/index.ts';

type Dice = { readonly whole: (low: number, high: number) => number; readonly chance: (of: number) => boolean };

/** A small generator of well-spread numbers (mulberry32), for data that must be the same everywhere. */
function diceFrom(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return { whole: (low, high) => low + Math.floor(next() * (high - low + 1)), chance: (of) => next() < of };
}

const two = (number: number): string => String(number).padStart(2, '0');
/** The date so many days before 25 November 2026. */
const before = (days: number): string =>
  new Date(Date.UTC(2026, 10, 25) - days * 86_400_000).toISOString().slice(0, 10);
const decimal = (hundredths: number): string => (hundredths / 100).toFixed(2);

type Line = { readonly on: string; readonly kind: KindName; readonly body: unknown; readonly id?: string };
const quantity = (value: string, unit: string) => ({ comparator: '', value, unit });

function bloods(dice: Dice, index: number, daysAgo: number, isSigned: boolean): Line[] {
  const on = before(daysAgo);
  const id = (test: string): string => `${test}-${index}-${daysAgo}`;
  const result = (test: string, value: string, unit: string): Line => ({
    on,
    kind: 'result',
    id: id(test),
    body: { analyte: test, quantity: quantity(value, unit) },
  });
  const lines = [
    result('creatinine', String(dice.whole(52, 118)), 'umol/L'),
    result('adjusted calcium', decimal(dice.whole(216, 262)), 'mmol/L'),
  ];
  if (dice.chance(0.7)) lines.push(result('vitamin D', String(dice.whole(30, 110)), 'nmol/L'));
  if (isSigned) lines.push({ on, kind: 'results-signed', body: { results: lines.map(({ id: name }) => name) } });
  return lines;
}

function linesOf(dice: Dice, index: number): Line[] {
  const weight = (daysAgo: number): Line => ({
    on: before(daysAgo),
    kind: 'weight',
    body: { quantity: quantity(decimal(dice.whole(4200, 8200)), 'kg'), method: 'measured' },
  });
  const lines: Line[] = [
    {
      on: before(1500),
      kind: 'identity',
      body: {
        family: `Arkwright-Poe ${index}`,
        given: 'Wilhelmina',
        born: `${dice.whole(1931, 1956)}-${two(dice.whole(1, 12))}-${two(dice.whole(1, 28))}`,
        sex: dice.chance(0.85) ? 'female' : 'male',
        number: `999 ${String(index).padStart(7, '0')}`,
      },
    },
  ];
  lines.push({
    on: before(1495),
    kind: 'referral',
    body: { from: 'fracture liaison service', reason: 'wrist fracture', unit: 'thornbeck', tier: 'routine' },
  });
  if (dice.chance(0.95)) lines.push({ on: before(1490), kind: 'allergy', body: { answer: 'none known' } });
  lines.push({ on: before(1490), kind: 'pregnancy', body: { answer: 'does not apply', reason: 'told us' } });
  if (dice.chance(0.6))
    lines.push({
      on: before(1490),
      kind: 'height',
      body: { quantity: quantity(String(dice.whole(148, 176)), 'cm'), which: 'peak adult' },
    });
  const lastDose = dice.whole(200, 420);
  for (let dose = dice.whole(0, 3); dose >= 1; dose -= 1) {
    const daysAgo = lastDose + (dose - 1) * 370;
    lines.push(...bloods(dice, index, daysAgo + 30, true), weight(daysAgo + 30));
    lines.push({
      on: before(daysAgo),
      kind: 'dose',
      body: { medicine: 'zoledronic acid 5 mg', setting: 'this service' },
    });
  }
  if (dice.chance(0.15)) {
    lines.push({ on: before(40), kind: 'illness', body: { what: 'chest infection', sort: 'illness' } });
    if (dice.chance(0.8)) lines.push({ on: before(30), kind: 'well-since', body: {} });
  }
  const daysAgo = dice.whole(1, 90);
  lines.push(...bloods(dice, index, daysAgo, dice.chance(0.9)), weight(dice.whole(1, 120)));
  if (dice.chance(0.92)) lines.push({ on: before(58), kind: 'dental', body: { answer: 'nothing pending' } });
  if (dice.chance(0.9)) lines.push({ on: before(60), kind: 'consent', body: { decision: 'given', how: 'spoken' } });
  if (dice.chance(0.85))
    lines.push({
      on: before(100),
      kind: 'prescription',
      body: { regimen: 'zoledronic-acid-yearly', validFrom: before(100), validUntil: before(-265) },
    });
  while (lines.length < ENTRIES)
    lines.push({
      on: before(dice.whole(1, 1400)),
      kind: 'call',
      body: { route: 'telephone', about: 'recall', reached: true, note: 'spoke with her' },
    });
  // What is cut off, where it is too many, is the oldest of what is not about who it is.
  return [...lines.slice(0, 4), ...lines.slice(4).slice(-(ENTRIES - 4))].toSorted((a, b) =>
    a.on < b.on ? -1 : a.on > b.on ? 1 : 0,
  );
}

const ENTRIES = 30;

/** The notes of one invented person; `index` is their place in the register. */
export function inventedLedger(index: number, seed = 20_261_125): Entry[] {
  const subject = `patient/r${index}` as const;
  return linesOf(diceFrom(seed + index), index).map(({ on, kind, body, id }, at) => ({
    subject,
    kind,
    shape: 1,
    body,
    effectiveAt: on,
    zone: 'Europe/London',
    id: id ?? `e${index}-${at + 1}`,
    act: `a${index}-${at + 1}`,
    seq: at + 1,
    recordedAt: `${on}T09:00:00.000Z`,
    author: { staff: 'rn-1', role: 'nurse' },
    previousHash: '',
    hash: '',
  }));
}
