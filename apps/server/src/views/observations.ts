/** What was measured at a visit, and whom the early warning score is for. */
import {
  type Day,
  type EarlyWarningFor,
  type SubjectRecord,
  earlyWarningFor,
  earlyWarningSays,
  factsOf,
  observationsText,
  plainDate,
} from '@twelvemonth/clinical';
import type { VisitView } from '@twelvemonth/exchange';

const earlyWarningViewOf = (whom: EarlyWarningFor): VisitView['earlyWarningFor'] =>
  'notFor' in whom
    ? whom
    : { scale: whom.scale, ...(whom.decidedOn === undefined ? {} : { decidedOn: plainDate(whom.decidedOn) }) };

export function observationsViewOf(
  record: SubjectRecord,
  on: Day,
  nameOf: (staff: string) => string,
): Pick<VisitView, 'earlyWarningFor' | 'observations'> {
  const whom = earlyWarningFor(record, on);
  return {
    earlyWarningFor: earlyWarningViewOf(whom),
    observations: factsOf(record, 'observations')
      .filter((fact) => fact.on === on)
      .map((fact) => ({
        when: fact.body.when,
        at: fact.at ?? fact.recordedAt,
        by: nameOf(fact.author.staff),
        says: observationsText(fact.body),
        earlyWarning: earlyWarningSays(fact.body, whom),
      })),
  };
}
