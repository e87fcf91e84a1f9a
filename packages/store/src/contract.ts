/**
 * The store's one contract, kept by SQLite and by PostgreSQL and tested by one suite on both.
 * Entries are only added. An act is all or nothing, is safe to send twice, and is acknowledged only once it is on disk.
 */
import type { Author, Draft, Entry, Instant, StaffId, Subject, Uuid } from '@twelvemonth/clinical';
import type { Kysely } from 'kysely';

/** A named reason why an act was refused; the first of several is the headline. */
export type StoreRefusal = { readonly name: string; readonly says: string };

export type ActRequest<Refusal extends StoreRefusal = StoreRefusal> = {
  /** Made by whoever sends the act; sending it again with the same content is safe. */
  readonly id: Uuid;
  /** Text that stands for the act's whole content: the same id with another text is refused. */
  readonly content: string;
  readonly by: Author;
  /** The server's clock, UTC. Each entry's recordedAt is this or later: strictly increasing within a ledger. */
  readonly at: Instant;
  /** Every ledger the act reads or writes; locked in ascending order. */
  readonly subjects: readonly Subject[];
  /** The last seq the sender saw of a ledger. Absent: the sender read nothing that could go stale. */
  readonly seen?: Readonly<Record<Subject, number>>;
  /** Kinds the sender's decision depends on; other missed entries do no harm if the outcome is the same. Absent: every kind. */
  readonly readKinds?: readonly string[];
  /** Pure. Called inside the write with the ledgers as they are; called again when a seq was stale. */
  readonly decide: (ledgers: ReadonlyMap<Subject, readonly Entry[]>) => Decision<Refusal>;
};

export type Decision<Refusal extends StoreRefusal = StoreRefusal> =
  | { readonly drafts: readonly Draft[] }
  | { readonly refusals: readonly [Refusal, ...Refusal[]] };

export type ActOutcome<Refusal extends StoreRefusal = StoreRefusal> =
  | { readonly outcome: 'recorded'; readonly entries: readonly Entry[]; readonly commit: number }
  | { readonly outcome: 'already-recorded'; readonly entries: readonly Entry[]; readonly commit: number }
  /** What was recorded under this id before. */
  | { readonly outcome: 'same-id-other-content'; readonly entries: readonly Entry[] }
  | { readonly outcome: 'ledger-moved-on'; readonly missed: readonly Entry[] }
  | { readonly outcome: 'refused'; readonly refusals: readonly [Refusal, ...Refusal[]] }
  /** The notes of one of the subjects were removed at the end of their retention: nothing is written to them again. */
  | { readonly outcome: 'ledger-expired'; readonly says: string }
  /** Not acknowledged. It may or may not be on disk: sending the same act again after the cause is gone settles it. */
  | { readonly outcome: 'read-only'; readonly says: string };

/** A row kept beside the ledger so that lists are quick; always rebuildable from entries. `table` is one of `derivedTables`. */
export type DerivedRow = {
  readonly table: DerivedTable;
  readonly key: string;
  readonly columns: Readonly<Record<string, string | number | null>>;
};

/**
 * Derived tables. Every row belongs to one subject; a subject's rows are replaced as a whole in the transaction that
 * appends to its ledger. Columns are fixed here so that both databases create the same tables.
 */
export const derivedTables = {
  /** key: '' */
  person: {
    family: 'text',
    given: 'text',
    former: 'text',
    number: 'text',
    number_digits: 'text',
    born: 'text',
    sex: 'text',
    unit: 'text',
    search: 'text',
  },
  /** key: '' */
  standing: { standing: 'text', owner: 'text', unit: 'text', on_day: 'integer', since_day: 'integer', detail: 'text' },
  /** key: session id */
  place: { session: 'text', unit: 'text', on_day: 'integer', arrive_at: 'text', place: 'integer' },
  /** key: entry id of the dose */
  dose: { medicine: 'text', on_day: 'integer', batch: 'text', setting: 'text' },
  /** key: task name + entry id */
  task: { task: 'text', owner: 'text', unit: 'text', due_day: 'integer', detail: 'text' },
  /** key: '' (session subjects) */
  session: {
    unit: 'text',
    on_day: 'integer',
    opens_at: 'text',
    closes_at: 'text',
    places: 'integer',
    taken: 'integer',
    cancelled: 'integer',
    detail: 'text',
  },
} as const;
export type DerivedTable = keyof typeof derivedTables;

/** Pure: the rows of one subject, from its whole ledger. Handed to the store when it is opened. */
export type Projection = (subject: Subject, entries: readonly Entry[]) => readonly DerivedRow[];

export type DerivedQuery = {
  readonly table: DerivedTable;
  /** Column equals value; `subject` may be named as a column. */
  readonly where?: Readonly<Record<string, string | number | null>>;
  /** Column within an inclusive range. */
  readonly between?: { readonly column: string; readonly from: number; readonly until: number };
  /** Column contains the (already lower-cased) text. */
  readonly contains?: { readonly column: string; readonly text: string };
  readonly orderBy?: readonly string[];
  readonly limit?: number;
};
export type StoredRow = { readonly subject: Subject; readonly key: string } & Readonly<
  Record<string, string | number | null>
>;

export type Verification =
  | { readonly ok: true; readonly entries: number; readonly ledgers: number; readonly commit: number }
  | {
      readonly ok: false;
      readonly firstBad: {
        readonly subject?: Subject;
        readonly seq?: number;
        readonly commit?: number;
        readonly says: string;
      };
    };

export type CommitNotice = {
  readonly commit: number;
  readonly subjects: readonly { readonly subject: Subject; readonly seq: number }[];
};

/** End of retention: a whole ledger goes, and this stays. Two different people ask for it. */
export type Expiry = { readonly by: readonly [StaffId, StaffId]; readonly reason: string; readonly at: Instant };
export type ExpiryOutcome =
  | { readonly outcome: 'expired'; readonly entries: number; readonly commit: number }
  | { readonly outcome: 'refused'; readonly refusals: readonly [StoreRefusal] }
  | { readonly outcome: 'read-only'; readonly says: string };

/** The store's database lent to the sign-in library: its own tables only, never the tables named in this package. */
export type KyselyHandle = {
  // oxlint-disable-next-line typescript/no-explicit-any -- the sign-in library brings its own table types
  readonly db: Kysely<any>;
  readonly type: 'sqlite' | 'postgres';
};

/** What reading commands need; works beside a running server. */
export interface StoreReader {
  readonly kind: 'sqlite' | 'postgresql';
  /** A ledger in seq order; empty if there is none. */
  ledger(subject: Subject): Promise<readonly Entry[]>;
  /** Many ledgers in one read, in the order asked for. */
  ledgers(subjects: readonly Subject[]): Promise<ReadonlyMap<Subject, readonly Entry[]>>;
  /** Every subject of a kind, ascending. */
  subjects(kind: string): Promise<readonly Subject[]>;
  /** Visits every ledger of a kind in ascending order of subject, a batch at a time, from one consistent view a batch. */
  everyLedger(
    kind: string,
    visit: (subject: Subject, entries: readonly Entry[]) => void,
    batch?: number,
  ): Promise<void>;
  rows(query: DerivedQuery): Promise<readonly StoredRow[]>;
  count(query: Pick<DerivedQuery, 'table' | 'where'>): Promise<number>;
  /** Small values of the installation (service name, demo mark, schema version): not clinical, replaceable. */
  setting(name: string): Promise<string | undefined>;
  /** Number and hash of the last commit. */
  tail(): Promise<{ readonly commit: number; readonly hash: string }>;
  /** Number and hash of the last commit with a digest of the ends of all ledgers, as a text to keep elsewhere for `verify`. */
  tailsDigest(): Promise<string>;
  /**
   * Reads everything, recomputes every hash and every chain, compares derived rows and mirrored places; names the first
   * bad one. `against` is an earlier `tailsDigest`: what it vouches for must still be there.
   */
  verify(progress?: (done: number, of: number) => void, against?: string): Promise<Verification>;
  /** Copies the whole store while it is in use, then verifies the copy. SQLite only; PostgreSQL has its own tools and says so. */
  backup(toPath: string): Promise<{ readonly commit: number; readonly entries: number; readonly path: string }>;
  close(): Promise<void>;
}

export interface Store extends StoreReader {
  act<Refusal extends StoreRefusal>(request: ActRequest<Refusal>): Promise<ActOutcome<Refusal>>;
  /** Makes every derived row again from the entries; lists stay readable meanwhile. */
  rebuild(progress?: (done: number, of: number) => void): Promise<void>;
  setSetting(name: string, value: string): Promise<void>;
  /** Removes a whole ledger at the end of its retention, together with a row that says who, why and when. */
  expireLedger(subject: Subject, expiry: Expiry): Promise<ExpiryOutcome>;
  /** Called after every commit this process can see. Returns a function that stops it. */
  onCommit(listener: (notice: CommitNotice) => void): () => void;
  readonly readOnly: { readonly says: string } | undefined;
  /** Lent, not given: it ends when the store closes. */
  kyselyHandle(): KyselyHandle;
}
