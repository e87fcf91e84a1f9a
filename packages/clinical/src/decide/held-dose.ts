/**
 * A running dose is held by one device: the one at which it was started, until another takes it over. Taking over is asked
 * about, written and seen at both. A pause never asks: whoever sees trouble stops it where they stand, and holds it from then
 * on. What a device wrote without the network about a dose that it does not hold comes to a person.
 */
import { subject } from '../ledger/subject.ts';
import type { KindName } from '../kinds/index.ts';
import { type Fact, type SubjectRecord, factsOf } from '../record/patient-record.ts';
import { type Visit, visitOn } from '../visit/visit.ts';
import type { Act } from './act.ts';
import { draftNow } from './draft.ts';
import { patientIn } from './ledgers.ts';
import type { Refusal } from './refusal.ts';
import { refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

/** Who holds the dose of a visit; the newest word. */
export const heldAt = (record: SubjectRecord, { on, infusion }: Visit): Fact<'dose-held'> | undefined =>
  infusion === undefined
    ? undefined
    : factsOf(record, 'dose-held').findLast((fact) => fact.on === on && fact.seq > infusion.started.seq);

/** Written at any screen while the network is there; without it only where the dose is held. */
const ofTheDose: ReadonlySet<KindName> = new Set([
  'site-check',
  'cannula',
  'flush',
  'cannula-removed',
  'reaction',
  'observed',
  'left',
]);

type ActOfPatient = Extract<Act, { readonly patient: string }>;

function isOfTheDose(act: Act): act is ActOfPatient {
  switch (act.name) {
    case 'pause infusion':
    case 'resume infusion':
    case 'finish infusion':
      return true;
    case 'record':
      return ofTheDose.has(act.line.kind);
    case 'record together':
      return act.lines.some(({ kind }) => ofTheDose.has(kind));
    default:
      return false;
  }
}

export function checkHeldHere(act: Act, now: Surroundings): readonly Refusal[] {
  const { device } = now;
  if (!isOfTheDose(act) || device === undefined || device.takesOver) return [];
  const record = patientIn(now, act.patient);
  const visit = visitOn(record, now.today);
  const held = visit === undefined ? undefined : heldAt(record, visit);
  if (visit === undefined || held === undefined || held.body.device.id === device.id) return [];
  const asks = act.name === 'resume infusion' || (act.name === 'finish infusion' && act.happenedAt === undefined);
  const running = visit.infusion?.finished === undefined;
  const lost = factsOf(record, 'dose-held').some(({ on, body }) => on === visit.on && body.takenFrom?.id === device.id);
  if (!asks && !(device.waited && (running || lost))) return [];
  return [
    refusal('held-elsewhere', `This drip is looked after at ${held.body.device.name}, not here.`, {
      remedy: device.waited
        ? 'look at the visit: what was written there meanwhile, and whether yours still stands'
        : 'go on there, or take it over here: both are told',
    }),
  ];
}

/** With the start, and with whatever takes it over, stands where the dose is held from then on. */
export function withHold(act: Act, decided: Decided, now: Surroundings): Decided {
  const { device } = now;
  if (device === undefined || !('drafts' in decided) || !('patient' in act)) return decided;
  const begins = act.name === 'start infusion' && act.happenedAt === undefined;
  const takes = act.name === 'pause infusion' || device.takesOver;
  if (!begins && !(takes && isOfTheDose(act))) return decided;
  const record = patientIn(now, act.patient);
  const visit = visitOn(record, now.today);
  const held = visit === undefined ? undefined : heldAt(record, visit);
  const here = { id: device.id, name: device.name };
  if (!begins && (held === undefined || held.body.device.id === here.id)) return decided;
  const body = { device: here, ...(held === undefined ? {} : { takenFrom: held.body.device }) };
  return { drafts: [...decided.drafts, draftNow(subject('patient', act.patient), 'dose-held', body, now)] };
}
