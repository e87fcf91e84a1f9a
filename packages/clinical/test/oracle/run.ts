/**
 * npx node packages/clinical/test/oracle/run.ts --ledgers 10000 --seed 1
 * Puts so many random ledgers, from that seed on, to the engine and to the checker; prints where they differ.
 */
import { parseArgs } from 'node:util';
import { compare, describe } from './agreement.ts';

const { values } = parseArgs({
  options: {
    ledgers: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1' },
    show: { type: 'string', default: '5' },
  },
});
const ledgers = Number(values.ledgers);
const seed = Number(values.seed);
const began = Date.now();
const kinds = new Map<string, number>();
const sorts = new Map<string, number>();
let shown = 0;
let differing = 0;
for (let index = 0; index < ledgers; index += 1) {
  const { differences, compared } = compare(seed + index);
  for (const sort of compared) sorts.set(sort, (sorts.get(sort) ?? 0) + 1);
  if (differences.length === 0) continue;
  differing += 1;
  for (const difference of differences) {
    const kind = difference.what.replace(/^\d{4}-\d{2}-\d{2} /, '');
    kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  }
  if (shown < Number(values.show) && differences[0] !== undefined) {
    shown += 1;
    console.log(describe(differences[0]));
  }
}
const seconds = Math.round((Date.now() - began) / 1000);
console.log(
  `${ledgers} ledgers from seed ${seed}, ten days of asking each: ${differing} ledgers differ (${seconds} s)`,
);
console.log([...sorts].map(([sort, count]) => `${count} ${sort}`).join(', '));
for (const [kind, count] of [...kinds].toSorted((a, b) => b[1] - a[1])) console.log(`  ${kind}: ${count}`);
process.exitCode = differing === 0 ? 0 : 1;
