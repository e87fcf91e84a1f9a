/** Which letters a person's notes call for now. A person decides on each; nothing is sent by itself. */
import { type Day, type LetterOut, addDays, lettersOut, latest, noContactWanted } from '@twelvemonth/clinical';
import { type LetterName, letterSorts } from '@twelvemonth/letters';
import type { Person } from '../register/people.ts';
import { drawOf } from './matter.ts';

export type CalledFor = { readonly name: LetterName; readonly because: string; readonly since: Day };

export function lettersCalledFor(person: Person): readonly CalledFor[] {
  const { record, today, standing } = person;
  if (standing.standing === 'died') return [];
  const letters = lettersOut(record);
  const silent = noContactWanted(record, today) !== undefined;
  return happened(person)
    .filter(({ name, seq }) => !letters.some((letter) => isOf(name, letter) && begunAfter(letter, seq)))
    .filter(({ name }) => !(silent && letterSorts[name].to === 'patient'))
    .map(({ name, because, since }) => ({ name, because, since }));
}

type Happened = CalledFor & { readonly seq: number };

const isOf = (name: LetterName, { to, about }: LetterOut): boolean =>
  letterSorts[name].to === to && letterSorts[name].about === about;
const begunAfter = ({ draft, letter }: LetterOut, seq: number): boolean => ((draft ?? letter)?.seq ?? 0) > seq;

/** What happened that somebody has to be written to about. */
function happened(person: Person): readonly Happened[] {
  const { record, place, standing, today } = person;
  const found: Happened[] = [];
  const booked = place === undefined ? undefined : record.all.find(({ id }) => id === place.entry);
  if (place !== undefined && booked !== undefined && place.on > today)
    found.push({ name: 'invitation', because: 'a place is booked', since: booked.on, seq: booked.seq });
  if (standing.standing === 'put off') {
    const decision = latest(record, 'go-decision');
    if (decision?.body.decision === 'put off')
      found.push({ name: 'put off', because: 'the dose was put off', since: decision.on, seq: decision.seq });
  }
  if (standing.standing === 'cannot be reached') {
    const said = latest(record, 'cannot-be-reached');
    const of = { because: 'they cannot be reached', since: standing.since, seq: said?.seq ?? 0 };
    found.push({ name: 'no answer', ...of }, { name: 'no answer, to the family doctor', ...of });
  }
  const transfer = latest(record, 'transfer-out');
  if (standing.standing === 'transferred out' && standing.on !== undefined && transfer !== undefined)
    found.push({ name: 'transfer', because: 'care is handed over', since: transfer.on, seq: transfer.seq });
  return [...found, ...recent(person), ...bloods(person)];
}

/** A letter about what lies longer back than the unit waits for an answer would puzzle more than help: it is still written by hand. */
function recent({ record, standing, unit, today }: Person): readonly Happened[] {
  const days = unit?.unit.letters?.answerWithinDays ?? 0;
  const isRecent = (on: Day): boolean => addDays(on, days) >= today;
  const review = latest(record, 'course-review');
  const closed = standing.standing === 'closed' ? latest(record, 'closed') : undefined;
  return [
    ...(review !== undefined && isRecent(review.on)
      ? [{ name: 'review outcome', because: 'the course was reviewed', since: review.on, seq: review.seq } as const]
      : []),
    ...(closed !== undefined && isRecent(closed.on)
      ? [{ name: 'closing', because: 'care here was closed', since: closed.on, seq: closed.seq } as const]
      : []),
  ];
}

const invited = new Set(['in work-up', 'waiting for a place', 'booked', 'overdue', 'put off']);

/** Bloods are asked for once a place or a recall needs them, and again only after a new result. */
function bloods(person: Person): readonly Happened[] {
  const { record, standing, course, today } = person;
  const recalled = course.recall !== undefined && course.recall.from <= today && standing.standing === 'between doses';
  if (!invited.has(standing.standing) && !recalled) return [];
  const draw = drawOf(person);
  if (draw === undefined) return [];
  const seq = Math.max(0, ...[latest(record, 'result'), latest(record, 'dose')].map((fact) => fact?.seq ?? 0));
  return [{ name: 'bloods needed', because: 'bloods are needed', since: draw.between.from, seq }];
}
