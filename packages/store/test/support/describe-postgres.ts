/** A suite that needs a real PostgreSQL. Where none can be run it says so by name, and fails on the build machine. */
import { afterAll, describe, expect, test } from 'vitest';
import { startPostgres, type PostgresServer } from './postgres-server.ts';

export async function describePostgres(
  name: string,
  suite: (server: PostgresServer) => void,
  settings: readonly string[] = [],
): Promise<void> {
  const answer = await startPostgres(settings);
  if ('server' in answer) {
    describe(name, () => {
      suite(answer.server);
      afterAll(() => answer.server.stop());
    });
    return;
  }
  test(`NOT RUN HERE: ${name} (${answer.cannotRun})`, () => {
    // A build machine must be able to; a nurse's laptop need not.
    expect({ ...answer, buildMachine: process.env['CI'] !== undefined }).toMatchObject({ buildMachine: false });
  });
}
