import { acts } from './contract/acts.ts';
import { conflicts } from './contract/conflicts.ts';
import { derived } from './contract/derived.ts';
import { immutability } from './contract/immutability.ts';
import { onBenchOf } from './contract/on-bench.ts';
import { readingNotes } from './contract/reading.ts';
import { verifying } from './contract/verifying.ts';
import { describePostgres } from './support/describe-postgres.ts';
import { postgresLaboratory } from './support/laboratories.ts';

await describePostgres('the store on PostgreSQL', (server) => {
  const on = onBenchOf(postgresLaboratory(() => server));
  acts(on);
  conflicts(on);
  immutability(on);
  derived(on);
  readingNotes(on);
  verifying(on);
});
