/** What a field that points at something may point at: this person's entries, the protocol's regimens, the service's units. */
import { decidedAboutKinds, lookedAgainAtKinds } from '@twelvemonth/clinical';
import type { PersonView, ProtocolView, UnitView } from '@twelvemonth/exchange';
import type { Picks } from '../../kind-form/BodyFields.tsx';
import { shortDay } from '../../words/dates.ts';

const standing = (person: PersonView) =>
  person.entries.filter((entry) => entry.withdrawnBy === undefined && entry.amendedBy === undefined);

const entriesOf = (person: PersonView, ...kinds: readonly string[]) =>
  standing(person)
    .filter(({ kind }) => kinds.includes(kind))
    .toReversed()
    .map((entry) => ({ value: entry.id, says: `${shortDay(entry.on)}: ${entry.text}` }));

export function picksFor(
  kind: string,
  person: PersonView,
  units: readonly UnitView[],
  protocol: ProtocolView | undefined,
): Picks {
  const inForce = protocol?.versions.find(({ state }) => state === 'in force');
  switch (kind) {
    case 'dose':
      return { checkedBy: person.checkers.map(({ staff, name }) => ({ value: staff, says: name })) };
    case 'results-signed':
      return {
        results: person.unsigned.map((each) => ({ value: each.entry, says: `${shortDay(each.on)}: ${each.text}` })),
      };
    case 'symptom-cleared':
      return {
        entry: entriesOf(person, 'symptom', 'checklist'),
        question: (inForce?.dayQuestions ?? [])
          .filter(({ staysUntilCleared }) => staysUntilCleared)
          .map(({ id, asks }) => ({ value: id, says: asks })),
      };
    case 'prescriber-decision':
      return { about: entriesOf(person, ...decidedAboutKinds) };
    case 'advice-answered':
      return { about: entriesOf(person, 'advice-call') };
    case 'looked-again':
      return { about: entriesOf(person, ...lookedAgainAtKinds) };
    case 'prescription':
      return inForce === undefined
        ? {}
        : { regimen: inForce.regimens.map(({ id, title }) => ({ value: id, says: title })) };
    case 'referral':
      return { unit: units.map((unit) => ({ value: unit.unit, says: unit.name })) };
    default:
      return {};
  }
}
