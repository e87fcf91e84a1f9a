import { describe } from 'vitest';
import { acts } from './contract/acts.ts';
import { conflicts } from './contract/conflicts.ts';
import { derived } from './contract/derived.ts';
import { immutability } from './contract/immutability.ts';
import { onBenchOf } from './contract/on-bench.ts';
import { readingNotes } from './contract/reading.ts';
import { verifying } from './contract/verifying.ts';
import { sqliteLaboratory } from './support/laboratories.ts';

describe('the store on SQLite', () => {
  const on = onBenchOf(sqliteLaboratory);
  acts(on);
  conflicts(on);
  immutability(on);
  derived(on);
  readingNotes(on);
  verifying(on);
});
