/** The append-only store. Everything else in the product sees the contract, never SQL. */
export * from './contract.ts';
export type { Acceptance } from './custody.ts';
export { ledgersOfPerson, ledgersOfService } from './ledgers-of-service.ts';
export { entryId } from './sealing.ts';
export { StoreProblem, type StoreProblemName } from './store-problem.ts';
export { openSqliteReader } from './sqlite/reading.ts';
export { openSqliteStore, type SqliteOptions } from './sqlite/store.ts';
export { acceptSqliteRestore, restoreSqlite, type Accepted } from './sqlite/restore.ts';
export type { PostgresConnection } from './postgres/connecting.ts';
export { openPostgresReader, type PostgresOptions } from './postgres/reading.ts';
export { openPostgresStore } from './postgres/store.ts';
