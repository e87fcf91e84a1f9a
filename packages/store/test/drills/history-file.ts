/**
 * The file a drill writes its history to. A kill may cut its last line in half: that line was not written, so it was not said.
 * Whoever goes on writing begins a line of its own, and nobody reads the half one.
 */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';

export function readHistory<Line>(path: string): Line[] {
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        return [JSON.parse(line) as Line];
      } catch {
        return [];
      }
    });
}

export function endHalfLine(path: string): void {
  const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
  if (!text.endsWith('\n')) appendFileSync(path, text === '' ? '' : '\n');
}
