/** The whole record of a person as one readable document: who they are, where they stand, why, and every entry as written. */
import { shortDate } from '@twelvemonth/clinical';
import type { AtHand } from '../at-hand.ts';
import { entriesOf } from '../register/notes.ts';
import type { Person } from '../register/people.ts';
import type { Member } from '../sign-in/accounts.ts';
import { entryViewsOf, unreadIn } from '../views/entries.ts';
import { noProtocolInForce } from '../views/person-row.ts';
import { allergiesInWords, bornInWords, fullName, needsOf } from '../views/person-words.ts';
import { document, escaped, factsTable, table } from './html.ts';

/** Those who watch over the records also see who looked. */
const seesLooks = (reader: Member): boolean =>
  reader.roles.some((role) => role === 'auditor' || role === 'service lead');

export async function notesDocumentOf(atHand: AtHand, person: Person, reader: Member): Promise<string> {
  const { identity, contact, standing, unit, today } = person;
  const entries = entryViewsOf(
    await entriesOf(atHand.store, person.record),
    atHand.accounts.nameOf,
    unreadIn(person),
    person.record,
  );
  const facts: (readonly [string, string])[] = [
    ['Born', bornInWords(identity?.born)],
    ['Sex as registered', identity?.sex ?? 'not recorded'],
    ['Number', identity?.number ?? 'not recorded'],
    ...(person.record.together ?? []).map(
      ({ identities }) => ['Read in from notes', identities.at(-1)?.number ?? 'without a number'] as const,
    ),
    ['Unit', unit?.unit.name ?? person.unitId],
    ['Allergies', allergiesInWords(person)],
    ...(contact?.armToAvoid === undefined
      ? []
      : [
          [
            'Arm to avoid',
            `${contact.armToAvoid}${contact.armToAvoidBecause === undefined ? '' : `: ${contact.armToAvoidBecause}`}`,
          ] as const,
        ]),
    ['Needs', needsOf(person).join(', ') || 'none recorded'],
    ['Telephone', contact?.telephone ?? 'not recorded'],
    ['Address', contact?.address ?? 'not recorded'],
    ['Family doctor', contact?.familyDoctor ?? 'not recorded'],
    ['Where they are', `${standing.says}; next move: ${standing.owner}`],
  ];
  const title = `Notes of ${fullName(person)}`;
  const looks = seesLooks(reader)
    ? `<h2>Who looked</h2>${table(
        ['when (UTC)', 'who', 'at'],
        (await atHand.looks.of(person.patient)).map(({ at, staff, what }) => [at, atHand.accounts.nameOf(staff), what]),
      )}`
    : '';
  return document({
    language: person.unit?.unit.letters?.language ?? 'en-GB',
    title,
    demo: atHand.demo !== undefined,
    body: `<h1>${escaped(title)}</h1>${factsTable(facts)}${readinessOf(person)}<h2>Every entry, the newest first</h2>${table(
      ['no.', 'on', 'what', 'by', 'written (UTC)'],
      entries.map(({ seq, on, at, text, by, recordedAt, late, amends, amendedBy, withdrawnBecause, from }) => [
        String(seq),
        at === undefined ? on : `${on} ${at.slice(11, 16)}`,
        `${text}${from === undefined ? '' : ` (from notes ${from})`}${amends === undefined ? '' : ' (corrects an earlier entry)'}${amendedBy === undefined ? '' : ' [corrected since]'}${withdrawnBecause === undefined ? '' : ` [withdrawn: ${withdrawnBecause}]`}`,
        `${by.name}, ${by.role}`,
        `${recordedAt.slice(0, 16).replace('T', ' ')}${late ? ' (late entry)' : ''}`,
      ]),
    )}${person.record.problems.length === 0 ? '' : `<h2>What could not be read</h2><ul>${person.record.problems.map(({ seq, says }) => `<li>${escaped(`entry ${seq}: ${says}`)}</li>`).join('')}</ul>`}${looks}`,
    foot: `Printed for ${reader.name} on ${shortDate(today)}, up to entry ${person.record.lastSeq}. Clinical judgement and local policy decide.`,
  });
}

function readinessOf(person: Person): string {
  const view = person.view(person.place?.on ?? person.today);
  if (view === undefined) return `<h2>Readiness</h2><p>${escaped(noProtocolInForce)}</p>`;
  const rows = view.requirements.map(({ title, today, working }) => [
    title,
    today.verdict,
    working.says,
    working.inputs.map(({ label, text, on }) => `${label} ${text}${on === undefined ? '' : ` (${on})`}`).join('; '),
  ]);
  return `<h2>Readiness on ${escaped(view.today)}: ${escaped(view.headline)}</h2>${view.window === undefined ? '' : `<p>Possible: ${escaped(view.window.says)}</p>`}${table(['requirement', 'today', 'why', 'from'], rows)}<p>${view.cautions.map(escaped).join(' ')} Computed under protocol ${escaped(view.protocolVersion)}.</p>`;
}
