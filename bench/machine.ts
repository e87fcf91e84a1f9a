/** The machine a figure was measured on. Without it a figure says nothing; the sync time above all, since every act waits for one. */
import { closeSync, fsyncSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { availableParallelism, cpus, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';

const syncs = 50;
const bytesPerGibibyte = 2 ** 30;

/** Median time of one fsync of a small write, in milliseconds, in the folder the benches write to. */
function medianSyncMilliseconds(): number {
  const folder = mkdtempSync(join(tmpdir(), 'twelvemonth-sync-'));
  const file = openSync(join(folder, 'probe'), 'w');
  try {
    const times = Array.from({ length: syncs }, () => {
      writeSync(file, 'x'.repeat(200));
      const began = performance.now();
      fsyncSync(file);
      return performance.now() - began;
    });
    return times.toSorted((a, b) => a - b)[syncs / 2] ?? Number.NaN;
  } finally {
    closeSync(file);
    rmSync(folder, { recursive: true });
  }
}

/** Lines in the format of RESULTS.md. */
export function machineLines(): string[] {
  const manifest = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as { version: string };
  const { sqlite, v8 } = process.versions;
  return [
    `date      ${new Date().toISOString().slice(0, 10)}`,
    `product   ${manifest.version}`,
    `machine   ${availableParallelism()} cores, ${cpus()[0]?.model ?? 'model not known'}, ${(totalmem() / bytesPerGibibyte).toFixed(0)} GiB, ${process.platform} ${process.arch}`,
    `runtime   Node ${process.versions.node}, V8 ${v8}, SQLite ${sqlite ?? 'none'}`,
    `one sync  ${medianSyncMilliseconds().toFixed(2)} ms (median of ${syncs})`,
  ];
}
