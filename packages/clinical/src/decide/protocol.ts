/** A protocol written whole, then signed by two people who read the same text and name the same first day. */
import { day, shortDate } from '../calendar/day.ts';
import { plural } from '../kinds-texts/words.ts';
import { subject } from '../ledger/subject.ts';
import { canonicalText } from '../protocol/canonical-text.ts';
import { type ProtocolVersion, protocolVersions } from '../protocol/in-force.ts';
import type { DayQuestion } from '../protocol/day-question.ts';
import { numberKeyNames } from '../protocol/number-keys.ts';
import { type ProtocolSheet, emptyNumbers } from '../protocol/protocol.ts';
import { unitOf } from '../unit/unit.ts';
import type { ActNamed } from './act.ts';
import { fieldWrong } from './check-fields.ts';
import { draftNow } from './draft.ts';
import { recordIn } from './ledgers.ts';
import { type Refusal } from './refusal.ts';
import { decided, notYours, refusal } from './refuse.ts';
import type { Decided, Surroundings } from './surroundings.ts';

export function decideWriteProtocol(act: ActNamed<'write protocol'>, now: Surroundings): Decided {
  const of = subject('protocol', act.unit);
  const refusals: Refusal[] = [...checkUnit(act.unit, now)];
  const versions = protocolVersions(recordIn(now, of));
  if (versions.some(({ version }) => version === act.sheet.version)) {
    refusals.push(
      fieldWrong(
        'sheet.version',
        `"${act.sheet.version}" was written before and stays as it is`,
        'give the changed sheet a name of its own',
      ),
    );
  }
  refusals.push(...checkOwnNumbers(act.sheet), ...checkKeepsQuestions(act.sheet, versions));
  return decided(refusals, () => [
    draftNow(
      of,
      'protocol-written',
      { version: act.sheet.version, content: canonicalText(act.sheet), contentHash: act.contentHash },
      now,
    ),
  ]);
}

/** "Added by an upgrade" tells of how an older sheet was read; in a new one somebody has decided, or the number is empty. */
const checkOwnNumbers = ({ numbers, regimens }: ProtocolSheet): readonly Refusal[] =>
  [
    ...numberKeyNames.map((key) => [`numbers.${key}`, numbers[key]] as const),
    ...regimens.flatMap((regimen) => [
      [`regimens.${regimen.id}`, regimen] as const,
      ...Object.entries(regimen.numbers).map(([key, number]) => [`regimens.${regimen.id}.${key}`, number] as const),
    ]),
  ]
    .filter(([, { status }]) => status === 'added by an upgrade, not signed')
    .map(([path]) =>
      fieldWrong(`sheet.${path}`, 'nobody has decided it: an upgrade added it', 'decide it, or leave it empty'),
    );

/**
 * An answer that holds until it is cleared is read by the question as it stands on the day asked about: dropped, answered the
 * other way round or no longer staying, it would forget what people told. It may be worded anew.
 */
function checkKeepsQuestions(sheet: ProtocolSheet, versions: readonly ProtocolVersion[]): readonly Refusal[] {
  const adopted = versions.flatMap((version) => (version.adopted === undefined ? [] : (version.sheet ?? [])));
  return askedIn(sheet).flatMap(({ path, questions }) =>
    lastingOf(adopted, path)
      .filter(({ id, holdsOn }) => {
        const kept = questions.find((question) => question.id === id);
        return kept?.staysUntilCleared !== true || kept.holdsOn !== holdsOn;
      })
      .map(({ id, asks }) =>
        fieldWrong(
          `sheet.${path}.${id}`,
          `"${asks}" was asked under an adopted version, and what was told then holds until it is cleared`,
          'keep the question, the answer that holds, and that it stays; it may be worded anew',
        ),
      ),
  );
}

/** The questions of the day of a sheet, and those beside them of each of its regimens. */
const askedIn = (
  sheet: ProtocolSheet,
): readonly { readonly path: string; readonly questions: readonly DayQuestion[] }[] => [
  { path: 'dayQuestions', questions: sheet.dayQuestions },
  ...sheet.regimens.map(({ id, dayQuestions }) => ({ path: `regimens.${id}.dayQuestions`, questions: dayQuestions })),
];

/** Each once, as it was asked last. */
const lastingOf = (sheets: readonly ProtocolSheet[], path: string): readonly DayQuestion[] => [
  ...new Map(
    sheets
      .flatMap(askedIn)
      .filter((asked) => asked.path === path)
      .flatMap(({ questions }) => questions)
      .filter(({ staysUntilCleared }) => staysUntilCleared === true)
      .map((question) => [question.id, question]),
  ).values(),
];

const checkUnit = (unit: string, now: Surroundings): readonly Refusal[] =>
  unitOf(recordIn(now, subject('unit', unit))) === undefined
    ? [
        refusal('unknown-unit', `No unit is called "${unit}".`, {
          field: 'unit',
          remedy: 'describe the unit in the settings first',
        }),
      ]
    : [];

export function decideSignProtocol(act: ActNamed<'sign protocol'>, now: Surroundings): Decided {
  const of = subject('protocol', act.unit);
  const written = protocolVersions(recordIn(now, of)).findLast(({ version }) => version === act.version);
  const refusals: Refusal[] = [...checkUnit(act.unit, now), ...checkSigner(act, now)];
  if (written === undefined) {
    refusals.push(refusal('no-such-entry', `No version is called "${act.version}".`, { field: 'version' }));
    return decided(refusals, () => []);
  }
  refusals.push(...checkSheet(act, written), ...checkSignatures(act, written, now));
  const { version, contentHash, as, inForceFrom } = act;
  return decided(refusals, () => [draftNow(of, 'protocol-signed', { version, contentHash, as, inForceFrom }, now)]);
}

function checkSigner(act: ActNamed<'sign protocol'>, now: Surroundings): readonly Refusal[] {
  const needs = act.as === 'clinician' ? 'prescriber' : 'pharmacist';
  return now.by.role === needs ? [] : [notYours(now.by.role, `sign as ${act.as}`, [needs])];
}

function checkSheet(act: ActNamed<'sign protocol'>, written: ProtocolVersion): readonly Refusal[] {
  const refusals: Refusal[] = [];
  if (act.contentHash !== written.contentHash || written.sheet === undefined) {
    refusals.push(
      refusal('content-differs', 'What you signed is not the text that is stored.', {
        field: 'contentHash',
        remedy: 'open the version again, read it, then sign',
      }),
    );
  }
  if (written.sheet === undefined) return refusals;
  if (written.sheet.teachingOnly)
    refusals.push(
      refusal('teaching-only', 'A teaching protocol is never adopted.', { remedy: 'start from a starter sheet' }),
    );
  if (written.added.length > 0) {
    refusals.push(
      refusal(
        'empty-numbers',
        `It was written by an older version of the product and lacks ${plural(
          written.added.map(({ path }) => path),
          'and',
        )}.`,
        { remedy: 'begin a new version from it and decide what it lacks' },
      ),
    );
  }
  const empty = emptyNumbers(written.sheet);
  if (empty.length > 0) {
    refusals.push(
      refusal(
        'empty-numbers',
        `Still empty: ${plural(
          empty.map(({ key }) => key),
          'and',
        )}.`,
        { remedy: 'decide each number in a new version' },
      ),
    );
  }
  return refusals;
}

function checkSignatures(
  act: ActNamed<'sign protocol'>,
  written: ProtocolVersion,
  now: Surroundings,
): readonly Refusal[] {
  if (written.adopted !== undefined) {
    return [
      refusal('already-in-force', `Both have signed; in force from ${shortDate(written.adopted.from)}.`, {
        remedy: 'a change needs a new version',
      }),
    ];
  }
  const from = day(act.inForceFrom);
  const refusals: Refusal[] = [];
  if (from < now.today)
    refusals.push(fieldWrong('inForceFrom', 'a protocol does not come into force in the past', 'today or later'));
  for (const signature of written.signatures) {
    const mine = signature.by === now.by.staff;
    if (mine && signature.as !== act.as) {
      refusals.push(
        refusal('already-signed-by-you', 'You signed on the other side: two people adopt a protocol.', {
          remedy: `a second person signs as ${act.as}`,
        }),
      );
    } else if (mine && signature.inForceFrom === from && signature.contentHash === act.contentHash) {
      refusals.push(
        refusal('already-signed-by-you', 'Your signature is there.', { remedy: 'the other person signs next' }),
      );
    } else if (
      !mine &&
      signature.as !== act.as &&
      signature.inForceFrom !== from &&
      signature.inForceFrom >= now.today
    ) {
      refusals.push(
        refusal('content-differs', `The other signature says in force from ${shortDate(signature.inForceFrom)}.`, {
          field: 'inForceFrom',
          remedy: 'agree on one day',
        }),
      );
    }
  }
  return refusals;
}
