/** A rule sheet from a file: read like a stored one, with what an upgrade adds said aside. */
import { type Protocol, type ProtocolSheet, type SheetAddition, protocolFrom, readSheet } from '@twelvemonth/clinical';
import type { Output } from './command.ts';
import { misused } from './ending.ts';
import { jsonFromFile } from './json-file.ts';

export function sheetFromFile(path: string, output: Output): { sheet: ProtocolSheet; added: readonly SheetAddition[] } {
  const read = readSheet(jsonFromFile(path));
  if ('says' in read) throw misused(`${path} is not a rule sheet of ours. ${read.says}`);
  for (const { says } of read.added) output.aside(`added by an upgrade, not signed: ${says}`);
  return read;
}

export function protocolOrMisused(sheet: ProtocolSheet, added: readonly SheetAddition[] = []): Protocol {
  const made = protocolFrom(sheet, added);
  if ('empty' in made) throw misused(`The sheet has empty numbers: ${made.empty.map(({ key }) => key).join(', ')}.`);
  return made.protocol;
}
