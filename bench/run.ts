/**
 * Runs every bench of this folder and prints one table. It writes nothing: whoever wants a figure kept copies it into
 * RESULTS.md. Names on the command line choose: `npm run bench -- fold store`.
 */
import { readdirSync } from 'node:fs';
import type { Bench, Figure } from './figure.ts';
import { machineLines } from './machine.ts';

const folder = new URL('./', import.meta.url);
const chosen = process.argv.slice(2);

async function benchIn(name: string): Promise<Bench | undefined> {
  const loaded = (await import(new URL(`${name}.ts`, folder).href)) as { bench?: Bench };
  return loaded.bench;
}

const line = (figure: Figure): string =>
  `${figure.value.toPrecision(4).padStart(12)} ${figure.unit.padEnd(16)} ${figure.what}${figure.beside === undefined ? '' : ` (${figure.beside})`}`;

const names = readdirSync(folder)
  .filter((file) => file.endsWith('.ts') && file !== 'run.ts')
  .map((file) => file.slice(0, -'.ts'.length))
  .filter((name) => chosen.length === 0 || chosen.includes(name))
  .toSorted();

for (const text of machineLines()) console.log(text);
let run = 0;
for (const name of names) {
  const bench = await benchIn(name);
  if (bench === undefined) continue;
  run += 1;
  console.log(`\n${name}`);
  for (const figure of await bench()) console.log(line(figure));
}
if (run === 0) {
  console.error(chosen.length === 0 ? 'There is no bench here yet.' : `No bench is called ${chosen.join(' or ')}.`);
  process.exitCode = 1;
}
