/**
 * Which versions of a unit's protocol are in force from when, read from the protocol's own ledger: a version counts once a
 * clinician and a pharmacist, two people, have signed the same content for the same first day.
 */
import { type Day, day } from '../calendar/day.ts';
import type { Instant, StaffId } from '../ledger/entry.ts';
import { asWritten } from '../record/newest-written.ts';
import type { SubjectRecord } from '../record/patient-record.ts';
import { type ProtocolSheet, type ProtocolTimeline, type SheetAddition, protocolFrom } from './protocol.ts';
import { readSheet } from './upgrade.ts';

export type ProtocolSignature = {
  readonly as: 'clinician' | 'pharmacist';
  readonly by: StaffId;
  readonly at: Instant;
  readonly contentHash: string;
  readonly inForceFrom: Day;
};

export type ProtocolVersion = {
  readonly version: string;
  readonly contentHash: string;
  /** Undefined: the stored text cannot be read by this version of the product. */
  readonly sheet: ProtocolSheet | undefined;
  /** What an older sheet lacked and was given when it was read: nobody has signed it. */
  readonly added: readonly SheetAddition[];
  /** Why it cannot be read, in a sentence; empty if it can. */
  readonly unreadable: string;
  readonly writtenBy: StaffId;
  readonly writtenAt: Instant;
  /** The newest signature of each side. */
  readonly signatures: readonly ProtocolSignature[];
  /** Set once both have signed the same content and the same day. */
  readonly adopted: { readonly from: Day } | undefined;
};

export type ProtocolState = 'written' | 'signed by one' | 'adopted, not yet in force' | 'in force' | 'replaced';

const sheets = new WeakMap<SubjectRecord, readonly ProtocolVersion[]>();

/** Every version ever written, in the order of writing. */
export function protocolVersions(record: SubjectRecord): readonly ProtocolVersion[] {
  const known = sheets.get(record);
  if (known !== undefined) return known;
  const signed = asWritten(record, 'protocol-signed');
  const versions = asWritten(record, 'protocol-written').map((written): ProtocolVersion => {
    const { version, contentHash, content } = written.body;
    const signatures = (['clinician', 'pharmacist'] as const).flatMap((as): ProtocolSignature[] => {
      const newest = signed.findLast((one) => one.body.version === version && one.body.as === as);
      return newest === undefined
        ? []
        : [
            {
              as,
              by: newest.author.staff,
              at: newest.recordedAt,
              contentHash: newest.body.contentHash,
              inForceFrom: day(newest.body.inForceFrom),
            },
          ];
    });
    const read = sheetIn(content);
    return {
      version,
      contentHash,
      sheet: 'sheet' in read ? read.sheet : undefined,
      added: 'sheet' in read ? read.added : [],
      unreadable: 'says' in read ? read.says : '',
      writtenBy: written.author.staff,
      writtenAt: written.recordedAt,
      signatures,
      adopted: adoptionBy(signatures, contentHash),
    };
  });
  sheets.set(record, versions);
  return versions;
}

function sheetIn(content: string): ReturnType<typeof readSheet> {
  try {
    return readSheet(JSON.parse(content));
  } catch {
    return { says: 'It is not JSON.' };
  }
}

function adoptionBy(signatures: readonly ProtocolSignature[], contentHash: string): { from: Day } | undefined {
  const [clinician, pharmacist] = signatures;
  if (clinician === undefined || pharmacist === undefined) return undefined;
  const agree =
    clinician.by !== pharmacist.by &&
    clinician.inForceFrom === pharmacist.inForceFrom &&
    clinician.contentHash === contentHash &&
    pharmacist.contentHash === contentHash;
  return agree ? { from: clinician.inForceFrom } : undefined;
}

/**
 * Adopted versions by first day; of two with the same first day the later written stands. Teaching sheets never count.
 * An adopted version that cannot be read, or has a gap, is not passed over in favour of the one before it, which may be looser: nothing
 * written up to its first day counts any more, so that nothing can be said until a version that can be read is adopted.
 */
export function protocolsInForce(record: SubjectRecord): ProtocolTimeline {
  const byDay = new Map<Day, ProtocolTimeline[number] | undefined>();
  for (const { sheet, adopted, added } of protocolVersions(record)) {
    if (adopted === undefined || sheet?.teachingOnly === true) continue;
    const made = sheet === undefined ? undefined : protocolFrom(sheet, added);
    byDay.set(
      adopted.from,
      made !== undefined && 'protocol' in made ? { from: adopted.from, protocol: made.protocol } : undefined,
    );
  }
  const inOrder = [...byDay].toSorted(([a], [b]) => a - b).map(([, version]) => version);
  return inOrder.slice(inOrder.lastIndexOf(undefined) + 1).filter((version) => version !== undefined);
}

/** The protocol in force on a day; undefined before the first. */
export const protocolInForceOn = (
  timeline: ProtocolTimeline,
  on: Day,
): ProtocolTimeline[number]['protocol'] | undefined => timeline.findLast((version) => version.from <= on)?.protocol;

/** Where a version stands on a day. */
export function protocolState(record: SubjectRecord, version: string, today: Day): ProtocolState {
  const found = protocolVersions(record).findLast((one) => one.version === version);
  if (found?.adopted === undefined) return (found?.signatures.length ?? 0) > 0 ? 'signed by one' : 'written';
  const inForce = protocolsInForce(record);
  if (found.adopted.from > today) return 'adopted, not yet in force';
  return protocolInForceOn(inForce, today)?.version === version ? 'in force' : 'replaced';
}
