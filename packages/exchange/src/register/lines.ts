/** A person of the file as the lines of acts "take in": identity first, then doses, then everything else. */
import {
  type ActNamed,
  type BodyOfKind,
  type Day,
  type Draft,
  kindNamed,
  plainDate,
  printLedger,
  subject,
} from '@twelvemonth/clinical';
import type { Fact, Line } from './fact.ts';
import { type PersonRead, identityOf } from './person.ts';
import type { RowPerson } from './row-person.ts';

/** As many lines as one act takes. */
const linesPerAct = 60;
const order: readonly Line['kind'][] = [
  'identity',
  'contact',
  'referral',
  'dose',
  'surgery',
  'fracture',
  'allergy',
  'dental',
  'weight',
  'height',
  'result',
  'died',
];

const contactOf = (said: RowPerson): BodyOfKind<'contact'> | undefined => {
  const body = {
    ...(said.telephone === undefined ? {} : { telephone: said.telephone }),
    ...(said.address === undefined ? {} : { address: said.address }),
    ...(said.familyDoctor === undefined ? {} : { familyDoctor: said.familyDoctor }),
  };
  return Object.keys(body).length === 0 ? undefined : body;
};

function referralOf(person: PersonRead, unit: string): BodyOfKind<'referral'> {
  const { reason, referredBy, tier } = person.said;
  const remarks = person.words.length === 0 ? '' : `From the register: ${person.words.join('; ')}`;
  const text =
    [reason, remarks].filter((part) => part !== undefined && part !== '').join('. ') || 'brought in with a register';
  return { from: referredBy ?? 'register brought in', reason: text.slice(0, 2000), unit, tier: tier ?? 'routine' };
}

/** The day from which the notes begin: nothing the register tells of the person lies before it. */
function firstDay(person: PersonRead, today: Day): Day {
  const days = person.facts.flatMap((fact) => fact.on ?? []);
  if (person.said.referredOn !== undefined) days.push(person.said.referredOn);
  return days.reduce((first, on) => (on < first ? on : first), today);
}

/** Facts without a day: what is asked again anyway is dated today, an undated fracture at the beginning. */
const dayOfFact = (fact: Fact, first: Day, today: Day): Day => fact.on ?? (fact.kind === 'fracture' ? first : today);

export function linesOf(
  person: PersonRead,
  fresh: readonly Fact[],
  options: { readonly isNew: boolean; readonly hasContact: boolean; readonly today: Day; readonly unit: string },
): readonly Line[] {
  const { isNew, hasContact, today, unit } = options;
  const first = firstDay(person, today);
  const lines: Line[] = [];
  const identity = isNew ? identityOf(person.said) : undefined;
  if (identity !== undefined) {
    lines.push({ kind: 'identity', body: identity, effectiveAt: plainDate(first) });
    lines.push({
      kind: 'referral',
      body: referralOf(person, unit),
      effectiveAt: plainDate(person.said.referredOn ?? first),
    });
  }
  const contact = hasContact ? undefined : contactOf(person.said);
  if (contact !== undefined) lines.push({ kind: 'contact', body: contact, effectiveAt: plainDate(today) });
  for (const fact of fresh)
    lines.push({ kind: fact.kind, body: fact.body, effectiveAt: plainDate(dayOfFact(fact, first, today)) });
  return lines.toSorted(
    (a, b) =>
      order.indexOf(a.kind) - order.indexOf(b.kind) ||
      (a.effectiveAt < b.effectiveAt ? -1 : a.effectiveAt > b.effectiveAt ? 1 : 0),
  );
}

/** The first line that does not fit the shape of its kind, and why: the last check before anything is proposed. */
export function misfit(lines: readonly Line[]): { readonly line: Line; readonly says: string } | undefined {
  for (const line of lines) {
    const parsed = kindNamed(line.kind).body.safeParse(line.body);
    if (!parsed.success)
      return {
        line,
        says: `${kindNamed(line.kind).label}: ${parsed.error.issues.map((issue) => issue.message).join('; ')}`,
      };
  }
  return undefined;
}

export type TakeIn = { readonly id: string; readonly act: ActNamed<'take in'> };

/** Cuts the lines into acts; ids are made from what the file is and the row, so that sending them again is safe. */
export function actsOf(
  lines: readonly Line[],
  patient: string,
  isNew: boolean,
  idOfPart: (part: number) => string,
): readonly TakeIn[] {
  const acts: TakeIn[] = [];
  for (let start = 0; start < lines.length; start += linesPerAct) {
    const part = acts.length;
    acts.push({
      id: idOfPart(part),
      act: { name: 'take in', patient, isNew: isNew && part === 0, lines: lines.slice(start, start + linesPerAct) },
    });
  }
  return acts;
}

/** The lines of these acts as they will read in the notes. Slow: for what is shown, not for every row of a file. */
export function inWords(acts: readonly TakeIn[]): readonly string[] {
  const drafts = acts.flatMap(({ act }) =>
    act.lines.map((line): Draft => ({
      subject: subject('patient', 'person'),
      kind: line.kind,
      shape: kindNamed(line.kind).shape,
      body: line.body,
      effectiveAt: line.effectiveAt,
      zone: 'Europe/London',
    })),
  );
  return printLedger(drafts)
    .split('\n')
    .filter((text) => text !== '');
}
