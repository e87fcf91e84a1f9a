/** A scan is read again where it is written: product, batch, expiry and serial in the notes are those of the code. */
import { type Act, civilFromDay, kindNamed, plainDate } from '@twelvemonth/clinical';
import type { BodyOfKind } from '@twelvemonth/clinical';
import { readPack } from '@twelvemonth/exchange';
import { Refused } from '../problem.ts';
import type { UnitNow } from '../register/units.ts';

/** Undefined: nothing was scanned, or the scan says what is to be written. */
export function scanSaysOtherwise(act: Act, unit: UnitNow | undefined): Refused | undefined {
  const lines = act.name === 'record' ? [act.line] : act.name === 'record together' ? act.lines : [];
  for (const { kind, body } of lines) {
    const read = kind === 'preparation' ? kindNamed('preparation').body.safeParse(body) : undefined;
    if (read?.success !== true) continue;
    const says = whatDiffers(read.data as BodyOfKind<'preparation'>, unit);
    if (says !== undefined)
      return new Refused(422, 'scan-differs', says, {
        reasons: [{ name: 'scan-differs', says, field: 'line.body.scan', remedy: 'scan the pack again' }],
      });
  }
  return undefined;
}

function whatDiffers(
  { batch, expiresOn, scan }: BodyOfKind<'preparation'>,
  unit: UnitNow | undefined,
): string | undefined {
  if (scan === undefined) return undefined;
  if (unit === undefined) return 'No unit is known whose packs could be scanned.';
  const read = readPack(scan.code, {
    expectsSerial: unit.unit.formulary.packsCarrySerial,
    year: civilFromDay(unit.today).year,
  });
  if ('trouble' in read) return read.trouble.says;
  const { pack } = read;
  const differs = [
    ...(pack.productNumber === scan.productNumber ? [] : ['product number']),
    ...(pack.serial === scan.serial ? [] : ['serial']),
    ...(pack.batch === undefined || pack.batch === batch ? [] : ['batch']),
    ...(pack.expiresOn === undefined || plainDate(pack.expiresOn) === expiresOn ? [] : ['expiry']),
  ];
  return differs.length === 0 ? undefined : `The code and what is to be written differ: ${differs.join(', ')}.`;
}
