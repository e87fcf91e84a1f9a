import { entryText, factsOf, longDate, shortDate, visitOn } from '@twelvemonth/clinical';
import type { Person } from '../register/people.ts';

/** What the last visit would tell the next nurse: cannula, how long it ran, what was felt afterwards. */
export function lastTimeInWords({ record, today, course }: Person, nameOf: (staff: string) => string): string[] {
  const last = factsOf(record, 'arrived').findLast(({ on }) => on < today);
  const visit = last === undefined ? undefined : visitOn(record, last.on);
  const lines: string[] = [];
  if (visit !== undefined) {
    const { chair } = visit.arrived.body;
    lines.push(
      `last visit ${longDate(visit.on)}${chair === undefined ? '' : `, chair ${chair}`}${visit.putOff ? ', put off' : ''}`,
    );
    if (visit.cannula !== undefined)
      lines.push(
        `${entryText(visit.cannula)}${visit.cannulaTries > 1 ? `; ${visit.cannulaTries} tries in all` : ''} (${nameOf(visit.cannula.author.staff)})`,
      );
    if (visit.infusion?.finished !== undefined) lines.push(entryText(visit.infusion.finished));
  }
  // What was seen at the chair is told at every later visit; what was felt at home, of the last dose.
  const since = course.lastDose?.on ?? today;
  for (const reaction of factsOf(record, 'reaction'))
    if (reaction.on >= since || (reaction.body.infusion !== undefined && reaction.on < today))
      lines.push(`${shortDate(reaction.on)}: ${entryText(reaction)}`);
  return lines;
}
