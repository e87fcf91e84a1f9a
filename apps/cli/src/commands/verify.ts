/** Reads every entry of the notes and checks every chain. */
import { readFileSync, writeFileSync } from 'node:fs';
import { jsonText } from '../columns.ts';
import { type Command, readOptions } from '../command.ts';
import { cannotOpen, exitCodes, misused } from '../ending.ts';
import { placeHelp, placeOptions, withNotes } from '../notes-place.ts';

export const verify: Command = {
  summary: 'check every chain of the notes',
  help: `twelvemonth verify [options]

Recomputes every hash, follows every ledger's chain and the chain of commits, and compares the lists kept beside them.
Ends with 1 at the first thing that does not fit.

  --against FILE     a digest kept elsewhere: what it vouches for must still be there
  --digest FILE      write such a digest of the notes as they are, once they have been found whole
  --json             the outcome as JSON
${placeHelp}`,
  run: async (args, output) => {
    const { values, positionals } = readOptions(args, {
      ...placeOptions,
      against: { type: 'string' },
      digest: { type: 'string' },
      json: { type: 'boolean', default: false },
    });
    if (positionals.length > 0) throw misused(`"${positionals.join(' ')}" is not meant here.`);
    const against = values.against === undefined ? undefined : read(values.against);
    return withNotes(values, output, async (reader) => {
      const found = await reader.verify(undefined, against);
      if (values.json) output.out(jsonText(found));
      else if (found.ok)
        output.out(`whole: ${found.entries} entries in ${found.ledgers} ledgers, commit ${found.commit}`);
      else {
        const { subject, seq, commit, says } = found.firstBad;
        const place = [
          subject,
          seq === undefined ? undefined : `entry ${seq}`,
          commit === undefined ? undefined : `commit ${commit}`,
        ].filter((part) => part !== undefined);
        output.out(`not whole: ${place.length === 0 ? '' : `${place.join(', ')}: `}${says}`);
      }
      if (found.ok && values.digest !== undefined)
        writeFileSync(values.digest, `${await reader.tailsDigest()}\n`, { flag: 'wx' });
      return found.ok ? exitCodes.done : exitCodes.no;
    });
  },
};

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    throw cannotOpen(`The file ${path} cannot be read.`);
  }
}
