/** Words over several lines, none wider than there is room for. */
import { textWidth } from './drawing.ts';

export function wrapped(content: string, room: number, size: number): readonly string[] {
  const lines: string[] = [];
  for (const word of content.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size) <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
